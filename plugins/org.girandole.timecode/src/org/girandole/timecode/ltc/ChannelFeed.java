package org.girandole.timecode.ltc;

/** What one channel of a timecode file carries. */
public sealed interface ChannelFeed {

	/** The timecode signal. */
	record TimecodeFeed() implements ChannelFeed {
	}

	/** One channel of the music, counted from 0. */
	record MusicFeed(int channel) implements ChannelFeed {
		public MusicFeed {
			if (channel < 0) {
				throw new IllegalArgumentException("Music channel " + channel + "; channels count from 0");
			}
		}
	}

	/** All channels of the music in one, their mean, so that nothing is clipped. */
	record MusicMixFeed() implements ChannelFeed {
	}

	/** Nothing. */
	record SilentFeed() implements ChannelFeed {
	}
}
