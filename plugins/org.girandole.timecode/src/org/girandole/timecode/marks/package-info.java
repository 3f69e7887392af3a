/**
 * Marks and tempo, exchanged with other programs: Standard MIDI Files, cue points of WAV files, label tracks; and MIDI time code. All times are
 * microseconds from the file's beginning; who writes a file decides where in the show that is.
 */
package org.girandole.timecode.marks;
