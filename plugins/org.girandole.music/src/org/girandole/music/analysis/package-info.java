/**
 * Listening to a track: loudness, waveform, onsets, beats, bars, sections, silences, and from them proposals for a script's
 * tempo map and marks. Methods follow published papers, named in the classes. The start is
 * {@link org.girandole.music.analysis.TrackAnalyser#analyse} and {@link org.girandole.music.analysis.MarksFinder#find}.
 * Everything is deterministic; nothing found is certain, and every result says how far it can be relied on.
 */
package org.girandole.music.analysis;
