/**
 * The language server: scripts kept parsed while they are typed in, checked in the background by the one check that the command line
 * uses too, and answers read off both.
 */
package org.girandole.lang.ide.server;
