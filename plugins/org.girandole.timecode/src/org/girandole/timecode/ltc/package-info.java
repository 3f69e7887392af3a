/** Linear timecode (SMPTE ST 12-1): its 80-bit words, its signal, and how to read it back from a recording. */
package org.girandole.timecode.ltc;
