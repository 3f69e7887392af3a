package org.girandole.sheets.print.values;

import java.util.List;
import java.util.Optional;

import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.script.AudioFile;
import org.girandole.timecode.FrameRate;
import org.girandole.timecode.TimecodeLine;

/**
 * What the sound engineer plays and feeds.
 *
 * @param tracks in slot order
 */
public record SoundDesk(List<Track> tracks) {
	/** Bits of one frame of timecode (SMPTE ST 12-1). */
	private static final int BITS_PER_FRAME = 80;

	public SoundDesk {
		tracks = List.copyOf(tracks);
	}

	/**
	 * One soundtrack.
	 *
	 * @param file the audio file and what is known of it
	 * @param counting how labels are counted, in words
	 * @param firstFire label of the first firing, so that the desk knows when it becomes serious
	 * @param lowHz the lower of the two tones heard in the code: a run of zeros, half the bit rate
	 * @param highHz the higher one: a run of ones, the bit rate
	 */
	public record Track(int slot, String name, String file, String rate, String counting, String start, String preroll, String firstNote,
			String end, String length, String firstFire, String lowHz, String highHz) {
	}

	/** The sound desk's view of a plan. */
	public static SoundDesk of(Plan plan) {
		return new SoundDesk(plan.soundtracks().stream().map(soundtrack -> track(plan, soundtrack)).toList());
	}

	private static Track track(Plan plan, PlannedSoundtrack soundtrack) {
		Optional<TimecodeLine> line = soundtrack.line();
		Optional<FrameRate> rate = line.map(TimecodeLine::rate);
		return new Track(soundtrack.slot(), soundtrack.script().label(), soundtrack.script().audio().map(SoundDesk::file).orElse("no file named"),
				Quantities.orNotStated(rate.map(each -> each.number() + " frames a second")),
				Quantities.orNotStated(rate.map(each -> each.dropFrame() ? "DROP-FRAME labels (semicolon)" : "non-drop labels (colon)")),
				Quantities.orNotStated(line.map(each -> each.start().toString())),
				Quantities.orNotStated(line.map(each -> Quantities.waiting(each.prerollUs()))),
				Quantities.orNotStated(line.map(each -> each.firstNote().toString())),
				Quantities.orNotStated(soundtrack.lengthUs().flatMap(us -> label(line, us))),
				Quantities.orNotStated(soundtrack.lengthUs().map(Quantities::showTime)),
				plan.cues().stream().filter(cue -> cue.soundtrack().equals(soundtrack.name())).flatMap(cue -> firing(line, cue).stream())
						.findFirst().orElse("none"),
				Quantities.orNotStated(rate.map(each -> hertz(each, BITS_PER_FRAME / 2))),
				Quantities.orNotStated(rate.map(each -> hertz(each, BITS_PER_FRAME))));
	}

	private static Optional<String> firing(Optional<TimecodeLine> line, PlannedCue cue) {
		return label(line, cue.timing().fireUs()).map(label -> label + " (cue " + cue.number() + ")");
	}

	private static Optional<String> label(Optional<TimecodeLine> line, long us) {
		return line.flatMap(each -> each.momentAt(us)).map(moment -> moment.label().toString());
	}

	private static String hertz(FrameRate rate, int periodsPerFrame) {
		return Quantities.plain((double) periodsPerFrame * rate.numerator() / rate.denominator(), 0) + " Hz";
	}

	private static String file(AudioFile audio) {
		return audio.path() + audio.found().map(facts -> ": " + facts.sampleRateHz() + " Hz, "
				+ Quantities.count(facts.channels(), "channel", "channels") + ", " + Quantities.showTime(facts.lengthUs()) + ", SHA-256 begins "
				+ facts.sha256().substring(0, Math.min(12, facts.sha256().length())))
				.orElse(": NOT READ" + audio.trouble().map(trouble -> " (" + trouble + ")").orElse(""));
	}
}
