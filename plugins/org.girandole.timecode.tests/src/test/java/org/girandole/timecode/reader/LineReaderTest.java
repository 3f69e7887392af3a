package org.girandole.timecode.reader;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

import javax.xml.parsers.DocumentBuilderFactory;

import org.girandole.timecode.FrameRate;
import org.girandole.timecode.Timecode;
import org.girandole.timecode.TimecodeLine;
import org.girandole.timecode.Tool;
import org.girandole.timecode.ltc.ChannelFeed.MusicMixFeed;
import org.girandole.timecode.ltc.ChannelFeed.TimecodeFeed;
import org.girandole.timecode.ltc.LtcSignal;
import org.girandole.timecode.ltc.LtcWord;
import org.girandole.timecode.ltc.ReleaseMark;
import org.girandole.timecode.ltc.TimecodeFile;
import org.girandole.timecode.ltc.TimecodeWavWriter;
import org.girandole.timecode.reader.LineVerdict.Fitness;
import org.girandole.timecode.reader.LineVerdict.Reason;
import org.girandole.timecode.wav.FunctionSource;
import org.girandole.timecode.wav.SampleDepth;
import org.girandole.timecode.wav.SampleSource;
import org.girandole.timecode.wav.WavException;
import org.girandole.timecode.wav.WavWriter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;

class LineReaderTest {
	private static final int RATE = 48_000;
	private static final ReleaseMark MARK = new ReleaseMark(5, "0123abcd");

	@TempDir
	Path folder;

	private static TimecodeLine line(FrameRate rate) {
		return new TimecodeLine(rate, Timecode.parse("10:00:00:00", rate), 5_000_000);
	}

	private static LineExpectation expectation(FrameRate rate) {
		return new LineExpectation(Optional.of(line(rate)), 10_000_000, Optional.of(MARK));
	}

	private Path show(FrameRate rate, TimecodeFile file, SampleSource music) throws Exception {
		Path wav = folder.resolve("line-" + rate.name() + ".wav");
		try (OutputStream out = Files.newOutputStream(wav)) {
			TimecodeWavWriter.write(out, file, Optional.ofNullable(music));
		}
		return wav;
	}

	private static TimecodeFile file(FrameRate rate) {
		return TimecodeFile.timecodeAlone(line(rate), 10_000_000, 1_000_000, RATE, SampleDepth.PCM_24).withMark(MARK);
	}

	private static LineReport read(Path wav) throws Exception {
		return LineReader.read(wav, (done, of) -> {
		});
	}

	private static LineReport read(float[] samples, int sampleRate) throws Exception {
		return LineReader.read(new FunctionSource(sampleRate, 1, samples.length, (frame, channel) -> samples[(int) frame]), (done, of) -> {
		});
	}

	private static TimecodeReading reading(LineReport report) {
		return report.timecodeChannel().orElseThrow().timecode().orElseThrow();
	}

	private static List<String> texts(LineVerdict verdict) {
		return verdict.reasons().stream().map(Reason::text).toList();
	}

	@ParameterizedTest
	@EnumSource
	void whatWeWriteIsFitForTheNight(FrameRate rate) throws Exception {
		LineReport report = read(show(rate, file(rate), null));
		TimecodeReading reading = reading(report);
		assertThat(reading.rate()).isEqualTo(rate);
		assertThat(reading.rateCertain()).isTrue();
		assertThat(reading.goodFrames()).isEqualTo((int) file(rate).timecodeFrames());
		assertThat(reading.lostFrames()).isZero();
		assertThat(reading.mendedFrames()).isZero();
		assertThat(reading.gaps()).isEmpty();
		assertThat(reading.jumps()).isEmpty();
		assertThat(reading.impossible()).isEmpty();
		assertThat(reading.first().label(rate)).contains(line(rate).start());
		assertThat(reading.firstLock()).isCloseTo(0, within(2.0));
		assertThat(reading.levelDbfs().mean()).isCloseTo(-12, within(0.05));
		assertThat(reading.speedPpm()).isCloseTo(0, within(2.0));
		assertThat(reading.userBits().mark()).contains(MARK);
		assertThat(reading.userBits().marked()).isEqualTo(reading.goodFrames());
		LineVerdict verdict = LineJudge.judge(report, expectation(rate), LineDemands.usual());
		assertThat(verdict.fitness()).as("%s", texts(verdict)).isEqualTo(Fitness.FIT);
		assertThat(LineJudge.judge(report, LineExpectation.none(), LineDemands.usual()).fitness()).isEqualTo(Fitness.FIT_AS_SIGNAL);
	}

