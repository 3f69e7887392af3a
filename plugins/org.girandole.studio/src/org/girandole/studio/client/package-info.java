/**
 * The client of the language server, in the same process. The only package that knows threads, and of all the studio the only one that
 * names the server's bundle, in one place.
 */
package org.girandole.studio.client;
