package org.girandole.lang.ide.show;

import java.io.IOException;
import java.util.Base64;
import java.util.Optional;
import org.girandole.music.analysis.AnalysisCache;
import org.girandole.music.analysis.Peaks;
import org.girandole.music.analysis.PeaksCache;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.script.AudioFile;
import org.girandole.protocol.WaveParams;
import org.girandole.protocol.WaveView;

/** Waveforms of soundtracks, read once for each sound and kept in a folder of the user's own for next time. */
final class Waveforms {
    private static final long COLUMN_US = 10_000;
    private static final int MOST_COLUMNS = 1_000_000;
    private static final int FULL_SCALE = 127;

    private final PeaksCache cache = new PeaksCache(AnalysisCache.usualFolder());

    WaveView of(WaveParams params, CheckedPlan checked, EditedShow show) {
        Optional<PlannedSoundtrack> track = checked.plan().soundtrack(params.track());
        if (track.isEmpty()) {
            return WaveView.nothing("There is no soundtrack " + params.track() + " in this show");
        }
        Optional<AudioFile> audio = track.get().script().audio().filter(file -> file.found().isPresent());
        if (audio.isEmpty()) {
            return WaveView.nothing("The soundtrack " + params.track() + " has no audio that can be read");
        }
        try {
            return view(cache.peaks(show.path(audio.get().path())));
        } catch (IOException e) {
            return WaveView.nothing(audio.get().path() + " cannot be read: " + e.getMessage());
        }
    }

    private static WaveView view(Peaks peaks) {
        int count = (int) Math.min(MOST_COLUMNS, (peaks.lengthUs() + COLUMN_US - 1) / COLUMN_US);
        Peaks.Columns columns = peaks.columns(0, count * COLUMN_US, count);
        return new WaveView(null, COLUMN_US, count, bytes(columns.low()), bytes(columns.high()), bytes(columns.rms()));
    }

    private static String bytes(float[] values) {
        byte[] out = new byte[values.length];
        for (int i = 0; i < values.length; i++) {
            out[i] = (byte) Math.round(Math.max(-1f, Math.min(1f, values[i])) * FULL_SCALE);
        }
        return Base64.getEncoder().encodeToString(out);
    }
}
