/** Audio files in the RIFF/WAVE family, read and written as a stream, with cue points and labels. */
package org.girandole.timecode.wav;
