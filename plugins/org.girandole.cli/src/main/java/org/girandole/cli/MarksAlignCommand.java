package org.girandole.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.girandole.lang.edit.TextEdits;
import org.girandole.music.analysis.EditAligner;
import org.girandole.music.analysis.EditMap;
import org.girandole.music.analysis.EditPlot;
import org.girandole.music.audio.AudioException;
import org.girandole.plan.Plan;
import org.girandole.plan.Times;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Compares a new edit of a track with the old one, and moves what a script hangs on it. */
@Command(name = "align", mixinStandardHelpOptions = true, header = "Compares a new edit of a track with the old one, and moves marks to it.",
        description = {"", "Says what was cut and inserted, and how the times of the old edit map to the new one. With --into the tempo, the marks and"
                + " every bar and time in the scores of the soundtrack are moved along; what lay in music that was cut is put into comments, so"
                + " that nothing fires to other music unseen.", ""},
        footer = {"", "Examples:",
            "  girandole marks align tides.wav tides-new.wav --plot edit.svg",
            "  girandole marks align tides.wav tides-new.wav --into my-show.show",
            "", "Exit code 1 says that the two are not edits of one piece as far as can be heard, or that something lay in music that was cut",
            "or did not follow."})
final class MarksAlignCommand implements Callable<Integer> {
    /** Below this, two tracks are probably not two edits of one piece. */
    private static final double UNSURE = 0.5;

    @Spec
    private CommandSpec spec;
    @Parameters(index = "0", paramLabel = "OLD", description = "The recording that the script was written to.")
    private Path old;
    @Parameters(index = "1", paramLabel = "NEW", description = "The new edit.")
    private Path now;
    @Option(names = "--into", paramLabel = "SCRIPT", description = "Move what this script hangs on the music.")
    private Path script;
    @Option(names = "--soundtrack", paramLabel = "NAME", description = "With --into: which soundtrack. Default: the one that plays one of the two"
            + " recordings.")
    private String soundtrack;
    @Option(names = "--plot", paramLabel = "FILE", description = "Draw both edits and what they share into this SVG file.")
    private Path plot;
    @Option(names = "--root", paramLabel = "FOLDER",
            description = "The project folder of the script. Default: the nearest folder upward with a pom.xml, else the script's own folder.")
    private Path root;

    @Override
    public Integer call() {
        Quiet.libraries();
        if (script == null && soundtrack != null) {
            throw new UserException(ExitCode.USAGE, "--soundtrack says which one of a script. Name the script with --into.");
        }
        if (plot != null && !plot.toString().toLowerCase(Locale.ROOT).endsWith(".svg")) {
            throw new UserException(ExitCode.USAGE, "'" + plot + "' is no name for a drawing; it must end in .svg.");
        }
        Music.requireFile(old);
        Music.requireFile(now);
        Optional<ScriptMusic> music = script == null ? Optional.empty() : Optional.of(music(Scripts.of(script, root)));
        EditMap map = align();
        PrintWriter out = spec.commandLine().getOut();
        tell(map, out);
        if (plot != null) {
            OutputFile.write(plot, file -> file.write(EditPlot.svg(map).getBytes(StandardCharsets.UTF_8)));
            out.println("Plot: " + plot);
        }
        boolean sure = map.confidence() >= UNSURE;
        if (!sure) {
            out.println("These are probably not two edits of one piece." + (script == null ? "" : " The script was left as it is."));
        }
        boolean lost = sure && music.isPresent() && move(music.get(), map, out);
        out.flush();
        return sure && !lost ? ExitCode.OK : ExitCode.ERRORS_FOUND;
    }

    /** The soundtrack that plays the old recording; else, when the script names the new one already, that of the new one. */
    private ScriptMusic music(Scripts place) {
        if (soundtrack != null) {
            return ScriptMusic.of(place, soundtrack, null);
        }
        return ScriptMusic.playing(place, old).or(() -> ScriptMusic.playing(place, now)).orElseGet(() -> ScriptMusic.of(place, null, old));
    }

    private EditMap align() {
        try {
            return EditAligner.align(old, now);
        } catch (AudioException e) {
            throw new UserException(ExitCode.USAGE, "the two cannot be compared. " + e.getMessage() + ".");
        } catch (IOException e) {
            throw new UserException(ExitCode.USAGE, "'" + old + "' and '" + now + "' cannot both be read. Check their permissions.");
        }
    }

    private void tell(EditMap map, PrintWriter out) {
        out.println("old " + old + ", " + Times.clock(map.oldLengthUs()) + "; new " + now + ", " + Times.clock(map.newLengthUs()) + "; confidence "
                + Proposal.number(map.confidence()));
        for (EditMap.Stretch s : map.stretches()) {
            double percent = (s.speed() - 1) * 100;
            out.println("  the same   " + span(s.oldStartUs(), s.oldEndUs()) + " is now " + span(s.newStartUs(), s.newEndUs())
                    + (Math.abs(percent) < 0.005 ? "" : String.format(Locale.ROOT, ", %.2f %% %s", Math.abs(percent), percent > 0 ? "faster" : "slower")));
        }
        for (EditMap.Change c : map.changes()) {
            String before = span(c.oldStartUs(), c.oldEndUs()) + ", " + Times.seconds(rounded(c.oldEndUs() - c.oldStartUs()));
            String after = span(c.newStartUs(), c.newEndUs()) + ", " + Times.seconds(rounded(c.newEndUs() - c.newStartUs()));
            out.println(switch (c.kind()) {
                case CUT -> "  cut        " + before + "; in the new edit at " + Times.clock(c.newStartUs());
                case INSERTED -> "  inserted   " + after + "; in the old edit at " + Times.clock(c.oldStartUs());
                case REPLACED -> "  replaced   " + before + "; by " + after;
            });
        }
        if (map.changes().isEmpty()) {
            out.println("  nothing was cut or inserted");
        }
    }

    private static long rounded(long us) {
        return Math.floorDiv(us + 500, 1000) * 1000;
    }

    private static String span(long fromUs, long toUs) {
        return Times.clock(fromUs) + " to " + Times.clock(toUs);
    }

    private boolean move(ScriptMusic music, EditMap map, PrintWriter out) {
        TextEdits edits = new TextEdits();
        EditMove move = new EditMove(music, map);
        move.into(edits);
        Optional<Plan> before = music.plan();
        List<Path> files = music.write(edits);
        List<String> strays = before.isEmpty() ? List.of() : music.plan().map(after -> new EditStrays(music.track().name(), move::wantedUs)
                .between(before.get(), after)).orElse(List.of());
        out.println("Soundtrack " + music.track().name() + " in " + music.shown(music.track().file()) + ":");
        move.told().forEach(line -> out.println("  " + line));
        strays.forEach(line -> out.println("  attention  " + line));
        out.println(files.isEmpty() ? "Nothing was changed." : "Written: " + String.join(", ", files.stream().map(music::shown).toList()));
        return move.lost() || !strays.isEmpty();
    }
}
