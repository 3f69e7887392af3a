package org.girandole.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.girandole.lang.edit.MusicPlaces;
import org.girandole.lang.edit.TextEdits;
import org.girandole.music.TempoMap;
import org.girandole.music.analysis.Loudness;
import org.girandole.music.analysis.Onset;
import org.girandole.music.analysis.TrackAnalysis;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.Times;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Listens to a track and proposes tempo and marks. */
@Command(name = "find", mixinStandardHelpOptions = true, header = "Listens to a track and proposes tempo and marks.",
        description = {"", "Prints lines for a script, each with its confidence as a comment: 0 is chance, 1 is as sure as a program can be. With"
                + " --into they are added to the soundtrack; a tempo that is there stays, and so does every mark. A second listening to an"
                + " unchanged track is quick: what was heard is kept in a cache.", ""},
        footer = {"", "Examples:",
            "  girandole marks find tides.wav",
            "  girandole marks find tides.wav --click click.wav",
            "  girandole marks find tides.wav --into my-show.show",
            "  girandole marks find tides.wav --into my-show.show --snap 80 --no-new"})
final class MarksFindCommand implements Callable<Integer> {
    private static final int MOST_SNAP_MS = 1000;

    @Spec
    private CommandSpec spec;
    @Parameters(paramLabel = "TRACK", description = "A recording: WAV, AIFF, FLAC, Ogg Vorbis or MP3.")
    private Path audio;
    @Option(names = "--into", paramLabel = "SCRIPT", description = "Write the proposals into this script instead of printing them.")
    private Path script;
    @Option(names = "--soundtrack", paramLabel = "NAME", description = "With --into: which soundtrack. Default: the one that plays this track.")
    private String soundtrack;
    @Option(names = "--replace-tempo", description = "With --into: put the tempo that was heard in the place of the one that is written.")
    private boolean replaceTempo;
    @Option(names = "--snap", paramLabel = "MS", description = "With --into: move marks that are written as clock times to the nearest onset, if one"
            + " lies within so many milliseconds, 1 to 1000.")
    private Integer snapMs;
    @Option(names = "--no-new", description = "With --into: add nothing; for --snap alone.")
    private boolean noNew;
    @Option(names = "--click", paramLabel = "FILE", description = "Write the music with a click on each beat, higher on the first of the bar, as a"
            + " WAV file to check by ear.")
    private Path click;
    @Option(names = "--root", paramLabel = "FOLDER",
            description = "The project folder of the script. Default: the nearest folder upward with a pom.xml, else the script's own folder.")
    private Path root;

    @Override
    public Integer call() {
        Quiet.libraries();
        checkOptions();
        Optional<ScriptMusic> music = script == null ? Optional.empty() : Optional.of(ScriptMusic.of(Scripts.of(script, root), soundtrack, audio));
        TrackAnalysis track = Music.hear(audio);
        Proposal proposal = new Proposal(audio.getFileName().toString(), track);
        PrintWriter out = spec.commandLine().getOut();
        facts(track, out);
        Optional<TempoMap> clicked;
        if (music.isPresent()) {
            clicked = into(music.get(), track, proposal, out);
        } else {
            clicked = proposal.tempo();
            out.println();
            proposal.tempoLines().forEach(out::println);
            proposal.markLines(clicked, List.of(), List.of()).forEach(out::println);
        }
        if (click != null) {
            click(proposal, clicked, out);
        }
        out.flush();
        return ExitCode.OK;
    }

    private void checkOptions() {
        if (script == null && (replaceTempo || snapMs != null || noNew || soundtrack != null)) {
            throw new UserException(ExitCode.USAGE, "--soundtrack, --replace-tempo, --snap and --no-new change or choose what is in a script. Name it"
                    + " with --into.");
        }
        if (snapMs != null && (snapMs < 1 || snapMs > MOST_SNAP_MS)) {
            throw new UserException(ExitCode.USAGE, "--snap " + snapMs + " is no sensible tolerance; expected 1 to " + MOST_SNAP_MS
                    + " milliseconds, such as 80.");
        }
        if (click != null && !click.toString().toLowerCase(Locale.ROOT).endsWith(".wav")) {
            throw new UserException(ExitCode.USAGE, "'" + click + "' is no name for a WAV file; it must end in .wav.");
        }
        if (click != null && same(click, audio)) {
            throw new UserException(ExitCode.USAGE, "'" + click + "' is the music itself. Name another file.");
        }
    }

    private static boolean same(Path a, Path b) {
        try {
            return Files.exists(a) && Files.exists(b) && Files.isSameFile(a, b);
        } catch (IOException e) {
            return false;
        }
    }

