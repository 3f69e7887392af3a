package org.girandole.timecode.marks;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.girandole.timecode.wav.CuePoint;

/**
 * Marks as cue points of a WAV file. A cue point stands at a sample; the note beside it says the exact time, so that a mark comes back to the
 * microsecond. A cue point that was moved in an editor keeps its old note, which then disagrees with its place by more than a sample and is
 * not believed.
 */
public final class WavMarks {
	private static final Pattern NOTE = Pattern.compile("(\\d{1,9})\\.(\\d{6}) s");

	private WavMarks() {
	}

	/** Cue points at the nearest samples. */
	public static List<CuePoint> toCues(List<Mark> marks, int sampleRate) {
		List<CuePoint> cues = new ArrayList<>();
		for (Mark mark : marks) {
			cues.add(new CuePoint(sampleAt(mark.timeUs(), sampleRate), mark.name(),
					String.format(Locale.ROOT, "%d.%06d s", mark.timeUs() / 1_000_000, mark.timeUs() % 1_000_000)));
		}
		return List.copyOf(cues);
	}

	/** Marks at the exact times of the notes, or at the nearest microseconds to the samples. */
	public static List<Mark> fromCues(List<CuePoint> cues, int sampleRate) {
		List<Mark> marks = new ArrayList<>();
		for (CuePoint cue : cues) {
			marks.add(new Mark(time(cue, sampleRate), cue.label()));
		}
		return List.copyOf(marks);
	}

	private static long time(CuePoint cue, int sampleRate) {
		Matcher note = NOTE.matcher(cue.note());
		if (note.matches()) {
			long us = Long.parseLong(note.group(1)) * 1_000_000 + Long.parseLong(note.group(2));
			if (sampleAt(us, sampleRate) == cue.frame()) {
				return us;
			}
		}
		return cue.frame() / sampleRate * 1_000_000 + (cue.frame() % sampleRate * 2_000_000 + sampleRate) / (2L * sampleRate);
	}

	private static long sampleAt(long us, int sampleRate) {
		return us / 1_000_000 * sampleRate + (us % 1_000_000 * sampleRate + 500_000) / 1_000_000;
	}
}
