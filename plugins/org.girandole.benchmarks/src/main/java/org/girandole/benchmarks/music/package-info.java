/**
 * Measures the listening: generated pieces whose notes are known, scored beside other programs on the same files. Needs
 * {@code aubio-tools}, {@code ffmpeg}, {@code sox}, {@code python3-mir-eval} and {@code espeak-ng} of Debian on the path; what is missing is said and left out.
 */
package org.girandole.benchmarks.music;