    private void facts(TrackAnalysis track, PrintWriter out) {
        Loudness loudness = track.loudness();
        out.println(audio + ": " + Times.clock(track.facts().lengthUs()) + ", " + track.facts().format() + ", " + track.facts().sampleRate() + " Hz, "
                + (track.facts().channels() == 1 ? "mono" : track.facts().channels() == 2 ? "stereo" : track.facts().channels() + " channels"));
        out.println("  loudness   " + (Double.isInfinite(loudness.integratedLufs()) ? "silent"
                : String.format(Locale.ROOT, "%.1f LUFS (EBU R 128)", loudness.integratedLufs())));
        out.println("  onsets     " + track.onsets().size());
        out.println("  beats      " + (track.beats().isEmpty() ? "none" : track.beats().size() + ", confidence "
                + Proposal.number(track.beatConfidence()) + doubt(track.beatConfidence())));
        out.println("  bars       " + (track.beatsPerBar() == 0 ? "none" : "of " + track.beatsPerBar() + " beats, confidence "
                + Proposal.number(track.barConfidence()) + doubt(track.barConfidence())));
        track.sections().forEach(s -> out.println("  section    " + s.label() + " from " + Times.clock(s.startUs()) + " to " + Times.clock(s.endUs())));
        track.silences().forEach(s -> out.println("  silence    from " + Times.clock(s.startUs()) + " to " + Times.clock(s.endUs())));
        track.facts().remarks().forEach(remark -> out.println("  attention  " + remark));
    }

    private static String doubt(double confidence) {
        return confidence < Proposal.UNSURE ? ": hardly better than chance" : "";
    }

    /** Writes into the script; gives the tempo that holds there now. */
    private Optional<TempoMap> into(ScriptMusic music, TrackAnalysis track, Proposal proposal, PrintWriter out) {
        TextEdits edits = new TextEdits();
        List<String> told = new ArrayList<>();
        Optional<TempoMap> written = music.planned().flatMap(PlannedSoundtrack::tempo);
        boolean hasTempo = music.track().tempo().isPresent();
        boolean tempo = !noNew && (!hasTempo || replaceTempo);
        Optional<TempoMap> grid = tempo && proposal.tempo().isPresent() ? proposal.tempo() : hasTempo ? written : Optional.empty();
        List<String> added = new ArrayList<>();
        if (tempo) {
            tempo(music, proposal, edits, added, told);
        } else if (!noNew) {
            told.add("tempo      kept as it is written; --replace-tempo puts the one that was heard in its place");
        }
        if (snapMs != null) {
            snap(music, track, edits, told);
        }
        if (!noNew) {
            List<String> marks = proposal.markLines(grid, music.markNames(), music.marksUs().values());
            added.addAll(marks);
            told.add("marks      " + marks.size() + " added" + (music.markNames().isEmpty() ? "" : ", those that are there kept"));
        }
        music.append(edits, added);
        List<Path> files = music.write(edits);
        out.println("Soundtrack " + music.track().name() + " in " + music.shown(music.track().file()) + ":");
        told.forEach(line -> out.println("  " + line));
        out.println(files.isEmpty() ? "Nothing was changed." : "Written: " + String.join(", ", files.stream().map(music::shown).toList()));
        return grid;
    }

    private void tempo(ScriptMusic music, Proposal proposal, TextEdits edits, List<String> added, List<String> told) {
        List<String> lines = proposal.tempoLines();
        Optional<TempoMap> heard = proposal.tempo();
        if (music.track().tempo().isEmpty()) {
            added.addAll(lines);
            told.add(heard.isPresent() ? "tempo      added" : "tempo      not sure enough to be used; written as a comment");
        } else if (heard.isPresent()) {
            edits.replace(music.track().tempo().get(), String.join("\n  ", lines.subList(1, lines.size())));
            told.add("tempo      replaced, as asked; bars that cues and marks count may now lie elsewhere");
        } else {
            told.add("tempo      kept as it is written: what was heard is not sure enough to take its place");
        }
    }

    private void snap(ScriptMusic music, TrackAnalysis track, TextEdits edits, List<String> told) {
        int moved = 0;
        for (MusicPlaces.MarkPlace mark : music.track().marks()) {
            Long us = music.marksUs().get(mark.name());
            if (mark.clock().isEmpty() || us == null) {
                continue;
            }
            Optional<Onset> onset = track.nearestOnset(us, snapMs * 1000L);
            if (onset.isEmpty()) {
                told.add("snap       " + mark.name() + " kept at " + Times.exactClock(us) + ": no onset within " + snapMs + " ms");
            } else if (onset.get().timeUs() != us) {
                long by = onset.get().timeUs() - us;
                edits.replace(mark.clock().get(), Times.exactClock(onset.get().timeUs()));
                told.add("snap       " + mark.name() + " from " + Times.exactClock(us) + " to " + Times.exactClock(onset.get().timeUs()) + ", "
                        + Times.millis(Math.abs(by)) + (by > 0 ? " later" : " earlier") + ", strength " + Proposal.number(onset.get().strength()));
                moved++;
            }
        }
        long fixed = music.track().marks().stream().filter(mark -> mark.clock().isEmpty()).count();
        told.add("snap       " + moved + " moved" + (fixed == 0 ? "" : "; " + fixed + " that count from bars or other marks left alone"));
    }

    private void click(Proposal proposal, Optional<TempoMap> tempo, PrintWriter out) {
        var beats = proposal.clicks(tempo);
        if (beats.isEmpty()) {
            throw new UserException(ExitCode.ERRORS_FOUND, "no beats were found in '" + audio + "', so there is nothing to click on; '" + click
                    + "' was not written.");
        }
        OutputFile.write(click, file -> {
            Path made = Files.createTempFile("girandole-", ".wav");
            try {
                org.girandole.music.analysis.ClickTrack.overMusic(audio, beats, made);
                Files.copy(made, file);
            } finally {
                Files.delete(made);
            }
        });
        out.println("Click track: " + click + ", " + beats.size() + " clicks, first at " + Times.clock(beats.get(0).timeUs()));
    }
}
