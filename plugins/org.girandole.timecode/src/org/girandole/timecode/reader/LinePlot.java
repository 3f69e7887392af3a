package org.girandole.timecode.reader;

import java.io.StringWriter;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;

import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/**
 * Lock, level and speed of a line against time, as an SVG drawing that also reads in black and white: lock is a filled bar, its breaks are white,
 * and every gap and jump has a mark of its own shape.
 */
public final class LinePlot {
	private static final int WIDTH = 900;
	private static final int LEFT = 90;
	private static final int RIGHT = 20;
	private static final int LOCK_TOP = 40;
	private static final int LOCK_HEIGHT = 30;
	private static final int LEVEL_TOP = 100;
	private static final int SPEED_TOP = 240;
	private static final int LANE_HEIGHT = 110;
	private static final int HEIGHT = 395;
	/** More columns than this would not be seen. */
	private static final int MOST_COLUMNS = 790;
	private static final int[] TICK_SECONDS = { 1, 2, 5, 10, 30, 60, 120, 300, 600, 1200, 1800, 3600, 7200 };
	private static final int MOST_TICKS = 10;
	private static final String SVG = "http://www.w3.org/2000/svg";

	private final XMLStreamWriter svg;
	private final LineReport report;
	private final TimecodeReading reading;
	private final double seconds;

	private LinePlot(XMLStreamWriter svg, LineReport report, TimecodeReading reading) {
		this.svg = svg;
		this.report = report;
		this.reading = reading;
		this.seconds = Math.max(1e-3, (double) report.sampleFrames() / report.sampleRate());
	}

	/** The drawing of one channel of the report, with a title for people who cannot see it. */
	public static String svg(LineReport report, TimecodeReading reading, String title) {
		StringWriter text = new StringWriter();
		try {
			XMLStreamWriter writer = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(text);
			new LinePlot(writer, report, reading).draw(title);
			writer.close();
		} catch (XMLStreamException e) {
			throw new IllegalStateException(e);
		}
		return text.append('\n').toString();
	}

	private void draw(String title) throws XMLStreamException {
		svg.writeStartElement("svg");
		svg.writeDefaultNamespace(SVG);
		attributes("viewBox", "0 0 " + WIDTH + " " + HEIGHT, "width", WIDTH, "height", HEIGHT, "role", "img", "font-family", "sans-serif", "font-size", 12);
		svg.writeStartElement("title");
		svg.writeCharacters(title + ": " + reading.goodFrames() + " good frames, " + reading.lostFrames() + " lost in " + reading.gaps().size() + " gaps");
		svg.writeEndElement();
		rectangle(0, 0, WIDTH, HEIGHT, "white", "none");
		text(LEFT, 20, "start", title);
		lock();
		double level = reading.levelDbfs().mean();
		lane(LEVEL_TOP, "Level", "dBFS", LineSecond::levelDbfs, Math.min(reading.levelDbfs().least(), level - 3), Math.max(reading.levelDbfs().most(), level + 3),
				LineText::one);
		double speed = Math.max(50, Math.max(Math.abs(reading.frameSpeedPpm().least()), Math.abs(reading.frameSpeedPpm().most())));
		lane(SPEED_TOP, "Speed", "ppm", LineSecond::speedPpm, -speed, speed, LineText::signed);
		axis();
		svg.writeEndElement();
	}

	private void lock() throws XMLStreamException {
		text(LEFT - 8, LOCK_TOP + 20, "end", "Lock");
		rectangle(LEFT, LOCK_TOP, plotWidth(), LOCK_HEIGHT, "white", "black");
		double from = reading.firstLock();
		for (Gap gap : reading.gaps()) {
			locked(from, gap.beginSample());
			from = gap.endSample();
		}
		locked(from, reading.lastGood());
		for (Gap gap : reading.gaps()) {
			// A gap of a frame would be thinner than a hair: its mark stands above the bar.
			double x = x(gap.beginSample());
			path("M" + n(x) + " " + (LOCK_TOP - 2) + "l-4 -7h8z", "black", "none", 1);
		}
		for (LabelJump jump : reading.jumps()) {
			double x = x(jump.sample());
			path("M" + n(x - 4) + " " + (LOCK_TOP + LOCK_HEIGHT + 4) + "l8 8m0 -8l-8 8", "none", "black", 1.5);
		}
	}

