package org.girandole.lang.ide.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.eclipse.xtext.resource.XtextResource;
import org.girandole.lang.LoadedShow;
import org.girandole.lang.check.CheckedShow;
import org.girandole.lang.check.ShowPipeline;
import org.girandole.lang.compile.CueMemory;
import org.girandole.lang.compile.ShowCompiler;
import org.girandole.lang.files.Recordings;
import org.girandole.lang.ide.completion.Completion;
import org.girandole.lang.ide.features.Folding;
import org.girandole.lang.ide.features.ScriptView;
import org.girandole.lang.ide.features.Symbols;
import org.girandole.lang.ide.features.Tokens;
import org.girandole.plan.Finding;
import org.girandole.plan.fallout.FlightMemory;
import org.girandole.plan.schedule.WiringMemory;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * The example, half written in every way: nothing breaks or hangs, and what was parsed and compiled piece by piece is what would be at once.
 * A share of all beginnings and edits is tried in each build; {@code -Dgirandole.halfwritten=all} tries every beginning and 10,000 edits.
 */
class HalfWrittenTest {
    private static final Path EXAMPLE = Path.of("../../examples/harbour-night");
    private static final boolean ALL = "all".equals(System.getProperty("girandole.halfwritten"));
    private static final int EDITS = ALL ? 10_000 : 100;
    /** Every so many characters a beginning is checked; all of them are parsed on the way. */
    private static final int STRIDE = ALL ? 1 : 131;
    /** Edits pile up until so many; then the text begins anew, or it would soon be noise. */
    private static final int PILE = 25;
    private static final int COMPARED = ALL ? 10 : 5;
    private static final Pattern TOKEN = Pattern.compile("\\s+|\\w+|\"[^\"\\n]*\"|.");

    @TempDir
    private Path project;
    private Language language;
    private ShowFolder folder;
    private Path main;
    private String text;
    /** As the server has it, between one check and the next. */
    private final FlightMemory flights = new FlightMemory();
    private final CueMemory cues = new CueMemory();
    private final WiringMemory wirings = new WiringMemory();

    @BeforeEach
    void copyExample() throws IOException {
        try (Stream<Path> files = Files.walk(EXAMPLE)) {
            for (Path file : files.filter(Files::isRegularFile).filter(f -> !f.toString().contains("target")).toList()) {
                Path copy = project.resolve(EXAMPLE.relativize(file).toString());
                Files.createDirectories(copy.getParent());
                Files.copy(file, copy);
            }
        }
        main = project.resolve("harbour.show");
        text = Files.readString(main);
        language = new Language(new ServedShowSetup(new ShowBoard()).createInjectorAndDoEMFRegistration());
        folder = new ShowFolder(project, language);
    }

    private XtextResource begin(String with) {
        folder.buffer(ScriptUris.model(main), with);
        return folder.load(ScriptUris.model(main)).orElseThrow();
    }

    /** Changes the parsed script and gives it a look over by everything that an editor asks at each key press. */
    private XtextResource change(XtextResource script, String before, String after) {
        Stretch stretch = Stretch.between(before, after);
        folder.buffer(ScriptUris.model(main), after);
        folder.edit(script, stretch.offset(), stretch.length(), stretch.text());
        return script;
    }

    private void check(XtextResource script, String now) {
        LoadedShow loaded = compile(script);
        CheckedShow checked = ShowPipeline.check(loaded, main, project, flights, wirings, () -> false);
        TextLines lines = new TextLines(now);
        for (Finding finding : checked.findings()) {
            assertThat(finding.message()).as(now).doesNotContain("null", "RULE_");
            if (finding.source().file().equals("harbour.show")) {
                assertThat(finding.source().line()).isBetween(1, lines.count());
            }
        }
        ScriptView view = new ScriptView("harbour.show", script, lines);
        assertThat(Symbols.outline(view)).doesNotContainNull();
        assertThat(Folding.of(view)).allSatisfy(fold -> assertThat(fold.getEndLine()).isLessThan(lines.count()));
        assertThat(Tokens.of(view, 0, lines.count()).getData().size() % 5).isZero();
        assertThat(language.get(Completion.class).at(view, java.util.Optional.empty(), lines.position(now.length() * 2 / 3), true)).doesNotContainNull();
    }

    private LoadedShow compile(XtextResource script) {
        return language.get(ShowCompiler.class).compile(script, Recordings.FROM_DISK, cues, () -> false);
    }

    /** What parsing and compiling piece by piece came to, and what both come to at once. */
    private void compare(XtextResource script, String now) {
        assertThat(script.getParseResult().getRootNode().getText()).isEqualTo(now);
        LoadedShow piecewise = compile(script);
        ShowFolder fresh = new ShowFolder(project, language);
        fresh.buffer(ScriptUris.model(main), now);
        LoadedShow atOnce = language.get(ShowCompiler.class).compile(fresh.load(ScriptUris.model(main)).orElseThrow());
        assertThat(piecewise.problems()).as(now).isEqualTo(atOnce.problems());
        assertThat(piecewise.script()).as(now).isEqualTo(atOnce.script());
    }

    @Test
    @Timeout(value = 4, unit = TimeUnit.HOURS)
    void everyBeginning() {
        XtextResource script = begin("");
        for (int end = 1; end <= text.length(); end++) {
            change(script, text.substring(0, end - 1), text.substring(0, end));
            if (end % STRIDE == 0 || end == text.length()) {
                check(script, text.substring(0, end));
            }
            if (end % (STRIDE * COMPARED) == 0) {
                compare(script, text.substring(0, end));
            }
        }
    }

    @Test
    @Timeout(value = 4, unit = TimeUnit.HOURS)
    void randomEdits() {
        SplittableRandom random = new SplittableRandom(20270619);
        List<String> tokens = tokens();
        String now = text;
        XtextResource script = begin(now);
        for (int i = 1; i <= EDITS; i++) {
            String next = i % PILE == 0 ? text : edited(now, tokens, random);
            change(script, now, next);
            now = next;
            check(script, now);
            if (i % COMPARED == 0) {
                compare(script, now);
            }
        }
    }

    private static String edited(String now, List<String> tokens, SplittableRandom random) {
        StringBuilder next = new StringBuilder(now);
        int at = random.nextInt(now.length() + 1);
        int end = Math.min(now.length(), at + random.nextInt(1, 30));
        switch (random.nextInt(5)) {
            case 0 -> next.delete(at, end);
            case 1 -> next.insert(at, tokens.get(random.nextInt(tokens.size())));
            case 2 -> next.insert(at, (char) random.nextInt(32, 127));
            case 3 -> next.insert(at, now.substring(at, end));
            default -> next.replace(at, end, tokens.get(random.nextInt(tokens.size())));
        }
        return next.toString();
    }

    private List<String> tokens() {
        List<String> tokens = new ArrayList<>();
        Matcher matcher = TOKEN.matcher(text);
        while (matcher.find()) {
            tokens.add(matcher.group());
        }
        return tokens;
    }
}
