package org.girandole.plan.schedule;

import java.util.List;
import org.girandole.plan.Severity;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.RuleInfo.Family;

/** What the planner itself reports: parts of the script that it could not plan, and values that it had to assume. */
public final class Troubles {
    public static final RuleInfo TEMPO_IMPOSSIBLE = new RuleInfo("tempo-impossible", Family.TIMING, Severity.ERROR,
            "A tempo block that makes no tempo map",
            "Bars and beats have no time, so that no cue that counts in them can be fired.",
            "the script's own tempo block");
    public static final RuleInfo BEAT_WITHOUT_TEMPO = new RuleInfo("beat-without-tempo", Family.TIMING, Severity.ERROR,
            "A moment counts bars or beats, but the soundtrack has no tempo there",
            "The cue has no time and is left out of every table.", "the script's own tempo block");
    public static final RuleInfo FRAME_WITHOUT_RATE = new RuleInfo("frame-without-rate", Family.TIMING, Severity.ERROR,
            "A moment counts frames, but the soundtrack has no timecode rate",
            "A frame has no length without a rate; the cue is left out of every table.",
            "the script's own timecode line");
    public static final RuleInfo MARK_CIRCULAR = new RuleInfo("mark-circular", Family.TIMING, Severity.ERROR,
            "Marks that are defined by each other",
            "None of them has a time, and no cue that names them can be fired.", "the script's own marks");
    public static final RuleInfo MARK_UNKNOWN = new RuleInfo("mark-unknown", Family.TIMING, Severity.ERROR,
            "A mark that the soundtrack does not have, or that has no time",
            "The cue has no time and is left out of every table.", "the script's own marks");
    public static final RuleInfo MOMENT_IMPOSSIBLE = new RuleInfo("moment-impossible", Family.TIMING, Severity.ERROR,
            "A moment that is not in the music: a bar or beat that does not exist, or a time absurdly far away",
            "The cue has no time and is left out of every table.", "the soundtrack's tempo map");
    public static final RuleInfo TIMECODE_IMPOSSIBLE = new RuleInfo("timecode-impossible", Family.SYNC, Severity.ERROR,
            "Rate, start and pre-roll that do not go together",
            "No cue has a timecode label, and the controller cannot be programmed.", "SMPTE ST 12-1");
    public static final RuleInfo NAME_UNKNOWN = new RuleInfo("name-unknown", Family.LANGUAGE, Severity.ERROR,
            "A name that stands for nothing",
            "What uses it is left out of the plan.", "the script's own names");
    public static final RuleInfo TOO_MANY_CUES = new RuleInfo("too-many-cues", Family.LANGUAGE, Severity.ERROR,
            "A repetition or a count that makes more cues than any field can hold",
            "The rest of the show is left out of the plan.", "a limit of this program, no published source");
    public static final RuleInfo RISE_MISSING = new RuleInfo("rise-missing", Family.TIMING, Severity.ERROR,
            "An effect that rises, with neither a rise nor a calibre to estimate one from",
            "Nobody can tell when to fire it; the cue is left out of every table.",
            "the catalogue; estimates exist for shells by calibre");
    public static final RuleInfo LISTENING_MISSING = new RuleInfo("listening-missing", Family.TIMING, Severity.ERROR,
            "A cue is to be heard at a moment, but the site says neither where the audience is nor where it listens",
            "The way of the sound is unknown; the cue is left out of every table.", "the script's own site");
    public static final RuleInfo APEX_MISSING = new RuleInfo("apex-missing", Family.TIMING, Severity.ERROR,
            "A cue is to be heard at a moment, but the height of its burst is not known and cannot be estimated",
            "The way of the sound is unknown; the cue is left out of every table.",
            "the catalogue; estimates exist for shells by calibre");
    public static final RuleInfo AIR_ASSUMED = new RuleInfo("air-assumed", Family.TIMING, Severity.WARNING,
            "A cue is to be heard at a moment, but the site gives no air temperature",
            "Sound is about 0.6 m/s slower for each degree less; a burst 200 m away is heard 10 ms later at 5 degC than at 15 degC.",
            "15 degC of the standard atmosphere, ISO 2533");
    public static final RuleInfo HAND_SURPLUS = new RuleInfo("hand-surplus", Family.HARDWARE, Severity.ERROR,
            "More pins or tubes are written by hand than the cue has shots",
            "Somebody counted something else than what the script says.", "the script's own words");

    public static final RuleInfo LOCK_STALE = new RuleInfo("lock-stale", Family.HOUSEKEEPING, Severity.WARNING,
            "The lock file does not say what the script says",
            "Whoever wires from an older release finds other pins than this one prints.",
            "the lock file beside the script");
    public static final RuleInfo LOCK_BROKEN = new RuleInfo("lock-broken", Family.HARDWARE, Severity.ERROR,
            "A cue cannot stay in the tube or on the pin that the lock file remembers",
            "The field may be wired by the lock file already; this plan fires something else from that pin.",
            "the lock file beside the script");

    public static final RuleInfo LOCK_UNUSABLE = new RuleInfo("lock-unusable", Family.HOUSEKEEPING, Severity.ERROR,
            "The lock file beside the script makes no sense",
            "What the field is wired by cannot be read: every pin of this plan may be another.",
            "the lock file beside the script");

    private static final List<RuleInfo> ALL = List.of(TEMPO_IMPOSSIBLE, BEAT_WITHOUT_TEMPO, FRAME_WITHOUT_RATE,
            MARK_CIRCULAR, MARK_UNKNOWN, MOMENT_IMPOSSIBLE, TIMECODE_IMPOSSIBLE, NAME_UNKNOWN, TOO_MANY_CUES, RISE_MISSING,
            LISTENING_MISSING, APEX_MISSING, AIR_ASSUMED, HAND_SURPLUS,
            LOCK_BROKEN, LOCK_STALE, LOCK_UNUSABLE);

    private Troubles() {
    }

    /** Every trouble that a plan may carry, for the list of rules. */
    public static List<RuleInfo> all() {
        return ALL;
    }
}
