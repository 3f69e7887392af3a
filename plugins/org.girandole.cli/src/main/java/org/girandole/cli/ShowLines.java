package org.girandole.cli;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.girandole.lang.check.CheckedShow;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.sheets.sound.ShowLine;
import org.girandole.timecode.TimecodeException;

/** Finds the timecode of a soundtrack that is named on the command line. */
final class ShowLines {
    private final Plan plan;

    /** @throws UserException when the script cannot be planned or plays nothing */
    ShowLines(CheckedShow show, Scripts place) {
        plan = show.plan().orElseThrow(() -> new UserException(ExitCode.USAGE, "'" + place.script().getFileName()
                + "' cannot be planned, so its timecode is not known. 'girandole check' says what is wrong with it.")).plan();
        if (plan.soundtracks().isEmpty()) {
            throw new UserException(ExitCode.USAGE, "'" + place.script().getFileName() + "' plays no soundtrack, so it has no timecode. Give a"
                    + " soundtrack a score.");
        }
    }

    Plan plan() {
        return plan;
    }

    /** Soundtracks in slot order. */
    List<PlannedSoundtrack> soundtracks() {
        return plan.soundtracks();
    }

    /** @throws UserException when there is no soundtrack of that name */
    PlannedSoundtrack named(String name) {
        return plan.soundtrack(name).orElseThrow(() -> new UserException(ExitCode.USAGE, "the show plays no soundtrack '" + name
                + "'. It plays " + plan.soundtracks().stream().map(PlannedSoundtrack::name).collect(Collectors.joining(", ")) + "."));
    }

    /** @throws UserException when the soundtrack has no timecode */
    ShowLine line(PlannedSoundtrack soundtrack) {
        try {
            Optional<ShowLine> line = ShowLine.of(plan, soundtrack);
            return line.orElseThrow(() -> new UserException(ExitCode.ERRORS_FOUND, "soundtrack " + soundtrack.name()
                    + " has no timecode that could be counted. Write 'timecode 25 fps from 10:00:00:00' and 'preroll 60 s' into it."));
        } catch (TimecodeException e) {
            throw new UserException(ExitCode.ERRORS_FOUND, e.getMessage() + ".");
        }
    }

    /** For a person: {@code soundtrack Tides in slot 0}. */
    static String name(PlannedSoundtrack soundtrack) {
        return "soundtrack " + soundtrack.name() + " in slot " + soundtrack.slot();
    }
}