	@Test
	void findsTheChannelAndNamesALeak() throws Exception {
		FrameRate rate = FrameRate.FPS_25;
		SampleSource music = new FunctionSource(44_100, 2, 441_000, (frame, channel) -> 0.4 * Math.sin(2 * Math.PI * 220 * (1 + channel) * frame / 44_100));
		Path wav = show(rate, file(rate).withChannels(new MusicMixFeed(), new TimecodeFeed()), music);
		LineReport report = read(wav);
		assertThat(report.channels()).hasSize(2);
		assertThat(report.channels().get(0).timecode()).isEmpty();
		assertThat(report.timecodeChannel().orElseThrow().channel()).isEqualTo(2);
		assertThat(LineJudge.judge(report, expectation(rate), LineDemands.usual()).fitness()).isEqualTo(Fitness.FIT);

		Path twice = show(rate, file(rate).withChannels(new TimecodeFeed(), new TimecodeFeed()), null);
		LineVerdict verdict = LineJudge.judge(read(twice), expectation(rate), LineDemands.usual());
		assertThat(verdict.fitness()).isEqualTo(Fitness.WITH_CARE);
		assertThat(texts(verdict)).anySatisfy(text -> assertThat(text).contains("timecode on channel 2 too"));
	}

	@Test
	void reportsHolesWithinAFrameOfTheirPlaces() throws Exception {
		float[] samples = Line.clean(FrameRate.FPS_25, RATE, "10:00:00:00", 1500);
		double[][] holes = { { 3.013, 3.5 }, { 10.2, 11.7 }, { 40.303, 40.323 } };
		for (boolean noisy : new boolean[] { false, true }) {
			float[] cut = Line.each(samples, (i, x) -> inside(i / (double) RATE, holes) ? 0 : x);
			TimecodeReading reading = reading(read(noisy ? Line.whiteNoise(cut, 10, 1) : cut, RATE));
			assertThat(reading.gaps()).hasSize(3);
			for (int i = 0; i < 3; i++) {
				Gap gap = reading.gaps().get(i);
				assertThat(gap.beginSample() / RATE).isCloseTo(holes[i][0], within(0.04));
				assertThat(gap.endSample() / RATE).isCloseTo(holes[i][1], within(0.04));
				assertThat(gap.labelsGoOn()).isTrue();
			}
			assertThat(reading.jumps()).isEmpty();
			assertThat(reading.goodFrames() + reading.lostFrames()).isEqualTo(1500);
			assertThat(reading.longestGap()).contains(reading.gaps().get(1));
		}
	}

	private static boolean inside(double second, double[][] holes) {
		for (double[] hole : holes) {
			if (second >= hole[0] && second < hole[1]) {
				return true;
			}
		}
		return false;
	}

	@Test
	void reportsJumpsAndTwoTimecodesInOneFile() throws Exception {
		float[] first = Line.clean(FrameRate.FPS_25, RATE, "01:00:00:00", 100);
		float[] second = Line.clean(FrameRate.FPS_25, RATE, "05:00:00:00", 100);
		float[] both = new float[first.length + RATE + second.length];
		System.arraycopy(first, 0, both, 0, first.length);
		System.arraycopy(second, 0, both, first.length + RATE, second.length);
		LineReport report = read(both, RATE);
		TimecodeReading reading = reading(report);
		assertThat(reading.goodFrames()).isEqualTo(200);
		assertThat(reading.gaps()).singleElement().satisfies(gap -> assertThat(gap.labelsGoOn()).isFalse());
		assertThat(reading.jumps()).singleElement().satisfies(jump -> {
			assertThat(jump.to().digits()).isEqualTo("05:00:00:00");
			assertThat(jump.sample()).isCloseTo(first.length + RATE, within(3.0));
			// Four hours, less the hundred frames, and the 25 of the silence, that went by.
			assertThat(jump.frames()).isCloseTo(4 * 90_000 - 125, within(1L));
		});
		LineVerdict verdict = LineJudge.judge(report, expectation(FrameRate.FPS_25), LineDemands.usual());
		assertThat(verdict.fitness()).isEqualTo(Fitness.UNFIT);
		assertThat(texts(verdict)).anySatisfy(text -> assertThat(text).contains("jump 1 time").contains("01:00:03:24 to 05:00:00:00"));
	}

