/**
 * Reading sound files as streams of samples: WAV and AIFF by readers of our own, FLAC, Ogg Vorbis and MP3 through
 * libraries. The format is told from the bytes, never from the name. Whatever is wrong with a file comes out as an
 * {@link org.girandole.music.audio.AudioException}; what can be read all the same is read, with a remark.
 */
package org.girandole.music.audio;
