package org.girandole.plan.allocate;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedCue.Pin;
import org.girandole.plan.PlannedCue.Tube;

/**
 * What the field looks like: the tube and the pin of every cue, kept beside the script so that an edit of the script changes as little as
 * possible. Text, sorted, a line for each cue and place, so that a version control system can merge it.
 *
 * @param show name of the show it belongs to
 * @param lines by cue key
 */
public record LockFile(String show, SortedMap<String, Line> lines) {
    /** What stands before the first line. */
    private static final String HEADER = """
            # Girandole lock file: the tube and the pin of every cue, so that the field stays as it is wired when the script changes.
            # Written by 'girandole allocate' and meant to be committed. After a merge run 'girandole allocate' again.
            # A line for each cue and place: its key, its tube as RACK:TUBE, its pin as MODULE:PIN; - where it has none.
            # Pins and tubes written in the script go before this file.
            """;
    private static final String SUFFIX = ".lock";
    private static final long MOST_BYTES = 64L * 1024 * 1024;
    private static final Pattern PLACE = Pattern.compile("(\\S+):([1-9]\\d{0,8})");

    public LockFile {
        lines = Collections.unmodifiableSortedMap(new TreeMap<>(lines));
    }

    /** Tube and pin of one cue. */
    public record Line(Optional<Tube> tube, Optional<Pin> pin) {
        /** As in the file: {@code R1:3 M1:7}. */
        public String text() {
            return tube.map(t -> t.rack() + ":" + t.tube()).orElse("-") + " " + pin.map(p -> p.module() + ":" + p.pin()).orElse("-");
        }
    }

    /**
     * What differs in one line.
     *
     * @param before empty for a new line
     * @param after empty for a line that is gone
     */
    public record Change(String key, Optional<Line> before, Optional<Line> after) {
        /** Whether a cue that is in both has another tube or pin: work in the field. */
        public boolean moved() {
            return before.isPresent() && after.isPresent();
        }

        /** The change as a person reads it: {@code Hero@C: R1:3 M1:7 -> R1:3 M2:1}. */
        public String text() {
            return key + ": " + before.map(Line::text).orElse("new") + " -> " + after.map(Line::text).orElse("gone");
        }
    }

    /** The lock file that remembers this plan, hand-written pins and tubes included. */
    public static LockFile of(Plan plan) {
        SortedMap<String, Line> lines = new TreeMap<>();
        for (PlannedCue cue : plan.cues()) {
            lines.put(cue.key(), new Line(cue.tube().map(t -> new Tube(t.rack(), t.tube(), false)),
                    cue.pin().map(p -> new Pin(p.module(), p.pin(), false))));
        }
        return new LockFile(plan.script().show().name(), lines);
    }

    /** Where the lock file of a script lies: beside it, with the ending {@code .lock} instead of {@code .show}. */
    public static Path pathBeside(Path script) {
        String name = script.getFileName().toString();
        return script.resolveSibling((name.endsWith(".show") ? name.substring(0, name.length() - ".show".length()) : name) + SUFFIX);
    }

    /**
     * The lock file beside a script; empty when there is none.
     *
     * @throws LockException when it makes no sense
     * @throws IOException when it cannot be read
     */
    public static Optional<LockFile> beside(Path script) throws IOException, LockException {
        Path path = pathBeside(script);
        return Files.exists(path) ? Optional.of(read(path)) : Optional.empty();
    }

