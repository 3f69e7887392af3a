package org.girandole.rules;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * A script that says itself what is to be found in it. Below the line that a finding points at stands a comment, its caret under the
 * column: {@code //  ^ warning off-mark: text of the message}. {@code //<} stands for the first column.
 *
 * @param rule the rule that the fixture is about: the name of its folder
 */
record Fixture(Path file, String rule, List<String> lines, List<Expected> expected) {
    static final Path ROOT = Path.of("src/test/fixtures");
    private static final Pattern EXPECTED = Pattern.compile("^//(?:<| *\\^) +(error|warning|info) ([a-z0-9-]+): (.+)$");

    /** A finding that must be there: its place, its rule and a part of its message. */
    record Expected(int line, int column, String severity, String rule, String text) {
    }

    static Fixture read(Path file) {
        List<String> lines;
        try {
            lines = Files.readAllLines(file, StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        List<Expected> expected = new ArrayList<>();
        int line = 0;
        for (int i = 0; i < lines.size(); i++) {
            Matcher matcher = EXPECTED.matcher(lines.get(i));
            if (matcher.matches()) {
                int column = lines.get(i).startsWith("//<") ? 1 : lines.get(i).indexOf('^') + 1;
                expected.add(new Expected(line, column, matcher.group(1), matcher.group(2), matcher.group(3)));
            } else {
                line = i + 1;
            }
        }
        return new Fixture(file, file.getParent().getFileName().toString(), lines, expected);
    }

    /** Every fixture, by name. */
    static List<Fixture> all() {
        try (Stream<Path> files = Files.walk(ROOT)) {
            return files.filter(file -> file.toString().endsWith(".show") && !file.getParent().equals(ROOT))
                    .sorted().map(Fixture::read).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    boolean fires() {
        return expected.stream().anyMatch(e -> e.rule().equals(rule));
    }

    /** The script without what it says about itself. */
    List<String> script() {
        return lines.stream().filter(line -> !EXPECTED.matcher(line).matches()).toList();
    }

    @Override
    public String toString() {
        return rule + "/" + file.getFileName();
    }
}
