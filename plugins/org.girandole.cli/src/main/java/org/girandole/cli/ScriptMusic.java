package org.girandole.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.girandole.lang.LoadedShow;
import org.girandole.lang.ShowLoader;
import org.girandole.lang.edit.MusicPlaces;
import org.girandole.lang.edit.TextEdits;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.schedule.Planner;
import org.girandole.plan.script.Score;
import org.girandole.plan.script.ShowScript;
import org.girandole.plan.script.Soundtrack;

/** One soundtrack of a script: where it is written, and what is known of it. */
final class ScriptMusic {
    private final Scripts place;
    private final MusicPlaces places;
    private final MusicPlaces.Track track;
    private final Optional<PlannedSoundtrack> planned;

    private ScriptMusic(Scripts place, MusicPlaces places, MusicPlaces.Track track, Optional<PlannedSoundtrack> planned) {
        this.place = place;
        this.places = places;
        this.track = track;
        this.planned = planned;
    }

    /**
     * Finds a soundtrack.
     *
     * @param name  what it is called, or null: then the one that plays {@code audio}, or the only one there is
     * @param audio a recording, or null
     * @throws UserException when it is not clear which one is meant, or the script cannot be read as a whole
     */
    static ScriptMusic of(Scripts place, String name, Path audio) {
        MusicPlaces places = places(place);
        MusicPlaces.Track track = choose(places.tracks(), name, audio);
        return new ScriptMusic(place, places, track, planned(place, track.name()));
    }

    private static MusicPlaces places(Scripts place) {
        MusicPlaces places;
        try {
            places = MusicPlaces.of(place.script(), place.root());
        } catch (IOException e) {
            throw new UserException(ExitCode.USAGE, "'" + place.script() + "' may not be read. Check its permissions.");
        }
        if (places.broken()) {
            throw new UserException(ExitCode.USAGE, "'" + place.script().getFileName() + "' has a syntax error, so its words cannot be told apart;"
                    + " nothing was written. 'girandole check' says where it is.");
        }
        return places;
    }

    /** The soundtrack that plays a recording, if exactly one does. */
    static Optional<ScriptMusic> playing(Scripts place, Path audio) {
        MusicPlaces places = places(place);
        List<MusicPlaces.Track> playing = places.tracks().stream().filter(t -> t.audio().filter(file -> same(file, audio)).isPresent()).toList();
        return playing.size() == 1 ? Optional.of(new ScriptMusic(place, places, playing.get(0), planned(place, playing.get(0).name())))
                : Optional.empty();
    }

    private static MusicPlaces.Track choose(List<MusicPlaces.Track> tracks, String name, Path audio) {
        String names = tracks.stream().map(MusicPlaces.Track::name).collect(Collectors.joining(", "));
        if (tracks.isEmpty()) {
            throw new UserException(ExitCode.USAGE, "the script has no soundtrack. Write one first, such as: soundtrack Tides { audio \"tides.wav\" }");
        }
        if (name != null) {
            return tracks.stream().filter(t -> t.name().equals(name)).findFirst().orElseThrow(() -> new UserException(ExitCode.USAGE,
                    "the script has no soundtrack '" + name + "'. It has " + names + "."));
        }
        List<MusicPlaces.Track> playing = audio == null ? List.of()
                : tracks.stream().filter(t -> t.audio().filter(file -> same(file, audio)).isPresent()).toList();
        if (playing.size() == 1) {
            return playing.get(0);
        }
        if (tracks.size() == 1) {
            return tracks.get(0);
        }
        throw new UserException(ExitCode.USAGE, "the script has " + tracks.size() + " soundtracks and "
                + (audio == null ? "" : playing.isEmpty() ? "none of them plays '" + audio + "', so " : "several of them play '" + audio + "', so ")
                + "it is not clear which one is meant. Say it with --soundtrack: " + names + ".");
    }