    /**
     * Reads a lock file.
     *
     * @throws LockException when it makes no sense
     * @throws IOException when it cannot be read
     */
    public static LockFile read(Path path) throws IOException, LockException {
        if (Files.size(path) > MOST_BYTES) {
            throw new LockException("it has more than " + MOST_BYTES + " bytes; that is no lock file. Name another or take it away");
        }
        try {
            return parse(StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(Files.readAllBytes(path))).toString());
        } catch (CharacterCodingException e) {
            throw new LockException("it is not UTF-8 text; restore it from version control or take it away");
        }
    }

    /** Reads the text of a lock file. @throws LockException when it makes no sense */
    public static LockFile parse(String text) throws LockException {
        Optional<String> show = Optional.empty();
        SortedMap<String, Line> lines = new TreeMap<>();
        int number = 0;
        for (String line : text.split("\\R", -1)) {
            number++;
            if (line.isBlank() || line.startsWith("#")) {
                continue;
            }
            if (line.matches("(<<<<<<<|=======|>>>>>>>|\\|\\|\\|\\|\\|\\|\\|).*")) {
                throw new LockException(number, "the file is half merged ('" + shortened(line) + "')",
                        "decide which lines stay, take away the marks of the merge, and run 'girandole allocate'");
            }
            String[] words = line.strip().split("\\s+");
            if (words[0].equals("show") && words.length == 2 && show.isEmpty()) {
                show = Optional.of(words[1]);
                continue;
            }
            if (words.length != 3 || show.isEmpty()) {
                throw new LockException(number, "found '" + shortened(line) + "', expected "
                        + (show.isEmpty() ? "'show NAME'" : "'KEY RACK:TUBE MODULE:PIN'"),
                        "restore the line from version control, or take it away and run 'girandole allocate'");
            }
            Line read = new Line(tube(words[1], number), pin(words[2], number));
            Line other = lines.putIfAbsent(words[0], read);
            if (other != null && !other.equals(read)) {
                throw new LockException(number, "cue " + words[0] + " is there twice, as '" + other.text() + "' and as '" + read.text() + "'",
                        "take away the line that does not agree with the field");
            }
        }
        if (show.isEmpty()) {
            throw new LockException("there is no line 'show NAME'; restore the file from version control, or take it away and run "
                    + "'girandole allocate'");
        }
        return new LockFile(show.get(), lines);
    }

    private static Optional<Tube> tube(String word, int line) throws LockException {
        return place(word, line, "RACK:TUBE").map(matcher -> new Tube(matcher.group(1), Integer.parseInt(matcher.group(2)), false));
    }

    private static Optional<Pin> pin(String word, int line) throws LockException {
        return place(word, line, "MODULE:PIN").map(matcher -> new Pin(matcher.group(1), Integer.parseInt(matcher.group(2)), false));
    }

    private static Optional<Matcher> place(String word, int line, String form) throws LockException {
        if (word.equals("-")) {
            return Optional.empty();
        }
        Matcher matcher = PLACE.matcher(word);
        if (!matcher.matches()) {
            throw new LockException(line, "found '" + shortened(word) + "', expected " + form + ", counted from 1, or -",
                    "restore the line from version control, or take it away and run 'girandole allocate'");
        }
        return Optional.of(matcher);
    }

    private static String shortened(String text) {
        return text.length() <= 60 ? text : text.substring(0, 60) + "...";
    }

    /** The text of the file: the header, the show, then the lines, sorted by key. Lines end with a line feed. */
    public String text() {
        StringBuilder text = new StringBuilder(HEADER).append("show ").append(show).append('\n');
        lines.forEach((key, line) -> text.append(key).append(' ').append(line.text()).append('\n'));
        return text.toString();
    }

    /**
     * Writes the file so that either the old or the new one is there, never half of it.
     *
     * @throws IOException when it cannot be written; the old file is untouched then
     */
    public void write(Path path) throws IOException {
        Path fresh = path.resolveSibling(path.getFileName() + ".new");
        try {
            Files.writeString(fresh, text(), StandardCharsets.UTF_8);
            Files.move(fresh, path, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
        } finally {
            Files.deleteIfExists(fresh);
        }
    }

    /** This file, if it belongs to the show. @throws LockException if it belongs to another */
    public LockFile requireShow(String name) throws LockException {
        if (!show.equals(name)) {
            throw new LockException("it belongs to the show " + show + ", not to " + name
                    + "; give it the name of its own script, or take it away and run 'girandole allocate'");
        }
        return this;
    }

    /** What an allocation needs of it. */
    public Memory memory() {
        Map<String, Pin> pins = new LinkedHashMap<>();
        Map<String, Tube> tubes = new LinkedHashMap<>();
        lines.forEach((key, line) -> {
            line.pin().ifPresent(pin -> pins.put(key, pin));
            line.tube().ifPresent(tube -> tubes.put(key, tube));
        });
        return new Memory(pins, tubes);
    }

    /** What is different in {@code later}, sorted by key. */
    public List<Change> changesTo(LockFile later) {
        SortedMap<String, Change> changes = new TreeMap<>();
        lines.forEach((key, line) -> {
            Optional<Line> after = Optional.ofNullable(later.lines.get(key));
            if (!after.equals(Optional.of(line))) {
                changes.put(key, new Change(key, Optional.of(line), after));
            }
        });
        later.lines.forEach((key, line) -> {
            if (!lines.containsKey(key)) {
                changes.put(key, new Change(key, Optional.empty(), Optional.of(line)));
            }
        });
        return List.copyOf(changes.values());
    }
}
