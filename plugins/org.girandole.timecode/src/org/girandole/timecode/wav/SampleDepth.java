package org.girandole.timecode.wav;

/** The sample widths that are written. */
public enum SampleDepth {
	PCM_16(16), PCM_24(24);

	private final int bits;

	SampleDepth(int bits) {
		this.bits = bits;
	}

	public int bits() {
		return bits;
	}

	int bytes() {
		return bits / 8;
	}
}
