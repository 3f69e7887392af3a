package org.girandole.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.sheets.sound.MarkFiles;
import org.girandole.timecode.TimecodeException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Writes the marks of a soundtrack for other programs. */
@Command(name = "export", mixinStandardHelpOptions = true, header = "Writes the marks of a soundtrack for other programs.",
        description = {"", "Time begins with the first note. The name of the file says its form: .txt a label track (beginning, end, name; tabs"
                + " between), .mid a Standard MIDI File with markers, tempo and meters, .wav silence with cue points.", ""},
        footer = {"", "Examples:",
            "  girandole marks export my-show.show -o tides.txt",
            "  girandole marks export my-show.show --soundtrack Encore -o encore.mid"})
final class MarksExportCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;
    @Parameters(paramLabel = "SCRIPT", description = "The script of the show.")
    private Path script;
    @Option(names = {"-o", "--into"}, required = true, paramLabel = "FILE", description = "The file to write: .txt, .mid or .wav; an older one is"
            + " replaced.")
    private Path into;
    @Option(names = "--soundtrack", paramLabel = "NAME", description = "Which soundtrack. Default: the only one.")
    private String soundtrack;
    @Option(names = "--root", paramLabel = "FOLDER",
            description = "The project folder. Default: the nearest folder upward with a pom.xml, else the script's own folder.")
    private Path root;

    @Override
    public Integer call() {
        Quiet.libraries();
        String name = into.getFileName() == null ? "" : into.getFileName().toString().toLowerCase(Locale.ROOT);
        if (!name.matches(".+\\.(txt|midi?|wav)")) {
            throw new UserException(ExitCode.USAGE, "'" + into + "' does not say its form. Expected a name that ends in .txt (label track), .mid"
                    + " (Standard MIDI File) or .wav (cue points).");
        }
        ScriptMusic music = ScriptMusic.of(Scripts.of(script, root), soundtrack, null);
        PlannedSoundtrack planned = music.planned().orElseThrow(() -> new UserException(ExitCode.USAGE, "'" + script + "' cannot be planned, so the"
                + " times of its marks are not known. 'girandole check' says what is wrong with it."));
        MarkFiles files = MarkFiles.of(planned);
        if (planned.marksUs().isEmpty()) {
            throw new UserException(ExitCode.ERRORS_FOUND, "soundtrack " + planned.name() + " has no marks, so nothing was written.");
        }
        try {
            if (name.endsWith(".wav")) {
                OutputFile.write(into, files::cues);
            } else {
                byte[] bytes = name.endsWith(".txt") ? files.labels() : files.midi();
                OutputFile.write(into, out -> out.write(bytes));
            }
        } catch (TimecodeException e) {
            throw new UserException(ExitCode.ERRORS_FOUND, e.getMessage() + ".");
        }
        PrintWriter out = spec.commandLine().getOut();
        out.println("Written: " + into + ", " + (planned.marksUs().size() - files.beforeFirstNote().size()) + " marks of " + planned.name());
        if (!files.beforeFirstNote().isEmpty()) {
            out.println("  attention  before the first note, so in no file: " + String.join(", ", files.beforeFirstNote()));
        }
        if (name.matches(".+\\.midi?") && planned.tempo().isPresent() && !files.hasMidiTempo()) {
            out.println("  attention  without tempo: bar 1 lies before the first note, which a MIDI file cannot say");
        }
        out.flush();
        return ExitCode.OK;
    }
}
