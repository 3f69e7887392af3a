package org.girandole.timecode.marks;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;

import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.SysexMessage;
import javax.sound.midi.Track;

import org.girandole.timecode.FrameRate;
import org.girandole.timecode.Timecode;
import org.girandole.timecode.TimecodeException;
import org.girandole.timecode.TimecodeLine;

/**
 * MIDI time code (MIDI Manufacturers Association, RP-004/RP-008): the label in eight quarter-frame messages over two frames, or at once in a
 * full-frame message. Two bits tell the rate: 24, 25, 30 drop-frame, 30; 23.976 and 29.97 without drop-frame cannot be told from 24 and 30, so
 * that whoever reads must know.
 */
public final class MidiTimecode {
	private static final int QUARTER_FRAME = 0xF1;
	private static final int PIECES = 8;
	private static final int FULL_FRAME_BYTES = 10;
	private static final int QUARTERS_PER_FRAME = 4;

	private MidiTimecode() {
	}

	/** The eight quarter-frame messages of a label, two bytes each, in the order in which they are sent when time runs forwards. */
	public static byte[] quarterFrames(Timecode label) {
		byte[] bytes = new byte[2 * PIECES];
		for (int piece = 0; piece < PIECES; piece++) {
			bytes[2 * piece] = (byte) QUARTER_FRAME;
			bytes[2 * piece + 1] = quarterFrame(label, piece);
		}
		return bytes;
	}

	private static byte quarterFrame(Timecode label, int piece) {
		int value = switch (piece) {
			case 0, 1 -> label.frames();
			case 2, 3 -> label.seconds();
			case 4, 5 -> label.minutes();
			default -> label.hours() | rateCode(label.rate()) << 5;
		};
		int nibble = piece % 2 == 0 ? value & 0xF : value >> 4;
		return (byte) (piece << 4 | nibble);
	}

	/** The full-frame message of a label, to all devices. */
	public static byte[] fullFrame(Timecode label) {
		return new byte[] { (byte) 0xF0, 0x7F, 0x7F, 1, 1, (byte) (rateCode(label.rate()) << 5 | label.hours()), (byte) label.minutes(),
				(byte) label.seconds(), (byte) label.frames(), (byte) 0xF7 };
	}

	/**
	 * Reads a full-frame message.
	 *
	 * @param expected the rate that is known to run; it must be one that the message's two bits can mean
	 * @throws TimecodeException if the bytes are no such message, or tell another rate or a label that does not exist
	 */
	public static Timecode readFullFrame(byte[] message, FrameRate expected) {
		if (message.length != FULL_FRAME_BYTES || (message[0] & 0xFF) != 0xF0 || message[1] != 0x7F || message[3] != 1 || message[4] != 1
				|| (message[9] & 0xFF) != 0xF7) {
			throw new TimecodeException("The message is no full-frame message of MIDI time code; it is ten bytes, F0 7F .. 01 01 .. F7");
		}
		return label(message[5], message[6], message[7], message[8], expected);
	}

	/**
	 * Reads the eight quarter-frame messages of one label, in order.
	 *
	 * @throws TimecodeException as {@link #readFullFrame}
	 */
	public static Timecode readQuarterFrames(byte[] messages, FrameRate expected) {
		int[] values = new int[4];
		boolean wrong = messages.length != 2 * PIECES;
		for (int piece = 0; piece < PIECES && !wrong; piece++) {
			wrong = (messages[2 * piece] & 0xFF) != QUARTER_FRAME || messages[2 * piece + 1] >> 4 != piece;
			values[piece / 2] |= (messages[2 * piece + 1] & 0xF) << 4 * (piece % 2);
		}
		if (wrong) {
			throw new TimecodeException("The messages are no label of MIDI time code; expected eight of them, F1 0x to F1 7x");
		}
		return label(values[3], values[2], values[1], values[0], expected);
	}

	private static Timecode label(int hours, int minutes, int seconds, int frames, FrameRate expected) {
		int code = hours >> 5 & 3;
		if (code != rateCode(expected)) {
			String[] rates = { "24", "25", "30 drop-frame", "30" };
			throw new TimecodeException("The MIDI time code counts " + rates[code] + " frames a second, but " + expected + " is expected");
		}
		return new Timecode(hours & 0x1F, minutes, seconds, frames, expected);
	}

	private static int rateCode(FrameRate rate) {
		return switch (rate) {
			case FPS_23_976, FPS_24 -> 0;
			case FPS_25 -> 1;
			case FPS_29_97_DROP -> 2;
			case FPS_29_97, FPS_30 -> 3;
		};
	}

	/**
	 * A Standard MIDI File that plays the line's first frames as MIDI time code: a full-frame message, then quarter frames, four a frame. One
	 * tick is one quarter frame, exactly, at every rate.
	 */
	public static byte[] file(TimecodeLine line, int frames) {
		FrameRate rate = line.rate();
		try {
			Sequence sequence = new Sequence(Sequence.PPQ, QUARTERS_PER_FRAME * rate.nominal());
			Track track = sequence.createTrack();
			// A quarter note of as many frames as the rate counts in a second: 1 000 000 us or 1 001 000 us.
			int us = Math.toIntExact(rate.startOf(rate.nominal()).floorUs());
			track.add(new MidiEvent(new MetaMessage(0x51, new byte[] { (byte) (us >> 16), (byte) (us >> 8), (byte) us }, 3), 0));
			byte[] full = fullFrame(line.start());
			track.add(new MidiEvent(new SysexMessage(full, full.length), 0));
			for (int frame = 0; frame < frames; frame += 2) {
				Timecode label = line.start().plusFrames(frame);
				for (int piece = 0; piece < PIECES; piece++) {
					byte[] message = { (byte) QUARTER_FRAME, quarterFrame(label, piece) };
					track.add(new MidiEvent(new SysexMessage(SysexMessage.SPECIAL_SYSTEM_EXCLUSIVE, message, message.length), 4L * frame + piece));
				}
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
}