    private static boolean same(Path a, Path b) {
        try {
            return Files.isSameFile(a, b);
        } catch (IOException e) {
            return false;
        }
    }

    /** The soundtrack resolved, whether a score plays it or not. */
    private static Optional<PlannedSoundtrack> planned(Scripts place, String name) {
        LoadedShow loaded = new ShowLoader().load(place.script(), place.root());
        Optional<Soundtrack> soundtrack = loaded.script().flatMap(s -> s.soundtracks().stream().filter(t -> t.name().equals(name)).findFirst());
        if (soundtrack.isEmpty()) {
            return Optional.empty();
        }
        ShowScript s = loaded.script().orElseThrow();
        Score score = new Score(name, 0, List.of(), List.of(), List.of(), soundtrack.get().source());
        ShowScript alone = new ShowScript(s.show(), List.of(soundtrack.get()), List.of(), List.of(), List.of(), Optional.empty(), List.of(), List.of(),
                List.of(), List.of(), List.of(), Optional.empty(), List.of(score), List.of(), List.of(), List.of(), List.of(), Optional.empty(), List.of());
        return new Planner().plan(alone).soundtrack(name);
    }

    /** The plan of the script as it lies on disk now; empty when it has no show. */
    Optional<Plan> plan() {
        return new ShowLoader().load(place.script(), place.root()).script().map(new Planner()::plan);
    }

    MusicPlaces.Track track() {
        return track;
    }

    /** Empty when the script has no show block, or the soundtrack cannot be planned. */
    Optional<PlannedSoundtrack> planned() {
        return planned;
    }

    /** Times of the marks that are known. */
    Map<String, Long> marksUs() {
        return planned.map(PlannedSoundtrack::marksUs).orElse(Map.of());
    }

    /** Names that marks have already, known times or not. */
    List<String> markNames() {
        List<String> names = new ArrayList<>(track.marks().stream().map(MusicPlaces.MarkPlace::name).toList());
        names.addAll(marksUs().keySet());
        return names;
    }

    /** Adds lines before the end of the soundtrack block. */
    void append(TextEdits edits, List<String> lines) {
        if (lines.isEmpty()) {
            return;
        }
        String text = places.text(track.file());
        String end = text.contains("\r\n") ? "\r\n" : "\n";
        int brace = track.end();
        int lineStart = text.lastIndexOf('\n', brace - 1) + 1;
        boolean ownLine = text.substring(lineStart, brace).isBlank();
        String block = lines.stream().map(line -> "  " + line + end).collect(Collectors.joining());
        if (ownLine && lineStart > 0) {
            edits.insert(track.file(), lineStart, block);
        } else {
            edits.insert(track.file(), brace, end + block);
        }
    }

    /** Writes all files that change, each whole or not at all. */
    List<Path> write(TextEdits edits) {
        Map<Path, String> texts = new LinkedHashMap<>();
        for (Path file : edits.files()) {
            if (!Files.isWritable(file)) {
                throw new UserException(ExitCode.NOT_WRITTEN, "'" + shown(file) + "' may not be written to. Check its permissions.");
            }
            if (!TextFile.read(file, "script").equals(places.text(file))) {
                throw new UserException(ExitCode.NOT_WRITTEN, "'" + shown(file) + "' has changed while it was being read. Try again.");
            }
            texts.put(file, edits.apply(file, places.text(file)));
        }
        texts.forEach((file, text) -> {
            try {
                // A link stays a link: the file it leads to is written.
                OutputFile.write(file.toRealPath(), out -> out.write(text.getBytes(StandardCharsets.UTF_8)));
            } catch (IOException e) {
                throw new UserException(ExitCode.NOT_WRITTEN, "'" + shown(file) + "' could not be written: " + e.getMessage());
            }
        });
        return List.copyOf(texts.keySet());
    }

    String shown(Path file) {
        return place.display().apply(file.toString());
    }
}
