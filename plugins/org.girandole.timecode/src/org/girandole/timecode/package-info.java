/** timecode */
package org.girandole.timecode;
