package org.girandole.timecode.reader;

/**
 * What a line must fulfil to be fit for the night. The limits of {@link #usual()} are common practice without a source, save for the
 * signal-to-noise ratios: under white noise at 48 kHz an edge-timing reader (libltc 1.3.2) was measured to lose its first frames at 23 dB on
 * this scale, one frame in nine at 22 dB, and nearly all at 19 dB.
 *
 * @param lockSeconds     timecode must be there so soon after the recording's beginning
 * @param quietDbfs       below this level the line is called quiet
 * @param goodSnrDb       below this ratio an ordinary reader may lose frames
 * @param leastSnrDb      below this ratio an ordinary reader loses the line
 * @param fairPpm         above this deviation of speed the line is called off speed
 * @param mostPpm         above this it is unfit
 * @param fairWowPpm      above this deviation within a second the line is called unsteady
 * @param mostGapSeconds  a gap longer than this makes the line unfit
 * @param mostLostShare   a larger share of lost frames makes the line unfit
 */
public record LineDemands(double lockSeconds, double quietDbfs, double goodSnrDb, double leastSnrDb, double fairPpm, double mostPpm, double fairWowPpm,
		double mostGapSeconds, double mostLostShare) {

	public static LineDemands usual() {
		return new LineDemands(2, -40, 28, 22, 100, 1000, 2000, 1, 0.01);
	}
}