	@Test
	void namesLabelsThatDropFrameCountingLeavesOut() throws Exception {
		// Counted without dropping, but flagged as drop-frame.
		Timecode start = Timecode.parse("00:00:58:00", FrameRate.FPS_29_97);
		LtcSignal signal = new LtcSignal(FrameRate.FPS_29_97, RATE, -6, frame -> {
			long data = LtcWord.of(start.plusFrames(frame), 0).data() | LtcWord.DROP_MASK;
			return new LtcWord(data);
		}, 120);
		float[] samples = new float[(int) LtcSignal.samples(FrameRate.FPS_29_97, RATE, 120)];
		int at = 0;
		int got;
		while ((got = signal.read(samples, at, samples.length - at)) > 0) {
			at += got;
		}
		LineReport report = read(samples, RATE);
		TimecodeReading reading = reading(report);
		assertThat(reading.impossibleCount()).isEqualTo(2);
		assertThat(reading.impossible().get(0).word().digits()).isEqualTo("00:01:00;00");
		assertThat(reading.impossible().get(0).sample()).isCloseTo(60 * 1601.6, within(3.0));
		assertThat(reading.dropDisagrees()).isTrue();
		LineVerdict verdict = LineJudge.judge(report, LineExpectation.none(), LineDemands.usual());
		assertThat(verdict.fitness()).isEqualTo(Fitness.UNFIT);
		assertThat(texts(verdict)).anySatisfy(text -> assertThat(text).contains("2 labels cannot exist").contains("sample 96096"))
				.anySatisfy(text -> assertThat(text).contains("counted the other way"));
	}

	@ParameterizedTest
	@CsvSource({ "48480, 25 fps, -9901", "47995, 25 fps, 104" })
	void measuresTheSpeed(int madeFor, String rate, double ppm) throws Exception {
		float[] samples = Line.clean(FrameRate.FPS_25, madeFor, "10:00:00:00", 500);
		TimecodeReading reading = reading(read(samples, RATE));
		assertThat(reading.rate()).hasToString(rate);
		assertThat(reading.speedPpm()).isCloseTo(ppm, within(3.0));
	}

	@Test
	void tellsCloseRatesApartOnlyWhereTheSpeedAllowsIt() throws Exception {
		TimecodeReading slow = reading(read(Line.clean(FrameRate.FPS_29_97, RATE, "10:00:00:00", 300), RATE));
		assertThat(slow.rate()).isEqualTo(FrameRate.FPS_29_97);
		assertThat(slow.rateCertain()).isTrue();
		LineReport between = read(Line.clean(FrameRate.FPS_30, 48_024, "10:00:00:00", 300), RATE);
		assertThat(reading(between).rateCertain()).isFalse();
		LineVerdict verdict = LineJudge.judge(between, new LineExpectation(Optional.of(line(FrameRate.FPS_30)), 0, Optional.empty()), LineDemands.usual());
		assertThat(texts(verdict)).anySatisfy(text -> assertThat(text).contains("the show's, 30 fps"))
				.anySatisfy(text -> assertThat(text).contains("-500 parts per million").contains("30.0 ms a minute slow"));
	}

	@Test
	void saysWhatIsWrongWithAWrongLine() throws Exception {
		LineReport report = read(show(FrameRate.FPS_25, file(FrameRate.FPS_25), null));
		LineExpectation other = new LineExpectation(Optional.of(line(FrameRate.FPS_24)), 10_000_000, Optional.of(new ReleaseMark(5, "ffffffff")));
		LineVerdict verdict = LineJudge.judge(report, other, LineDemands.usual());
		assertThat(verdict.fitness()).isEqualTo(Fitness.UNFIT);
		assertThat(texts(verdict)).anySatisfy(text -> assertThat(text).isEqualTo("The rate is 25 fps, but the show's is 24 fps"))
				.anySatisfy(text -> assertThat(text).contains("slot 5, stamp 0123-ABCD, but this release is slot 5, stamp FFFF-FFFF"));
		assertThat(verdict.reasons().get(0).weight()).isEqualTo(LineVerdict.Weight.AGAINST);

		TimecodeLine later = new TimecodeLine(FrameRate.FPS_25, Timecode.parse("11:00:00:00", FrameRate.FPS_25), 5_000_000);
		assertThat(texts(LineJudge.judge(report, new LineExpectation(Optional.of(later), 10_000_000, Optional.empty()), LineDemands.usual())))
				.anySatisfy(text -> assertThat(text).contains("are not the show's, which begin with 11:00:00:00"));
	}

