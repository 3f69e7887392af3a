/**
 * Music made by the program itself: pieces written note by note against a tempo map, saved as Standard MIDI Files and
 * rendered to sound with plain instruments of its own. Where every note begins is known exactly, which makes
 * such a piece a soundtrack to try things on and a measure for everything that listens.
 */
package org.girandole.music.synth;
