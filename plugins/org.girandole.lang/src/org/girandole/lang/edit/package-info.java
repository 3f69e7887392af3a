/** Where things stand in scripts, and changes of their text that leave everything else as a person wrote it. */
package org.girandole.lang.edit;
