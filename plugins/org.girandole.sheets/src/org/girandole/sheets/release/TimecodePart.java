package org.girandole.sheets.release;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.script.ReleaseSpec;
import org.girandole.sheets.sound.ShowLine;
import org.girandole.timecode.ltc.ChannelFeed;
import org.girandole.timecode.ltc.TimecodeFile;
import org.girandole.timecode.ltc.TimecodeWavWriter;
import org.girandole.timecode.wav.SampleDepth;

/** {@code timecode/}: the timecode of each soundtrack, alone on one channel, at each rate that the script asks for. */
final class TimecodePart implements ReleasePart {
    @Override
    public List<String> write(CheckedPlan checked, String toolVersion, ReleaseFolder folder) throws IOException {
        Plan plan = checked.plan();
        List<String> leftOut = new ArrayList<>();
        for (int hz : plan.script().release().map(ReleaseSpec::timecodeWavHz).orElse(List.of()).stream().distinct().toList()) {
            for (PlannedSoundtrack soundtrack : plan.soundtracks()) {
                Optional<ShowLine> line = ShowLine.of(plan, soundtrack);
                if (line.isEmpty()) {
                    leftOut.add("timecode of " + soundtrack.name() + " at " + hz + " Hz: the script states none that could be counted");
                    continue;
                }
                TimecodeFile file = line.get().file(hz, SampleDepth.PCM_16, TimecodeFile.DEFAULT_LEVEL_DBFS,
                        List.of(new ChannelFeed.TimecodeFeed()));
                folder.write("timecode/" + SoundtrackFiles.name(plan, soundtrack) + "-" + hz + ".wav",
                        out -> TimecodeWavWriter.write(out, file, Optional.empty()));
            }
        }
        return leftOut;
    }
}
