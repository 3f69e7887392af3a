package org.girandole.timecode.reader;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Locale;

import org.girandole.timecode.ltc.LtcWord;
import org.girandole.timecode.ltc.UserBits;
import org.girandole.timecode.reader.LineVerdict.Reason;

import com.google.gson.stream.JsonWriter;

/**
 * A report and its verdict as JSON. Positions are samples from the recording's beginning and, beside them, seconds; what was not measured is
 * null. The frames themselves are written only when asked for.
 */
public final class LineReportJson {
	private static final int SCHEMA = 1;

	private final JsonWriter json;
	private final LineReport report;

	private LineReportJson(JsonWriter json, LineReport report) {
		this.json = json;
		this.report = report;
	}

	/** @param frames true to write every frame of every channel */
	public static String write(LineReport report, LineVerdict verdict, boolean frames) {
		StringWriter text = new StringWriter();
		try (JsonWriter json = new JsonWriter(text)) {
			json.setIndent("  ");
			new LineReportJson(json, report).all(verdict, frames);
		} catch (IOException e) {
			throw new UncheckedIOException(e);
		}
		return text.append('\n').toString();
	}

	private void all(LineVerdict verdict, boolean frames) throws IOException {
		json.beginObject();
		json.name("schema").value(SCHEMA);
		json.name("verdict").value(verdict.fitness().name().toLowerCase(Locale.ROOT));
		json.name("verdictText").value(verdict.fitness().words());
		json.name("reasons").beginArray();
		for (Reason reason : verdict.reasons()) {
			json.beginObject().name("weight").value(reason.weight().name().toLowerCase(Locale.ROOT)).name("text").value(reason.text()).endObject();
		}
		json.endArray();
		json.name("sampleRate").value(report.sampleRate());
		json.name("sampleFrames").value(report.sampleFrames());
		json.name("warnings").beginArray();
		for (String warning : report.warnings()) {
			json.value(warning);
		}
		json.endArray();
		json.name("channels").beginArray();
		for (ChannelReport channel : report.channels()) {
			channel(channel, frames);
		}
		json.endArray();
		json.endObject();
	}

	private void channel(ChannelReport channel, boolean frames) throws IOException {
		json.beginObject();
		json.name("channel").value(channel.channel());
		number("peakDbfs", channel.audio().peakDbfs());
		number("rmsDbfs", channel.audio().rmsDbfs());
		number("offset", channel.audio().offset());
		json.name("clippedSamples").value(channel.audio().clippedSamples());
		json.name("timecode");
		if (channel.timecode().isEmpty()) {
			json.nullValue();
		} else {
			reading(channel.timecode().get(), frames);
		}
		json.endObject();
	}

	private void reading(TimecodeReading reading, boolean frames) throws IOException {
		json.beginObject();
		json.name("rate").value(reading.rate().number());
		json.name("dropFrame").value(reading.rate().dropFrame());
		json.name("rateCertain").value(reading.rateCertain());
		json.name("dropFlag").value(reading.dropFlag());
		json.name("dropDisagrees").value(reading.dropDisagrees());
		json.name("direction").value(reading.directions().name().toLowerCase(Locale.ROOT));
		place("firstLock", reading.firstLock());
		place("lastGood", reading.lastGood());
		json.name("first").value(reading.first().digits());
		json.name("last").value(reading.last().digits());
		json.name("goodFrames").value(reading.goodFrames());
		json.name("mendedFrames").value(reading.mendedFrames());
		json.name("doubtfulFrames").value(reading.doubtfulFrames());
		json.name("lostFrames").value(reading.lostFrames());
		range("levelDbfs", reading.levelDbfs());
		range("snrDb", reading.snrDb());
		range("jitterUs", reading.jitterUs());
		number("speedPpm", reading.speedPpm());
		range("secondSpeedPpm", reading.frameSpeedPpm());
		userBits(reading.userBits());
		json.name("gaps").beginArray();
		for (Gap gap : reading.gaps()) {
			json.beginObject();
			place("begin", gap.beginSample());
			place("end", gap.endSample());
			json.name("lostFrames").value(gap.lostFrames()).name("doubtfulFrames").value(gap.doubtful());
			json.name("before").value(gap.before().digits()).name("after").value(gap.after().digits()).name("labelsGoOn").value(gap.labelsGoOn());
			json.endObject();
		}
		json.endArray();
		json.name("jumps").beginArray();
		for (LabelJump jump : reading.jumps()) {
			json.beginObject();
			place("at", jump.sample());
			json.name("from").value(jump.from().digits()).name("to").value(jump.to().digits()).name("frames").value(jump.frames());
			json.endObject();
		}
		json.endArray();
		json.name("impossibleCount").value(reading.impossibleCount());
		json.name("impossible").beginArray();
		for (ImpossibleLabel label : reading.impossible()) {
			json.beginObject();
			place("at", label.sample());
			json.name("label").value(label.word().digits()).name("why").value(label.why());
			json.endObject();
		}
		json.endArray();
		timeline(reading);
		if (frames) {
			frames(reading);
		}
		json.endObject();
	}

	private void userBits(UserBitsFound bits) throws IOException {
		json.name("slot");
		if (bits.mark().isPresent()) {
			json.value(bits.mark().get().slot());
			json.name("stamp").value(bits.mark().get().stamp());
		} else {
			json.nullValue();
			json.name("stamp").nullValue();
		}
		json.name("markedFrames").value(bits.marked()).name("foreignMarks").value(bits.foreign()).name("emptyUserBits").value(bits.empty());
		json.name("otherUserBits").value(bits.sample());
	}

	private void timeline(TimecodeReading reading) throws IOException {
		json.name("seconds").beginArray();
		for (LineSecond each : reading.timeline()) {
			json.beginObject();
			json.name("second").value(each.second());
			number("goodShare", each.goodShare());
			number("levelDbfs", each.levelDbfs());
			number("speedPpm", each.speedPpm());
			number("snrDb", each.snrDb());
			json.endObject();
		}
		json.endArray();
	}

	private void frames(TimecodeReading reading) throws IOException {
		json.name("frames").beginArray();
		json.setIndent("");
		for (LtcFrame frame : reading.frames()) {
			LtcWord word = frame.word();
			json.beginObject();
			number("at", frame.begin());
			json.name("label").value(word.digits());
			json.name("quality").value(frame.quality().name().toLowerCase(Locale.ROOT));
			number("confidence", frame.confidence());
			number("levelDbfs", frame.levelDbfs());
			number("snrDb", frame.snrDb());
			number("jitterUs", frame.jitterUs());
			json.name("userBits").value(UserBits.hex(word.userBits()));
			json.endObject();
		}
		json.setIndent("  ");
		json.endArray();
	}

	private void place(String name, double sample) throws IOException {
		number(name + "Sample", sample);
		number(name + "Seconds", sample / report.sampleRate());
	}

	private void range(String name, Range range) throws IOException {
		json.name(name).beginObject();
		number("least", range.least());
		number("mean", range.mean());
		number("most", range.most());
		json.endObject();
	}

	/** Six places behind the point are more than is measured, and the same on every machine; JSON knows no infinity. */
	private void number(String name, double value) throws IOException {
		json.name(name);
		if (Double.isFinite(value)) {
			json.jsonValue(String.format(Locale.ROOT, "%.6f", value == 0 ? 0.0 : value));
		} else {
			json.nullValue();
		}
	}
}
