package org.girandole.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import org.girandole.lang.edit.MusicPlaces;
import org.girandole.lang.edit.TextEdits;
import org.girandole.lang.files.MarksFile;
import org.girandole.music.TempoMap;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.Times;
import org.girandole.timecode.marks.Mark;
import org.girandole.timecode.marks.MarksException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Reads marks of other programs into a script. */
@Command(name = "import", mixinStandardHelpOptions = true, header = "Reads marks of other programs as lines of a script.",
        description = {"", "Reads label tracks, cue points of WAV files, and markers, tempo and meters of Standard MIDI Files; what a file is, its"
                + " content says. Prints the lines, or adds them to a script with --into. A mark that the script has already is kept as it is"
                + " written, unless --replace is given. To read a file at every check instead, write 'marks from \"file\"' into the soundtrack.",
                ""},
        footer = {"", "Examples:",
            "  girandole marks import labels.txt",
            "  girandole marks import tides.mid --into my-show.show"})
final class MarksImportCommand implements Callable<Integer> {
    private static final long HEARD_US = 2000;

    @Spec
    private CommandSpec spec;
    @Parameters(paramLabel = "FILE", description = "A label track, a WAV file with cue points, or a Standard MIDI File.")
    private Path file;
    @Option(names = "--into", paramLabel = "SCRIPT", description = "Add the lines to this script instead of printing them.")
    private Path script;
    @Option(names = "--soundtrack", paramLabel = "NAME", description = "With --into: which soundtrack. Default: the only one.")
    private String soundtrack;
    @Option(names = "--replace", description = "With --into: give marks and tempo that the script has already the times of the file.")
    private boolean replace;
    @Option(names = "--root", paramLabel = "FOLDER",
            description = "The project folder of the script. Default: the nearest folder upward with a pom.xml, else the script's own folder.")
    private Path root;

    @Override
    public Integer call() {
        Quiet.libraries();
        if (script == null && (replace || soundtrack != null)) {
            throw new UserException(ExitCode.USAGE, "--replace and --soundtrack say what happens in a script. Name it with --into.");
        }
        Optional<ScriptMusic> music = script == null ? Optional.empty() : Optional.of(ScriptMusic.of(Scripts.of(script, root), soundtrack, null));
        Map<String, Long> marks = new LinkedHashMap<>();
        Optional<MidiTempoRead> midi;
        int nameless = 0;
        try {
            for (Mark mark : read()) {
                String name = MarksFile.nameOf(mark.name());
                if (name.isEmpty()) {
                    nameless++;
                } else {
                    marks.put(free(name, marks.keySet()), mark.timeUs());
                }
            }
            midi = MidiTempoRead.of(file);
        } catch (MarksException e) {
            throw new UserException(ExitCode.USAGE, "the marks of '" + file + "' cannot be read: " + e.getMessage() + ".");
        } catch (IOException e) {
            throw new UserException(ExitCode.USAGE, "'" + file + "' cannot be read: " + e.getMessage());
        }
        Optional<TempoMap> tempo = midi.map(MidiTempoRead::map);
        PrintWriter out = spec.commandLine().getOut();
        if (music.isPresent()) {
            into(music.get(), marks, tempo, out);
        } else {
            tempo.ifPresent(map -> TempoText.lines(map).forEach(out::println));
            marks.forEach((name, us) -> out.println("mark " + name + " at " + Proposal.exact(tempo, us)));
        }
        if (midi.isPresent() && midi.get().worstUs() > HEARD_US) {
            out.println((script == null ? "// " : "  attention  ") + "the file changes its tempo within bars, so bar lines lie up to "
                    + Times.millis(midi.get().worstUs() / 1000 * 1000) + " off; marks that lie off the beat are written as times");
        }
        if (nameless > 0) {
            out.println((script == null ? "// " : "  attention  ") + nameless + " marks without a name left out");
        }
        out.flush();
        return ExitCode.OK;
    }

    private List<Mark> read() throws IOException {
        if (!Files.isRegularFile(file)) {
            throw new UserException(ExitCode.USAGE, "there is no file '" + file + "'. Check the name and the folder.");
        }
        return MarksFile.read(file);
    }

    private static String free(String name, Set<String> taken) {
        String free = name;
        for (int i = 2; taken.contains(free); i++) {
            free = name + "_" + i;
        }
        return free;
    }

    private void into(ScriptMusic music, Map<String, Long> marks, Optional<TempoMap> tempo, PrintWriter out) {
        TextEdits edits = new TextEdits();
        List<String> added = new ArrayList<>();
        List<String> told = new ArrayList<>();
        Optional<TempoMap> written = music.planned().flatMap(PlannedSoundtrack::tempo);
        Optional<TempoMap> grid = written;
        if (tempo.isPresent() && music.track().tempo().isEmpty()) {
            added.addAll(TempoText.lines(tempo.get()));
            told.add("tempo      added");
            grid = tempo;
        } else if (tempo.isPresent() && !tempo.equals(written)) {
            if (replace) {
                edits.replace(music.track().tempo().get(), String.join("\n  ", TempoText.lines(tempo.get())));
                told.add("tempo      replaced, as asked; bars that cues and marks count may now lie elsewhere");
                grid = tempo;
            } else {
                told.add("tempo      kept as it is written, though the file has another; --replace takes that of the file");
            }
        }
        marks(music, marks, grid, edits, added, told);
        music.append(edits, added);
        List<Path> files = music.write(edits);
        out.println("Soundtrack " + music.track().name() + " in " + music.shown(music.track().file()) + ":");
        told.forEach(line -> out.println("  " + line));
        out.println(files.isEmpty() ? "Nothing was changed." : "Written: " + String.join(", ", files.stream().map(music::shown).toList()));
    }

    private void marks(ScriptMusic music, Map<String, Long> marks, Optional<TempoMap> grid, TextEdits edits, List<String> added, List<String> told) {
        Map<String, MusicPlaces.MarkPlace> there = new LinkedHashMap<>();
        music.track().marks().forEach(mark -> there.putIfAbsent(mark.name(), mark));
        Set<String> names = new HashSet<>(music.markNames());
        int same = 0;
        for (Map.Entry<String, Long> mark : marks.entrySet()) {
            String line = "mark " + mark.getKey() + " at " + Proposal.exact(grid, mark.getValue());
            Long now = music.marksUs().get(mark.getKey());
            if (!names.contains(mark.getKey())) {
                added.add(line);
            } else if (now != null && now.equals(mark.getValue())) {
                same++;
            } else if (replace && there.containsKey(mark.getKey())) {
                edits.replace(there.get(mark.getKey()).whole(), line);
                told.add("mark       " + mark.getKey() + " moved, as asked, to " + Times.exactClock(mark.getValue()));
            } else {
                told.add("mark       " + mark.getKey() + " kept" + (now == null ? "" : " at " + Times.exactClock(now)) + "; in the file it lies at "
                        + Times.exactClock(mark.getValue()) + (there.containsKey(mark.getKey()) ? "; --replace takes that of the file" : ""));
            }
        }
        told.add("marks      " + added.stream().filter(line -> line.startsWith("mark ")).count() + " added, " + same + " the same already");
    }
}
