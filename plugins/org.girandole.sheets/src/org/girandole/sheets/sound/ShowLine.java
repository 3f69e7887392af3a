package org.girandole.sheets.sound;

import java.util.List;
import java.util.Optional;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.rules.Cues;
import org.girandole.timecode.TimecodeException;
import org.girandole.timecode.TimecodeLine;
import org.girandole.timecode.ltc.ChannelFeed;
import org.girandole.timecode.ltc.ReleaseMark;
import org.girandole.timecode.ltc.TimecodeFile;
import org.girandole.timecode.reader.LineExpectation;
import org.girandole.timecode.wav.SampleDepth;

/**
 * The timecode of one soundtrack of a show: what is written into a file, and what a recording is held against.
 *
 * @param lengthUs from the first note to the end of the music or until nothing is seen any more of the last effect, whichever is later
 * @param mark slot and stamp, carried in the user bits
 */
public record ShowLine(PlannedSoundtrack soundtrack, TimecodeLine line, long lengthUs, ReleaseMark mark) {
    /** How long timecode goes on after the last effect, so that no controller loses lock while it still matters; common practice, no source. */
    public static final long RUN_OUT_US = 10_000_000;

    /**
     * The line of a soundtrack; empty when the show states no timecode for it.
     *
     * @throws TimecodeException when the slot does not fit into the user bits
     */
    public static Optional<ShowLine> of(Plan plan, PlannedSoundtrack soundtrack) {
        long gone = plan.cues().stream().filter(cue -> cue.slot() == soundtrack.slot() && cue.soundtrack().equals(soundtrack.name()))
                .mapToLong(Cues::goneUs).max().orElse(0);
        long lengthUs = Math.max(0, Math.max(gone, soundtrack.lengthUs().orElse(0L)));
        return soundtrack.line()
                .map(line -> new ShowLine(soundtrack, line, lengthUs, new ReleaseMark(soundtrack.slot(), plan.stamp().full())));
    }

    /**
     * A file with this line from the beginning of the pre-roll to the end of the run-out.
     *
     * @throws TimecodeException when there can be no such file
     */
    public TimecodeFile file(int sampleRateHz, SampleDepth depth, double levelDbfs, List<ChannelFeed> channels) {
        return new TimecodeFile(line, lengthUs, RUN_OUT_US, sampleRateHz, depth, levelDbfs, channels, Optional.of(mark), List.of());
    }

    /** What a recording of this line must hold. */
    public LineExpectation expectation() {
        return new LineExpectation(Optional.of(line), lengthUs, Optional.of(mark));
    }
}
