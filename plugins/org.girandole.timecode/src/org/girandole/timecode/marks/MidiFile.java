package org.girandole.timecode.marks;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigInteger;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.Track;

/**
 * Tempo, meters and marks as a Standard MIDI File (Standard MIDI Files 1.0), read and written by the Java platform. A marker stands on the
 * tick nearest to its mark; beside it a private event (sequencer-specific, identifier 7D for uses without a manufacturer) keeps the exact
 * microsecond, so that a mark comes back as it was. If the marker was moved since, the two disagree and the marker is believed.
 */
public final class MidiFile {
	private static final int TEXT_MARKER = 0x06;
	private static final int TEXT_CUE = 0x07;
	private static final int TEMPO = 0x51;
	private static final int METER = 0x58;
	private static final int PRIVATE = 0x7F;
	private static final byte[] EXACT = { 0x7D, 'G', 'u', 's' };
	private static final int MOST_BYTES = 64 << 20;
	private static final double SMPTE_DROP = 30_000.0 / 1_001;

	private MidiFile() {
	}

	/** The bytes of a file of one track. */
	public static byte[] write(MidiMap map) {
		try {
			Sequence sequence = new Sequence(Sequence.PPQ, map.ticksPerQuarter());
			Track track = sequence.createTrack();
			for (TempoChange tempo : map.tempos()) {
				int us = tempo.usPerQuarter();
				add(track, tempo.tick(), TEMPO, new byte[] { (byte) (us >> 16), (byte) (us >> 8), (byte) us });
			}
			for (MeterChange meter : map.meters()) {
				// 24 clocks a quarter note, 8 thirty-seconds a quarter note: the ordinary relation.
				int clocks = Math.max(1, 96 / meter.unit());
				add(track, meter.tick(), METER, new byte[] { (byte) meter.beats(), (byte) Integer.numberOfTrailingZeros(meter.unit()), (byte) clocks, 8 });
			}
			for (Mark mark : map.marks()) {
				long tick = map.tickAt(mark.timeUs());
				add(track, tick, PRIVATE, ByteBuffer.allocate(EXACT.length + 8).put(EXACT).putLong(mark.timeUs()).array());
				add(track, tick, TEXT_MARKER, mark.name().getBytes(StandardCharsets.UTF_8));
			}
			ByteArrayOutputStream out = new ByteArrayOutputStream();
			MidiSystem.write(sequence, 0, out);
			return out.toByteArray();
		} catch (InvalidMidiDataException e) {
			throw new IllegalStateException(e);
		} catch (IOException e) {
			throw new UncheckedIOException(e);
		}
	}

	private static void add(Track track, long tick, int type, byte[] data) throws InvalidMidiDataException {
		track.add(new MidiEvent(new MetaMessage(type, data, data.length), tick));
	}

	/**
	 * Reads markers and cue points of all tracks as marks, and tempo and meters. Files that count frames instead of quarter notes are read too:
	 * their ticks become microseconds, and they have no tempo.
	 *
	 * @throws MarksException if the bytes are no Standard MIDI File
	 */
	public static MidiMap read(byte[] bytes) throws MarksException {
		if (bytes.length > MOST_BYTES) {
			throw new MarksException("The MIDI file has " + bytes.length + " bytes; at most " + MOST_BYTES + " are read");
		}
		Sequence sequence;
		try {
			sequence = MidiSystem.getSequence(new ByteArrayInputStream(bytes));
		} catch (InvalidMidiDataException | IOException | RuntimeException e) {
			throw new MarksException("The file is no Standard MIDI File, or is damaged"
					+ (e.getMessage() == null || e.getMessage().isBlank() ? "" : ": " + e.getMessage()), e);
		}
		return new Reading(sequence).map();
	}

	private static final class Reading {
		private final Sequence sequence;
		private final List<TempoChange> tempos = new ArrayList<>();
		private final List<MeterChange> meters = new ArrayList<>();
		private final List<Found> found = new ArrayList<>();

		private record Found(long tick, String name, long exactUs) {
		}

		Reading(Sequence sequence) {
			this.sequence = sequence;
		}

		MidiMap map() throws MarksException {
			boolean quarters = sequence.getDivisionType() == Sequence.PPQ;
			if (quarters && sequence.getResolution() < 1) {
				throw new MarksException("The MIDI file counts " + sequence.getResolution() + " ticks a quarter note");
			}
			for (Track track : sequence.getTracks()) {
				read(track);
			}
			tempos.sort(Comparator.comparingLong(TempoChange::tick));
			MidiMap times = new MidiMap(quarters ? sequence.getResolution() : MidiMap.USUAL_TICKS, quarters ? tempos : List.of(), quarters ? meters : List.of(),
					List.of());
			List<Mark> marks = new ArrayList<>();
			for (Found each : found) {
				boolean exact = quarters && each.exactUs >= 0 && times.tickAt(each.exactUs) == each.tick;
				marks.add(new Mark(exact ? each.exactUs : quarters ? times.timeOf(each.tick) : frameTime(each.tick), each.name));
			}
			return new MidiMap(times.ticksPerQuarter(), times.tempos(), times.meters(), marks);
		}

		private void read(Track track) {
			long exactTick = -1;
			long exactUs = -1;
			for (int i = 0; i < track.size(); i++) {
				MidiEvent event = track.get(i);
				if (!(event.getMessage() instanceof MetaMessage meta)) {
					continue;
				}
				byte[] data = meta.getData();
				switch (meta.getType()) {
					case TEMPO -> tempo(event.getTick(), data);
					case METER -> meter(event.getTick(), data);
					case PRIVATE -> {
						if (data.length == EXACT.length + 8 && ByteBuffer.wrap(data, 0, EXACT.length).equals(ByteBuffer.wrap(EXACT))) {
							exactTick = event.getTick();
							exactUs = ByteBuffer.wrap(data).getLong(EXACT.length);
						}
					}
					case TEXT_MARKER, TEXT_CUE -> {
						found.add(new Found(event.getTick(), text(data), exactTick == event.getTick() ? exactUs : -1));
						exactTick = -1;
					}
					default -> {
						// Notes and everything else say nothing about time.
					}
				}
			}
		}

		private void tempo(long tick, byte[] data) {
			int us = data.length == 3 ? (data[0] & 0xFF) << 16 | (data[1] & 0xFF) << 8 | data[2] & 0xFF : 0;
			if (us > 0) {
				tempos.add(new TempoChange(tick, us));
			}
		}

		private void meter(long tick, byte[] data) {
			if (data.length >= 2 && data[0] != 0 && data[1] >= 0 && data[1] <= 6) {
				meters.add(new MeterChange(tick, data[0] & 0xFF, 1 << data[1]));
			}
		}

		private long frameTime(long tick) {
			float type = sequence.getDivisionType();
			BigInteger frames = BigInteger.valueOf(tick);
			// 29.97 frames are 30000 in 1001 seconds; the others are whole.
			long perSeconds = Math.abs(type - SMPTE_DROP) < 0.005 ? 30_000 : Math.round(type) * 1_001L;
			return frames.multiply(BigInteger.valueOf(1_001_000_000L * 2)).divide(BigInteger.valueOf(perSeconds * Math.max(1, sequence.getResolution())))
					.add(BigInteger.ONE).shiftRight(1).longValueExact();
		}

		private static String text(byte[] data) {
			try {
				return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(data)).toString();
			} catch (CharacterCodingException e) {
				return new String(data, StandardCharsets.ISO_8859_1);
			}
		}
	}
}