	@Test
	void judgesNoiseHumAndDirection() throws Exception {
		float[] samples = Line.clean(FrameRate.FPS_25, RATE, "10:00:00:00", 400);
		LineExpectation expected = new LineExpectation(Optional.of(line(FrameRate.FPS_25)), 0, Optional.of(Line.MARK));
		assertThat(LineJudge.judge(read(Line.whiteNoise(samples, 6, 1), RATE), expected, LineDemands.usual())).satisfies(verdict -> {
			assertThat(verdict.fitness()).isEqualTo(Fitness.UNFIT);
			assertThat(texts(verdict)).anySatisfy(text -> assertThat(text).contains("a reader that goes by edges loses this line"));
		});
		assertThat(LineJudge.judge(read(Line.whiteNoise(samples, 13, 1), RATE), expected, LineDemands.usual()).fitness()).isEqualTo(Fitness.WITH_CARE);
		assertThat(LineJudge.judge(read(Line.whiteNoise(samples, 25, 1), RATE), expected, LineDemands.usual()).fitness()).isEqualTo(Fitness.FIT);
		assertThat(texts(LineJudge.judge(read(Line.backwards(samples), RATE), expected, LineDemands.usual()))).contains("The timecode runs backwards");
		LineReport clipped = read(Line.each(samples, (i, x) -> Math.max(-1, Math.min(1, 10 * x))), RATE);
		assertThat(texts(LineJudge.judge(clipped, expected, LineDemands.usual()))).anySatisfy(text -> assertThat(text).contains("cut off at full scale"));
	}

	@Test
	void saysWhenThereIsNoTimecode() throws Exception {
		assertThat(texts(LineJudge.judge(read(new float[RATE * 3], RATE), LineExpectation.none(), LineDemands.usual())))
				.containsExactly("No timecode was found on 1 channel: the recording is silent");
		LineReport tone = read(Line.each(new float[RATE * 3], (i, x) -> 0.3 * Math.sin(i / 10.0)), RATE);
		assertThat(LineJudge.judge(tone, LineExpectation.none(), LineDemands.usual()).fitness()).isEqualTo(Fitness.UNFIT);
		assertThat(texts(LineJudge.judge(tone, LineExpectation.none(), LineDemands.usual()))).singleElement().asString().contains("it is not timecode");
		assertThat(texts(LineJudge.judge(read(new float[0], RATE), LineExpectation.none(), LineDemands.usual()))).singleElement().asString()
				.contains("the recording is empty");
	}

	@Test
	void givesTheLabelAtAnyMoment() throws Exception {
		TimecodeReading reading = reading(read(Line.clean(FrameRate.FPS_25, RATE, "10:00:00:00", 100), RATE));
		FrameTrack frames = reading.frames();
		assertThat(frames).hasSize(100);
		assertThat(frames.at(10.5 * 1920).orElseThrow().word().digits()).isEqualTo("10:00:00:10");
		assertThat(frames.at(99.9 * 1920).orElseThrow().word().digits()).isEqualTo("10:00:03:24");
		assertThat(frames.at(-100)).isEmpty();
		assertThat(frames.at(101 * 1920.0)).isEmpty();
		assertThatThrownBy(() -> frames.remove(0)).isInstanceOf(UnsupportedOperationException.class);
	}

