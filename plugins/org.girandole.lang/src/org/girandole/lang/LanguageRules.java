package org.girandole.lang;

import java.util.List;
import org.girandole.plan.Severity;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.rules.RuleInfo.Family;

/** What the language itself can find wrong with a script. Each has a page in the docs under its id. */
public final class LanguageRules {
    private static final String LANGUAGE = "the language reference";
    private static final String PLAUSIBLE = "common practice, no source";

    public static final RuleInfo SYNTAX = error("syntax", "Something stands where the language does not allow it",
            "what cannot be read cannot be planned; the rest of the line is left out of the show");
    public static final RuleInfo UNRESOLVED_NAME = error("unresolved-name", "A name that is defined nowhere",
            "the line that uses it is left out of the show");
    public static final RuleInfo WRONG_KIND = error("wrong-kind", "A name of the wrong kind of thing",
            "the line that uses it is left out of the show");
    public static final RuleInfo DUPLICATE_NAME = error("duplicate-name", "Two things of one kind under one name",
            "nobody can tell which of the two a cue means");
    public static final RuleInfo UNKNOWN_UNIT = error("unknown-unit", "A unit that the language does not know",
            "a quantity without a sure unit is left out");
    public static final RuleInfo WRONG_UNIT = error("wrong-unit", "A unit that does not measure what is asked for",
            "a length in seconds is a slip that must not reach the field");
    public static final RuleInfo MISSING_UNIT = error("missing-unit", "A number that needs a unit and has none",
            "75 may be millimetres or inches; the wrong guess loads the wrong tube");
    public static final RuleInfo NUMBER_RANGE = new RuleInfo("number-range", Family.LANGUAGE, Severity.ERROR,
            "A number outside of what can be meant", "most are slips of a digit or a unit", PLAUSIBLE);
    public static final RuleInfo BAD_TIME = error("bad-time", "A time, timecode or date in no readable form",
            "a cue without a sure time is left out of the show");
    public static final RuleInfo ABSOLUTE_TIME = error("absolute-time", "A fixed moment inside a figure or repetition",
            "each repetition would fire it at the same moment");
    public static final RuleInfo UNKNOWN_FIELD = error("unknown-field", "A word that this block does not know",
            "what it was meant to say is not in the show");
    public static final RuleInfo REPEATED_FIELD = error("repeated-field", "The same thing said twice in one block",
            "one of the two is not what was meant");
    public static final RuleInfo MISSING_FIELD = error("missing-field", "A block lacks something it cannot do without",
            "the block is left out of the show");
    public static final RuleInfo UNKNOWN_WORD = error("unknown-word", "A word that is none of the possible ones",
            "the choice it was meant to make is not made");
    public static final RuleInfo USE_MISSING = error("use-missing", "A used file is not there",
            "everything it defines is missing from the show");
    public static final RuleInfo USE_CYCLE = error("use-cycle", "Files that use each other in a circle",
            "there is no order in which they could be read");
    public static final RuleInfo USE_OUTSIDE = error("use-outside", "A file outside of the project",
            "a release must be reproducible from the project alone, and a script must not read what it was not given");
    public static final RuleInfo UNREADABLE = error("unreadable", "A file that cannot be read", "nothing in it is in the show");
    public static final RuleInfo NOT_UTF8 = error("not-utf8", "A file that is not UTF-8 text",
            "names and notes would come out wrong on the sheets");
    public static final RuleInfo LIKE_CYCLE = error("like-cycle", "Effects that are like each other in a circle",
            "none of them says what it is like in the end");
    public static final RuleInfo MARK_CYCLE = error("mark-cycle", "Marks that are defined by each other in a circle",
            "none of them has a time");
    public static final RuleInfo GROUP_CYCLE = error("group-cycle", "A group of positions that contains itself",
            "nobody can tell which positions it means");
    public static final RuleInfo FIGURE_CYCLE = error("figure-cycle", "Figures that play each other in a circle",
            "they would never end");
    public static final RuleInfo FIGURE_ARGUMENTS = error("figure-arguments", "A figure is given too few or too many values",
            "the figure cannot be played");
    public static final RuleInfo PLACE_TWICE = new RuleInfo("place-twice", Family.LANGUAGE, Severity.WARNING,
            "A cue names a position twice", "it is shot there once; if more was meant, a count says so", LANGUAGE);

    /** All of them, in the order of the docs. */
    public static final List<RuleInfo> ALL = List.of(SYNTAX, UNRESOLVED_NAME, WRONG_KIND, DUPLICATE_NAME, UNKNOWN_UNIT, WRONG_UNIT,
            MISSING_UNIT, NUMBER_RANGE, BAD_TIME, ABSOLUTE_TIME, UNKNOWN_FIELD, REPEATED_FIELD, MISSING_FIELD, UNKNOWN_WORD,
            USE_MISSING, USE_CYCLE, USE_OUTSIDE, UNREADABLE, NOT_UTF8, LIKE_CYCLE, MARK_CYCLE, GROUP_CYCLE, FIGURE_CYCLE, FIGURE_ARGUMENTS,
            PLACE_TWICE);

    private LanguageRules() {
    }

    private static RuleInfo error(String id, String summary, String reason) {
        return new RuleInfo(id, Family.LANGUAGE, Severity.ERROR, summary, reason, LANGUAGE);
    }
}