	private void locked(double from, double to) throws XMLStreamException {
		rectangle(x(from), LOCK_TOP, Math.max(0, x(to) - x(from)), LOCK_HEIGHT, "#444444", "none");
	}

	private interface Format {
		String of(double value);
	}

	private void lane(int top, String name, String unit, ToDoubleFunction<LineSecond> value, double low, double high, Format format) throws XMLStreamException {
		rectangle(LEFT, top, plotWidth(), LANE_HEIGHT, "none", "black");
		text(LEFT - 8, top + LANE_HEIGHT / 2.0 - 4, "end", name);
		text(LEFT - 8, top + LANE_HEIGHT / 2.0 + 12, "end", unit);
		text(LEFT - 8, top + 10, "end", format.of(high));
		text(LEFT - 8, top + LANE_HEIGHT, "end", format.of(low));
		StringBuilder path = new StringBuilder();
		boolean drawing = false;
		List<LineSecond> timeline = reading.timeline();
		int group = Math.max(1, (timeline.size() + MOST_COLUMNS - 1) / MOST_COLUMNS);
		for (int i = 0; i < timeline.size(); i += group) {
			double least = Double.NaN;
			double most = Double.NaN;
			for (LineSecond each : timeline.subList(i, Math.min(timeline.size(), i + group))) {
				double v = value.applyAsDouble(each);
				if (!Double.isNaN(v)) {
					least = Double.isNaN(least) ? v : Math.min(least, v);
					most = Double.isNaN(most) ? v : Math.max(most, v);
				}
			}
			if (Double.isNaN(least)) {
				drawing = false;
				continue;
			}
			double from = x((double) timeline.get(i).second() * report.sampleRate());
			double to = Math.min(LEFT + plotWidth(), x((timeline.get(i).second() + (double) group) * report.sampleRate()));
			path.append(drawing ? 'L' : 'M').append(n(from)).append(' ').append(n(y(top, least, low, high))).append('L').append(n(group > 1 ? from : to)).append(' ')
					.append(n(y(top, most, low, high)));
			drawing = true;
		}
		if (path.length() > 0) {
			path(path.toString(), "none", "black", 1.2);
		}
	}

	private void axis() throws XMLStreamException {
		int bottom = SPEED_TOP + LANE_HEIGHT;
		int step = TICK_SECONDS[TICK_SECONDS.length - 1];
		for (int i = TICK_SECONDS.length - 1; i >= 0 && seconds / TICK_SECONDS[i] <= MOST_TICKS; i--) {
			step = TICK_SECONDS[i];
		}
		for (long at = 0; at <= seconds; at += step) {
			double x = x((double) at * report.sampleRate());
			path("M" + n(x) + " " + bottom + "v5", "none", "black", 1);
			text(x, bottom + 18, "middle", at / 60 + ":" + String.format(Locale.ROOT, "%02d", at % 60));
		}
		text(LEFT + plotWidth() / 2.0, bottom + 36, "middle", "time in the recording, minutes and seconds");
	}

	private double x(double sample) {
		return LEFT + Math.max(0, Math.min(1, sample / report.sampleRate() / seconds)) * plotWidth();
	}

	private static double y(int top, double value, double low, double high) {
		return top + LANE_HEIGHT * (1 - Math.max(0, Math.min(1, (value - low) / (high - low))));
	}

	private static int plotWidth() {
		return WIDTH - LEFT - RIGHT;
	}

	private void rectangle(double x, double y, double width, double height, String fill, String stroke) throws XMLStreamException {
		svg.writeEmptyElement("rect");
		attributes("x", n(x), "y", n(y), "width", n(width), "height", n(height), "fill", fill, "stroke", stroke);
	}

	private void path(String data, String fill, String stroke, double width) throws XMLStreamException {
		svg.writeEmptyElement("path");
		attributes("d", data, "fill", fill, "stroke", stroke, "stroke-width", n(width));
	}

	private void text(double x, double y, String anchor, String content) throws XMLStreamException {
		svg.writeStartElement("text");
		attributes("x", n(x), "y", n(y), "text-anchor", anchor);
		svg.writeCharacters(content);
		svg.writeEndElement();
	}

	private void attributes(Object... namesAndValues) throws XMLStreamException {
		for (int i = 0; i < namesAndValues.length; i += 2) {
			svg.writeAttribute(namesAndValues[i].toString(), namesAndValues[i + 1].toString());
		}
	}

	private static String n(double value) {
		return String.format(Locale.ROOT, "%.2f", value);
	}
}