	@Test
	void writesTextJsonAndADrawing() throws Exception {
		float[] samples = Line.each(Line.clean(FrameRate.FPS_25, RATE, "10:00:00:00", 500), (i, x) -> i > 200_000 && i < 250_000 ? 0 : x);
		LineReport report = read(samples, RATE);
		LineVerdict verdict = LineJudge.judge(report, LineExpectation.none(), LineDemands.usual());
		List<String> lines = LineReportText.lines(report, verdict);
		assertThat(lines.get(0)).isEqualTo("NOT fit for the night");
		assertThat(lines).anySatisfy(text -> assertThat(text).startsWith("  gap      0:04.16").contains("10:00:04:03 to 10:00:05:05"))
				.anySatisfy(text -> assertThat(text).contains("slot 3, DEAD-BEEF"));

		JsonObject json = JsonParser.parseString(LineReportJson.write(report, verdict, true)).getAsJsonObject();
		assertThat(json.get("verdict").getAsString()).isEqualTo("unfit");
		JsonObject timecode = json.getAsJsonArray("channels").get(0).getAsJsonObject().getAsJsonObject("timecode");
		assertThat(timecode.get("goodFrames").getAsInt()).isEqualTo(reading(report).goodFrames());
		assertThat(timecode.getAsJsonArray("gaps")).hasSize(1);
		assertThat(timecode.getAsJsonArray("frames").get(0).getAsJsonObject().get("label").getAsString()).isEqualTo("10:00:00:00");
		assertThat(timecode.get("stamp").getAsString()).isEqualTo("deadbeef");
		assertThat(timecode.getAsJsonArray("seconds")).hasSize(21);
		JsonObject silent = JsonParser.parseString(LineReportJson.write(read(new float[10], RATE), verdict, false)).getAsJsonObject();
		assertThat(silent.getAsJsonArray("channels").get(0).getAsJsonObject().get("peakDbfs").isJsonNull()).isTrue();

		String svg = LinePlot.svg(report, reading(report), "Line <1> & more");
		DocumentBuilderFactory.newDefaultInstance().newDocumentBuilder().parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
		assertThat(svg).contains("Line &lt;1&gt; &amp; more").isEqualTo(LinePlot.svg(report, reading(report), "Line <1> & more"));
		// Two stretches of lock with a gap between them.
		assertThat(svg.split("#444444", -1)).hasSize(3);
	}

	@Test
	void putsWhatIsWrongWithTheFileIntoTheReport() throws Exception {
		Path wav = show(FrameRate.FPS_25, file(FrameRate.FPS_25), null);
		byte[] bytes = Files.readAllBytes(wav);
		Path cut = folder.resolve("cut.wav");
		Files.write(cut, Arrays.copyOf(bytes, bytes.length / 2));
		LineReport report = read(cut);
		assertThat(report.warnings()).anySatisfy(warning -> assertThat(warning).contains("cut off"));
		assertThat(texts(LineJudge.judge(report, expectation(FrameRate.FPS_25), LineDemands.usual())))
				.anySatisfy(text -> assertThat(text).contains("cut off")).anySatisfy(text -> assertThat(text).contains("before the show does"));
		Path slow = folder.resolve("slow.wav");
		try (WavWriter writer = new WavWriter(Files.newOutputStream(slow), 4_000, 1, SampleDepth.PCM_16, 0, List.of())) {
			assertThat(writer.clipped()).isZero();
		}
		assertThatThrownBy(() -> read(slow)).isInstanceOf(WavException.class).hasMessageContaining("4000 Hz");
	}

	// sox 14.4.2 does to the file what a bad line does: quiet, inverted, resampled, fast, narrow; all at once, and with noise.
	@ParameterizedTest
	@CsvSource(delimiter = '|', value = {
			"vol 0.02 | -46.0", "vol -1 | -12.0", "rate 22050 | -12.0", "speed 1.01 | -12.0", "sinc 300-3400 | -12.0",
			"vol -0.1 speed 1.01 rate 22050 sinc 300-3400 | -32.0" })
	void readsWhatSoxHasMadeOfIt(String effects, double level) throws Exception {
		Tool.require("sox");
		Path wav = show(FrameRate.FPS_25, file(FrameRate.FPS_25), null);
		Path bad = folder.resolve("bad.wav");
		List<Object> command = new ArrayList<>(List.of("sox", "-D", wav, "-b", "16", bad));
		command.addAll(List.of(effects.split(" ")));
		Tool.run(folder, command.toArray());
		LineReport report = read(bad);
		TimecodeReading reading = reading(report);
		assertThat(reading.rate()).isEqualTo(FrameRate.FPS_25);
		assertThat(reading.first().digits()).isEqualTo("10:00:00:00");
		assertThat(reading.goodFrames()).isEqualTo((int) file(FrameRate.FPS_25).timecodeFrames());
		assertThat(reading.gaps()).isEmpty();
		assertThat(reading.userBits().mark()).contains(MARK);
		assertThat(reading.levelDbfs().mean()).isCloseTo(level, within(1.5));
		assertThat(reading.speedPpm()).isCloseTo(effects.contains("speed") ? 10_000 : 0, within(5.0));
		LineVerdict verdict = LineJudge.judge(report, expectation(FrameRate.FPS_25), LineDemands.usual());
		assertThat(verdict.fitness() == Fitness.UNFIT).as("%s", texts(verdict)).isEqualTo(effects.contains("speed"));
	}

