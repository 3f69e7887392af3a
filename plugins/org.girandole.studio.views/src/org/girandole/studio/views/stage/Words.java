package org.girandole.studio.views.stage;

import java.net.URI;
import java.util.Locale;
import org.girandole.protocol.CueView;

/** Times and cues in words. */
public final class Words {
    private static final long US_PER_MS = 1_000;
    private static final long MS_PER_S = 1_000;
    private static final long S_PER_MIN = 60;

    private Words() {
    }

    /** {@code 1:02.345}; before the first note with a minus. */
    public static String clock(long us) {
        long ms = Math.abs(us) / US_PER_MS;
        return String.format(Locale.ROOT, "%s%d:%02d.%03d", us < 0 ? "-" : "", ms / MS_PER_S / S_PER_MIN, ms / MS_PER_S % S_PER_MIN, ms % MS_PER_S);
    }

    /** {@code 1:02}. */
    public static String minutes(long us) {
        long s = Math.floorDiv(us, US_PER_MS * MS_PER_S);
        return String.format(Locale.ROOT, "%s%d:%02d", s < 0 ? "-" : "", Math.abs(s) / S_PER_MIN, Math.abs(s) % S_PER_MIN);
    }

    /** The last part of a file's URI, as people read it. */
    public static String fileName(String uri) {
        String path = URI.create(uri).getPath();
        return path == null ? uri : path.substring(path.lastIndexOf('/') + 1);
    }

    /** All of a cue in one line. */
    public static String cue(CueView cue) {
        StringBuilder out = new StringBuilder("cue ").append(cue.number());
        if (cue.name() != null) {
            out.append(' ').append(cue.name());
        }
        out.append(", ").append(cue.label()).append(" (").append(cue.kind()).append(") at ").append(cue.position()).append(": ")
                .append(cue.heard() ? "heard " : "seen ").append(clock(cue.seenUs())).append(", fired ").append(clock(cue.fireUs()));
        if (cue.estimated()) {
            out.append(" (estimated)");
        }
        if (cue.timecode() != null) {
            out.append(", timecode ").append(cue.timecode());
        }
        out.append(cue.module() == null ? ", no pin" : ", pin " + cue.module() + "/" + cue.pin());
        return out.append(", ").append(cue.source().words()).toString();
    }
}
