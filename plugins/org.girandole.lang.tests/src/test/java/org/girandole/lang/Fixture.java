package org.girandole.lang;

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
 * A script that says itself what is wrong with it. Below the line that a problem points at stands a comment, its carets under the text
 * concerned: {@code //  ^^^ error unknown-unit: message}. {@code //<3} stands for three characters from the first column.
 */
record Fixture(Path file) {
    private static final Path ROOT = Path.of("src/test/fixtures");
    private static final Pattern EXPECTED = Pattern.compile("//(?:<(\\d+)| *(\\^+)) (error|warning) ([a-z0-9-]+: .+)");

    /** All fixtures; files that begin with an underscore are used by others. */
    static List<Fixture> all() {
        try (Stream<Path> files = Files.walk(ROOT)) {
            return files.filter(Files::isRegularFile).filter(file -> file.toString().endsWith(".show"))
                    .filter(file -> !file.getFileName().toString().startsWith("_")).sorted().map(Fixture::new).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The rule that the fixture is about: the name of its folder. */
    String rule() {
        return file.getParent().getFileName().toString();
    }

    /** What it expects of itself and of the fixtures beside it that it reads. */
    List<String> expected(LoadedShow loaded) {
        List<String> expected = new ArrayList<>();
        loaded.inputs().stream().map(input -> input.path()).filter(path -> path.endsWith(".show")).sorted()
                .forEach(path -> expected.addAll(expected(path)));
        return expected;
    }

    private List<String> expected(String path) {
        List<String> expected = new ArrayList<>();
        int line = 0;
        try {
            List<String> lines = Files.readAllLines(file.resolveSibling(path), StandardCharsets.UTF_8);
            for (int i = 0; i < lines.size(); i++) {
                Matcher m = EXPECTED.matcher(lines.get(i));
                if (!m.matches()) {
                    line = i + 1;
                    continue;
                }
                int column = m.group(1) == null ? m.start(2) + 1 : 1;
                int length = m.group(1) == null ? m.group(2).length() : Integer.parseInt(m.group(1));
                expected.add(path + ":" + line + ":" + column + "+" + length + " " + m.group(3) + " " + m.group(4));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return expected;
    }

    @Override
    public String toString() {
        return rule() + "/" + file.getFileName();
    }
}