	// The telephone band alone is a matter of care: libltc 1.3.2, a reader that goes by edges, loses no frame of it that it reads of the clean line.
	@Test
	void theTelephoneBandIsFitWithCareAsLibltcReadsItToo() throws Exception {
		Tool.require("sox");
		Path libltc = Tool.libltc();
		Path wav = show(FrameRate.FPS_25, file(FrameRate.FPS_25), null);
		Path narrow = folder.resolve("narrow.wav");
		Tool.run(folder, "sox", "-D", wav, "-b", "16", narrow, "sinc", "300-3400");
		LineVerdict verdict = LineJudge.judge(read(narrow), expectation(FrameRate.FPS_25), LineDemands.usual());
		assertThat(verdict.fitness()).as("%s", texts(verdict)).isEqualTo(Fitness.WITH_CARE);
		assertThat(texts(verdict)).anySatisfy(text -> assertThat(text).contains("may lose frames"));
		long ofClean = framesReadBy(libltc, wav);
		assertThat(ofClean).isGreaterThanOrEqualTo(file(FrameRate.FPS_25).timecodeFrames() - 1);
		assertThat(framesReadBy(libltc, narrow)).isEqualTo(ofClean);
	}

	private long framesReadBy(Path libltc, Path wav) throws Exception {
		Path raw = folder.resolve("raw.f32");
		Tool.run(folder, "sox", "-D", wav, "-t", "f32", raw);
		return Tool.run(folder, libltc, "decode", "f32", raw, RATE, 25).lines().count();
	}

	@Test
	void readsWithNoiseFromSox() throws Exception {
		Tool.require("sox");
		Path wav = show(FrameRate.FPS_25, file(FrameRate.FPS_25), null);
		Path noise = folder.resolve("noise.wav");
		Path bad = folder.resolve("bad.wav");
		// The line's power is 0.0625 less the edges; sox's white noise lies evenly between -1 and 1 and has a power of a third.
		double gain = Math.sqrt(0.0625 * 3 / Math.pow(10, 0.6));
		Tool.run(folder, "sox", "-R", "-r", RATE, "-n", "-b", "24", noise, "synth", "16", "whitenoise", "vol", gain);
		Tool.run(folder, "sox", "-m", "-v", "1", wav, "-v", "1", noise, bad, "trim", "0", "16");
		LineReport report = read(bad);
		assertThat(reading(report).goodFrames()).isEqualTo(400);
		assertThat(reading(report).jumps()).isEmpty();
		LineVerdict verdict = LineJudge.judge(report, expectation(FrameRate.FPS_25), LineDemands.usual());
		assertThat(texts(verdict)).anySatisfy(text -> assertThat(text).contains("Noise and distortion lie").contains("loses this line"));
	}

	// libltc 1.3.2 as the independent writer: every frame of every file that it makes.
	@ParameterizedTest
	@EnumSource
	void weReadEveryFrameThatLibltcWrites(FrameRate rate) throws Exception {
		Path libltc = Tool.libltc();
		for (int sampleRate : new int[] { 8_000, 22_050, 44_100, 48_000, 96_000 }) {
			for (int level : new int[] { 0, -3, -18 }) {
				Path raw = folder.resolve("theirs.u8");
				Tool.run(folder, libltc, "encode", rate.number() + (rate.dropFrame() ? "d" : ""), "09:59:55:00", "01234567", 300, sampleRate, level, raw);
				byte[] bytes = Files.readAllBytes(raw);
				float[] samples = new float[bytes.length];
				for (int i = 0; i < bytes.length; i++) {
					samples[i] = ((bytes[i] & 0xFF) - 128) / 128f;
				}
				List<String> labels = new ArrayList<>();
				TimecodeReading reading = reading(read(samples, sampleRate));
				reading.frames().forEach(frame -> labels.add(frame.word().digits() + " " + frame.quality()));
				List<String> expected = new ArrayList<>();
				for (int i = 0; i < 300; i++) {
					expected.add(Timecode.parse("09:59:55:00", rate).plusFrames(i) + " READ");
				}
				assertThat(labels).as("%s %d Hz %d dBFS", rate, sampleRate, level).isEqualTo(expected);
				assertThat(reading.userBits().sample()).isEqualTo("01234567");
				assertThat(reading.rate()).isEqualTo(rate);
			}
		}
	}
}
