/** From a script to everything that is found about it: the one way that the command line, the Maven plugin and the editor go. */
package org.girandole.lang.check;
