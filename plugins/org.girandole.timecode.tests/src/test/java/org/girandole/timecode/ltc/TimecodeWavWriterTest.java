package org.girandole.timecode.ltc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.girandole.timecode.FrameRate;
import org.girandole.timecode.Timecode;
import org.girandole.timecode.TimecodeException;
import org.girandole.timecode.TimecodeLine;
import org.girandole.timecode.Tool;
import org.girandole.timecode.ltc.ChannelFeed.MusicFeed;
import org.girandole.timecode.ltc.ChannelFeed.MusicMixFeed;
import org.girandole.timecode.ltc.ChannelFeed.SilentFeed;
import org.girandole.timecode.ltc.ChannelFeed.TimecodeFeed;
import org.girandole.timecode.wav.CuePoint;
import org.girandole.timecode.wav.FunctionSource;
import org.girandole.timecode.wav.SampleDepth;
import org.girandole.timecode.wav.SampleSource;
import org.girandole.timecode.wav.WavReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class TimecodeWavWriterTest {
	@TempDir
	Path folder;

	private static TimecodeLine line(FrameRate rate, long prerollUs) {
		return new TimecodeLine(rate, Timecode.parse("09:59:50:00", rate), prerollUs);
	}

	private Path write(TimecodeFile file, SampleSource music) throws Exception {
		Path path = folder.resolve("timecode.wav");
		try (OutputStream out = Files.newOutputStream(path)) {
			TimecodeWavWriter.write(out, file, Optional.ofNullable(music));
		}
		return path;
	}

	private static float[][] read(Path path) throws Exception {
		try (WavReader reader = WavReader.open(path)) {
			float[] all = new float[(int) reader.frames() * reader.channels()];
			int at = 0;
			int got;
			while ((got = reader.read(all, at * reader.channels(), 1000)) > 0) {
				at += got;
			}
			assertThat(reader.warnings()).isEmpty();
			float[][] channels = new float[reader.channels()][at];
			for (int i = 0; i < all.length; i++) {
				channels[i % channels.length][i / channels.length] = all[i];
			}
			return channels;
		}
	}

	// libltc 1.3.2 is the independent reader: every frame that we write, at every rate, sample rate, width and level.
	@ParameterizedTest
	@EnumSource
	void libltcReadsEveryFrame(FrameRate rate) throws Exception {
		Path libltc = Tool.libltc();
		Tool.require("sox");
		for (int sampleRate : new int[] { 44_100, 48_000, 96_000 }) {
			for (SampleDepth depth : SampleDepth.values()) {
				for (double level : new double[] { 0, -3, -12, -20 }) {
					TimecodeFile file = TimecodeFile.timecodeAlone(line(rate, 2_000_000), 10_000_000, 500_000, sampleRate, depth).withLevel(level)
							.withMark(new ReleaseMark(7, "c0ffee11"));
					Path wav = write(file, null);
					Path raw = folder.resolve("raw.f32");
					Tool.run(folder, "sox", wav, "-t", "f32", raw);
					String[] lines = Tool.run(folder, libltc, "decode", "f32", raw, sampleRate, rate.number()).split("\n");
					List<String> expected = new ArrayList<>();
					List<String> found = new ArrayList<>();
					for (int i = 0; i < file.timecodeFrames(); i++) {
						Timecode label = file.line().start().plusFrames(i);
						expected.add(label.toString().replace(';', ':') + " " + (rate.dropFrame() ? 1 : 0) + " "
								+ UserBits.hex(UserBits.of(new ReleaseMark(7, "c0ffee11"), label.frames())));
					}
					for (String each : lines) {
						String[] words = each.split(" ");
						found.add(words[0] + " " + words[1] + " " + words[2]);
						double begin = (found.size() - 1) * (double) sampleRate * rate.denominator() / rate.numerator();
						assertThat(Double.parseDouble(words[3])).as(each).isCloseTo(begin, within(sampleRate * 100e-6));
					}
					assertThat(found).as("%s %d Hz %s %.0f dBFS", rate, sampleRate, depth, level).isEqualTo(expected);
				}
			}
		}
	}

	@Test
	void musicBeginsWhereThePrerollEnds() throws Exception {
		// One click on each channel at the first note and one a second later.
		SampleSource music = new FunctionSource(48_000, 2, 72_000, (frame, channel) -> frame % 48_000 == 0 ? channel == 0 ? 0.5 : -0.25 : 0);
		TimecodeFile file = TimecodeFile.timecodeAlone(line(FrameRate.FPS_25, 3_000_000), 1_500_000, 1_000_000, 48_000, SampleDepth.PCM_24)
				.withChannels(new MusicFeed(0), new MusicFeed(1), new SilentFeed(), new TimecodeFeed(), new MusicMixFeed());
		float[][] channels = read(write(file, music));
		assertThat(file.firstNoteFrame()).isEqualTo(144_000);
		assertThat(channels).hasDimensions(5, (int) file.sampleFrames());
		for (int i = 0; i < channels[0].length; i++) {
			boolean click = i == 144_000 || i == 192_000;
			assertThat(channels[0][i]).isEqualTo(click ? 0.5f : 0f);
			assertThat(channels[1][i]).isEqualTo(click ? -0.25f : 0f);
			assertThat(channels[2][i]).isZero();
			assertThat(channels[4][i]).isEqualTo(click ? 0.125f : 0f);
		}
		assertThat(channels[3]).isEqualTo(read(write(file.withChannels(new TimecodeFeed()), null))[0]);
	}

	@Test
	void musicOfAnotherSampleRateKeepsItsPlace() throws Exception {
		double hertz = 440;
		SampleSource music = new FunctionSource(44_100, 1, 441_000, (frame, channel) -> 0.5 * Math.sin(2 * Math.PI * hertz * frame / 44_100));
		TimecodeFile file = TimecodeFile.timecodeAlone(line(FrameRate.FPS_30, 2_000_000), 10_000_000, 0, 48_000, SampleDepth.PCM_24)
				.withChannels(new TimecodeFeed(), new MusicFeed(0));
		float[] music48 = read(write(file, music))[1];
		for (int i = 96_000 + 2_000; i < 96_000 + 480_000 - 2_000; i++) {
			assertThat((double) music48[i]).isCloseTo(0.5 * Math.sin(2 * Math.PI * hertz * (i - 96_000) / 48_000), within(1e-5));
		}
	}

	@Test
	void tellsWhatItWroteAndWhere() throws Exception {
		TimecodeFile file = TimecodeFile.timecodeAlone(line(FrameRate.FPS_29_97_DROP, 10_000_000), 100_000_000, 3_000_000, 48_000, SampleDepth.PCM_16)
				.withCues(List.of(new CuePoint(480_000, "First note")));
		long[] last = new long[2];
		TimecodeWavWriter.Written written = TimecodeWavWriter.write(OutputStream.nullOutputStream(), file, Optional.empty(), (done, of) -> {
			assertThat(done).isGreaterThan(last[0]);
			last[0] = done;
			last[1] = of;
		});
		// 113 s are 3386.6 frames at 30000/1001: 3387 whole ones.
		assertThat(written.timecodeFrames()).isEqualTo(3387);
		assertThat(written.sampleFrames()).isEqualTo(last[0]).isEqualTo(last[1]);
		assertThat(written.last()).isEqualTo(file.line().start().plusFrames(3386));
		assertThat(written.clippedSamples()).isZero();
		assertThat(file.sampleFrameAt(-10_000_000)).isZero();
		assertThat(file.firstNoteFrame()).isEqualTo(480_000);
	}

	@Test
	void refusesWhatItCannotWrite() {
		TimecodeFile file = TimecodeFile.timecodeAlone(line(FrameRate.FPS_25, 0), 1_000_000, 0, 48_000, SampleDepth.PCM_16);
		assertThatThrownBy(() -> write(file.withChannels(new MusicMixFeed()), null)).isInstanceOf(TimecodeException.class).hasMessageContaining("no music");
		assertThatThrownBy(() -> write(file.withChannels(new MusicFeed(2)), new FunctionSource(48_000, 2, 10, (f, c) -> 0)))
				.isInstanceOf(TimecodeException.class).hasMessageContaining("channel 3").hasMessageContaining("2 channels");
		assertThatThrownBy(file::withChannels).isInstanceOf(TimecodeException.class).hasMessageContaining("without channels");
		assertThatThrownBy(() -> TimecodeFile.timecodeAlone(line(FrameRate.FPS_25, 0), 86_400_000_000L, 1, 48_000, SampleDepth.PCM_16))
				.isInstanceOf(TimecodeException.class).hasMessageContaining("24 hours");
	}

	// An hour at 96 kHz with music must fit a heap of 32 MiB; the process ends with an error if it does not.
	@Test
	void anHourNeedsLittleMemory() throws Exception {
		String classPath = System.getProperty("java.class.path");
		String out = Tool.run(folder, Path.of(System.getProperty("java.home"), "bin", "java"), "-Xmx32m", "-XX:+UseSerialGC", "-cp", classPath,
				HourOfTimecode.class.getName());
		assertThat(out.strip()).isEqualTo("345600" + "048");
	}

	/** Run in a process of its own. */
	static final class HourOfTimecode {
		public static void main(String[] args) throws Exception {
			TimecodeFile file = TimecodeFile.timecodeAlone(line(FrameRate.FPS_25, 60_000_000), 3_540_000_000L, 0, 96_000, SampleDepth.PCM_24)
					.withChannels(new MusicMixFeed(), new TimecodeFeed());
			SampleSource music = new FunctionSource(96_000, 2, 3540L * 96_000, (frame, channel) -> (frame & 1023) / 4096.0);
			System.out.println(TimecodeWavWriter.write(OutputStream.nullOutputStream(), file, Optional.of(music)).sampleFrames());
		}
	}
}
