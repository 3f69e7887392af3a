/** music */
package org.girandole.music;
