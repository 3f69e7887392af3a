package org.girandole.studio.views;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Views know the show by the requests of the protocol alone, and drawings know no toolkit. */
class ViewLayersTest {
    private static final Path SOURCES = HarbourNight.root().resolve("plugins/org.girandole.studio.views/src/org/girandole/studio/views");

    @Test
    void nothingOfTheLanguageOrThePlan() throws IOException {
        assertThat(imports(SOURCES)).isNotEmpty().noneMatch(line -> line.matches("import org\\.girandole\\.(lang|plan|sheets|physics|timecode)\\..*")
                || line.startsWith("import org.eclipse.xtext") || line.startsWith("import org.eclipse.emf"));
    }

    @Test
    void drawingsKnowNoToolkit() throws IOException {
        for (String drawing : List.of("draw", "stage", "timeline", "site", "sky", "sheets")) {
            assertThat(imports(SOURCES.resolve(drawing))).as(drawing).noneMatch(line -> line.startsWith("import org.eclipse"));
        }
    }

    private static List<String> imports(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            List<Path> files = all.filter(path -> path.toString().endsWith(".java")).toList();
            return files.stream().flatMap(path -> lines(path).stream()).filter(line -> line.startsWith("import ")).toList();
        }
    }

    private static List<String> lines(Path path) {
        try {
            return Files.readAllLines(path);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
