package org.girandole.lang.ide.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionContext;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.DiagnosticSeverity;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.girandole.lang.ide.fixes.Fixes;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Each fix does what its title says, and the finding is gone after it. */
class FixesTest {
    private static final String FILE = "quay.show";
    private static final Path DOCS = Path.of("../../docs/editor.md");

    @TempDir
    private Path folder;
    private Editor editor;

    @BeforeEach
    void start() {
        editor = new Editor(folder);
    }

    @AfterEach
    void stop() {
        editor.close();
    }

    /** Takes a fix and gives the text after it; nothing is found of the rule any more, and no error that neither it nor the whole show had before. */
    private String mended(String text, String rule, String title) {
        editor.open(FILE, text);
        List<String> before = new ArrayList<>(errors());
        before.addAll(Quay.ERRORS);
        editor.apply(action(rule, title));
        assertThat(editor.rules(FILE)).as("found after '%s' in%n%s", title, editor.text(FILE)).doesNotContain(rule);
        assertThat(before).as("errors before '%s' in%n%s", title, editor.text(FILE)).containsAll(errors());
        return editor.text(FILE);
    }

    private List<String> errors() {
        return editor.findings(FILE).stream().filter(d -> d.getSeverity() == DiagnosticSeverity.Error).map(d -> d.getCode().getLeft()).sorted().toList();
    }

    /**
     * Takes a fix that leaves gaps to be filled in, and gives the text after it; nothing is found of the rule any more, and what is found beside
     * what was found before asks for what is missing.
     */
    private String fixed(String text, String rule, String title, String... asking) {
        editor.open(FILE, text);
        Set<String> before = new TreeSet<>(editor.rules(FILE));
        editor.apply(action(rule, title));
        Set<String> after = new TreeSet<>(editor.rules(FILE));
        assertThat(after).as("found after '%s' in%n%s", title, editor.text(FILE)).doesNotContain(rule).contains(asking);
        after.removeAll(before);
        assertThat(after).as("newly found after '%s' in%n%s", title, editor.text(FILE)).isSubsetOf(asking);
        return editor.text(FILE);
    }

    /** Takes the split of a cue, and gives the text after it; nothing else is found than before, and as often. */
    private String split(String text, String rule) {
        editor.open(FILE, text);
        List<String> before = messages();
        editor.apply(action(rule, "Split the cue: one line for each of its places"));
        assertThat(messages()).as("found after the split in%n%s", editor.text(FILE)).isEqualTo(before);
        return editor.text(FILE);
    }

    private List<String> messages() {
        return editor.findings(FILE).stream().map(d -> d.getCode().getLeft() + ": " + d.getMessage().getLeft()).sorted().toList();
    }

    private CodeAction action(String rule, String title) {
        List<CodeAction> actions = editor.fixes(FILE, rule);
        assertThat(actions).as("fixes of %s; found are %s", rule, editor.findings(FILE).stream().map(d -> d.getCode().getLeft() + ": "
                + d.getMessage().getLeft()).toList()).extracting(CodeAction::getTitle).contains(title);
        return actions.stream().filter(a -> a.getTitle().equals(title)).findFirst().orElseThrow();
    }

    @Test
    void aMistypedWordIsReplacedByTheNearest() {
        assertThat(mended(Quay.with("    at bar 12  A  Poeny"), "unresolved-name", "Write Peony")).contains("at bar 12  A  Peony");
        assertThat(mended(Quay.SHOW.replace("header", "header") + "table T { file \"a.csv\"  header yess  column \"a\" = number }\n", "unknown-word", "Write yes"))
                .contains("header yes ");
    }

    @Test
    void aMissingUnitIsAdded() {
        assertThat(mended(Quay.SHOW.replace("calibre 75 mm  rise", "calibre 75  rise"), "missing-unit", "Add the unit mm")).contains("calibre 75 mm");
        assertThat(mended(Quay.with("    at Swell + 2  A  Peony"), "missing-unit", "Add the unit beats")).contains("at Swell + 2 beats");
    }

    @Test
    void aSignForInchesOrFeetBecomesTheUnitItStandsFor() {
        String inches = Quay.SHOW.replace("like Peony { calibre 100 mm }", "like Peony {\n  calibre 4\"\n}");
        assertThat(mended(inches, "missing-unit", "Write 4 in")).contains("  calibre 4 in\n");
        assertThat(mended(Quay.SHOW.replace("apex 105 m", "apex 345'"), "missing-unit", "Write 345 ft")).contains("apex 345 ft ");
        editor.open(FILE, inches);
        assertThat(editor.fixes(FILE, "missing-unit")).extracting(CodeAction::getTitle).containsExactly("Write 4 in");
    }

    @Test
    void positionsAreJoinedByAComma() {
        for (String joined : List.of("A and B", "A & B", "A&B", "A + B")) {
            assertThat(mended(Quay.with("    at bar 12  " + joined + "  Peony"), "syntax", "Write a comma")).contains("at bar 12  A, B  Peony");
        }
        assertThat(mended(Quay.with("    at bar 12  A, and B  Peony"), "syntax", "Leave out 'and'")).contains("at bar 12  A, B  Peony");
        assertThat(mended(Quay.SHOW.replace("Both = A, B", "Both = A and B"), "syntax", "Write a comma")).contains("group Both = A, B\n");
        assertThat(mended(Quay.SHOW.replace("of Box at B", "of Box at B and A"), "syntax", "Write a comma")).contains("of Box at B, A\n");
    }

    @Test
    void aWaiverIsMovedOutOfTheScore() {
        String waiver = "waive off-mark for Hero because \"on purpose\" by \"T. Example\" until 2027-06-20";
        assertThat(mended(Quay.with("    " + waiver + "\n    cue Hero at 0:16.040  A  Peony"), "syntax", "Move the waiver out of the score"))
                .contains("A, B  Peony\n    cue Hero at 0:16.040").endsWith("}\n" + waiver + "\n");
        assertThat(editor.findings(FILE)).filteredOn(d -> d.getCode().getLeft().equals("off-mark")).singleElement()
                .satisfies(d -> assertThat(d.getMessage().getLeft()).contains("Waived by T. Example"));
    }

    @Test
    void aMissingThingIsDefined() {
        assertThat(fixed(Quay.with("    at bar 12  A  Chrysanthemum"), "unresolved-name", "Define the effect Chrysanthemum", "rise-missing"))
                .contains("shell Chrysanthemum {");
        assertThat(fixed(Quay.with("    at Zenith  A  Peony"), "unresolved-name", "Define the mark Zenith (its moment is still to be given)", "mark-cycle"))
                .contains("  mark Zenith at Zenith\n}");
        assertThat(fixed(Quay.with("    at bar 12  Z  Peony"), "unresolved-name", "Define the position Z (its place is still to be measured)", "missing-field"))
                .contains("  position Z\n}");
    }

    @Test
    void whatIsSaidTwiceIsTakenOut() {
        assertThat(mended(Quay.SHOW.replace("  air 15 degC\n", "  air 15 degC\n  air 16 degC\n"), "repeated-field", "Take out air")).doesNotContain("16 degC");
        assertThat(mended(Quay.with("    at bar 12  A, B, A  Peony"), "place-twice", "Name A once")).contains("at bar 12  A, B  Peony");
    }

    @Test
    void aScoreIsGivenItsSlot() {
        assertThat(mended(Quay.SHOW.replace("score Tides in slot 0", "score Tides"), "missing-field", "Put the score in slot 0"))
                .contains("score Tides in slot 0 {");
    }

    @Test
    void aWordOfTheLanguageIsEscaped() {
        assertThat(mended(Quay.SHOW + "comet shell { calibre 45 mm }\n", "syntax", "Write ^shell to use the word as a name")).contains("comet ^shell {");
    }

    @Test
    void anOpenBlockIsClosed() {
        assertThat(mended(Quay.SHOW.replace("  air 15 degC\n}\n", "  air 15 degC\n"), "syntax", "Close the block")).contains("air 15 degC\n}");
    }

    @Test
    void aClockTimeBesideAMarkBecomesTheMark() {
        assertThat(mended(Quay.with("    at 0:16.040  A  Peony"), "off-mark", "Use the mark Swell")).contains("at Swell  A  Peony");
    }

    @Test
    void aCueIsMovedByWhatIsMissing() {
        // Two pins of one module 10 ms apart, where the module wants 20 ms between them.
        assertThat(mended(Quay.with("    at bar 12  A  Peony  pin M1/3\n    at bar 12 + 10 ms  A  Peony  pin M1/4"), "pins-too-close", "Move the cue 10 ms later"))
                .contains("at bar 12 + 10 ms + 10 ms");
        // At bar 1 the first note is seen; 2.305 s earlier is the firing, which the step of 10 ms rounds half up to 2.3 s.
        assertThat(mended(Quay.with("    at bar 1  A  Peony"), "fires-in-preroll", "Move the cue 2.3 s later")).contains("at bar 1 + 2.3 s");
    }

    @Test
    void aCueIsMovedToWhereTimecodeRuns() {
        // At bar 1 the first note is seen, and 2.3 s earlier is the firing.
        String early = Quay.with("    at bar 1  A  Peony");
        assertThat(mended(early.replace("preroll 60 s", "preroll 1 s"), "fires-before-timecode", "Move the cue 1.3 s later")).contains("at bar 1 + 1.3 s");
        assertThat(mended(early.replace("preroll 60 s", "preroll 1 s"), "fires-before-timecode", "Make the pre-roll 3 s")).contains("preroll  3 s");
        // 1308 ms are missing, and the firing system fires in steps of 10 ms: 1308 ms later would be fired at the step before.
        assertThat(mended(early.replace("preroll 60 s", "preroll 992 ms"), "fires-before-timecode", "Move the cue 1.31 s later"))
                .contains("at bar 1 + 1.31 s");
        // The soundtrack may stand in a file of its own.
        int from = early.indexOf("soundtrack Tides");
        int to = early.indexOf("figure Pair2");
        editor.open("music.show", early.substring(from, to).replace("preroll 60 s", "preroll 1 s"));
        editor.open(FILE, "use \"music.show\"\n" + early.substring(0, from) + early.substring(to));
        editor.apply(action("fires-before-timecode", "Make the pre-roll 3 s"));
        assertThat(editor.text("music.show")).contains("preroll  3 s");
        editor.type(FILE, 0, 0, "// So that the findings of both files are of the same check.\n");
        assertThat(editor.rules(FILE)).doesNotContain("fires-before-timecode");
        // A clock time is counted on, but not below the first note.
        assertThat(mended(early.replace("at bar 1 ", "at 0:01.0005 ").replace("preroll 60 s", "preroll 1 s"), "fires-before-timecode",
                "Move the cue 300 ms later")).contains("at 0:01.300500 ");
    }

    @Test
    void aChainIsMovedBackIntoItsSection() {
        // Bar 24 begins after 23 bars of 2 s; three beats later is 47.5 s, and two links of 400 ms later 48.3 s, where the section ends at 48 s.
        String chain = "chain Run of 3 Peony { gap 400 ms +- 8 %  lead 100 ms }\n";
        assertThat(mended(chain + Quay.with("    at bar 24 + 3 beats  A  Run"), "chain-overruns", "Move the cue 300 ms earlier"))
                .contains("at bar 24 + 3 beats - 300 ms  A  Run");
    }

    @Test
    void aCueIsMovedOutOfAHold() {
        editor.open(FILE, Quay.with("    at bar 12  A  Peony\n  }\n  hold from 0:23 to 0:26 \"ferry\"\n  section More from bar 26 to bar 27 {"));
        CodeAction action = editor.fixes(FILE, "hold-debris").stream().filter(a -> a.getTitle().matches("Move the cue [0-9.]+ m?s earlier")).findFirst().orElseThrow();
        editor.apply(action);
        assertThat(editor.text(FILE)).containsPattern("at [a-zA-Z0-9 ]+ - [0-9.]+ m?s");
        assertThat(editor.rules(FILE)).doesNotContain("hold-debris");
    }

    @Test
    void aWrittenPinIsReplacedByAFreeOneOrLeftOut() {
        String taken = Quay.with("    at bar 12  A  Peony  pin M1/1\n    at bar 13  A  Peony  pin M1/1");
        assertThat(mended(taken, "pin-taken", "Let the program choose the pin")).containsPattern("at bar 1[23]  A  Peony\n");
        assertThat(mended(Quay.with("    at bar 12  A  Peony  pin M1/9"), "pin-out-of-range", "Use the free pin M1/3")).contains("pin M1/3");
        assertThat(mended(Quay.with("    at bar 12  A  Peony  pin M2/6"), "module-elsewhere", "Let the program choose the pin")).contains("at bar 12  A  Peony\n");
    }

    @Test
    void aWrittenTubeIsReplacedByAFreeOneOrLeftOut() {
        String other = Quay.SHOW.replace("rack R2", "rack R3 at A { 2 tubes 100 mm long 700 mm  spaced 220 mm }\nrack R2");
        String cue = "    at bar 12  A  Peony  tube R3/1";
        String text = other.replace("    cue Hero at bar 12  A  Peony  note \"the one\"", cue);
        assertThat(mended(text, "tube-calibre", "Let the program choose the tube")).contains("at bar 12  A  Peony\n");
        assertThat(mended(Quay.with("    at bar 12  A  Peony  tube R1/9"), "tube-out-of-range", "Use the free tube R1/3")).contains("tube R1/3");
        assertThat(mended(Quay.with("    at bar 12  A  Peony  tube R2/3"), "rack-elsewhere", "Let the program choose the tube")).contains("at bar 12  A  Peony\n");
    }

    @Test
    void aTakenTubeIsLeftToTheFirst() {
        String taken = Quay.with("    at bar 12  A  Peony  tube R1/1\n    at bar 13  A  Peony  tube R1/1");
        assertThat(mended(taken, "tube-taken", "Use the free tube R1/4")).contains("tube R1/4");
        assertThat(mended(taken, "tube-taken", "Let the program choose the tube")).contains("at bar 13  A  Peony\n");
        // What is loaded again and again into one tube finds no peace in another.
        editor.open(FILE, Quay.with("    repeat 2 every 1 bar from bar 15 {\n      at 0  A  Peony  tube R1/1\n    }"));
        assertThat(editor.fixes(FILE, "tube-taken")).extracting(CodeAction::getTitle).contains("Let the program choose the tube")
                .noneMatch(title -> title.startsWith("Use the free tube"));
    }

    @Test
    void onlyATubeThatCanBeTiltedSoFarIsOffered() {
        String text = Quay.with("    at bar 12  A  Peony  tilt 20 deg  tube R1/6").replace("rack R2",
                "rack R3 at A { 2 tubes 75 mm long 500 mm  spaced 160 mm  tilt -30 deg .. 30 deg }\nrack R2");
        assertThat(mended(text, "tube-tilt", "Use the free tube R3/1")).contains("tube R3/1");
        assertThat(mended(text, "tube-tilt", "Let the program choose the tube")).contains("tilt 20 deg\n");
        editor.open(FILE, text);
        assertThat(editor.fixes(FILE, "tube-tilt")).extracting(CodeAction::getTitle).noneMatch(title -> title.startsWith("Use the free tube R1"));
    }

    @Test
    void onlyATubeThatIsKnownToBeLongEnoughIsOffered() {
        // Five times 75 mm are 375 mm.
        String text = Quay.with("    at bar 12  A  Peony  tube R3/1").replace("rack R2",
                "rack R3 at A { 2 tubes 75 mm long 370 mm  spaced 160 mm }\nrack R4 at A { 1 tubes 75 mm  spaced 160 mm }\nrack R2");
        assertThat(mended(text, "mortar-too-short", "Use the free tube R1/3")).contains("tube R1/3");
        editor.open(FILE, text);
        assertThat(editor.fixes(FILE, "mortar-too-short")).extracting(CodeAction::getTitle).noneMatch(title -> title.startsWith("Use the free tube R3")
                || title.startsWith("Use the free tube R4") || title.startsWith("Let the program choose"));
    }

    @Test
    void aSoundtrackIsThatOfItsRecording() throws Exception {
        Path recording = folder.resolve("tides.wav");
        AudioSystem.write(new AudioInputStream(new ByteArrayInputStream(new byte[60 * 8000]), new AudioFormat(8000, 8, 1, false, false), 60 * 8000),
                AudioFileFormat.Type.WAVE, recording.toFile());
        String hash = HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(recording)));
        String other = Quay.SHOW.replace("  length 1:00.000\n", "  audio \"tides.wav\" hash \"" + "0".repeat(64) + "\"\n  length 1:02.000\n");
        assertThat(mended(other, "audio-length", "Write the length of the recording, 1:00.000")).contains("length   1:00.000");
        assertThat(mended(other, "audio-changed", "Accept the recording that is there now (listen through the show first)")).contains(hash);
    }

    @Test
    void aMissingTubeOrPinGetsARackOrModule() {
        assertThat(fixed(Quay.with("    at bar 12  A  Willow"), "no-tube", "Add a rack with 1 tube of 100 mm at A", "tube-length-missing"))
                .contains("rack R3 at A { 1 tube 100 mm }");
        String full = Quay.SHOW.replace("6 tubes 75", "7 tubes 75").replace("    cue Hero at bar 12  A  Peony  note \"the one\"\n", "    repeat 5 every 1 bar from bar 15 {\n      at 0  A  Peony\n    }\n");
        assertThat(mended(full, "no-pin", "Add a module M3 of Box at A")).contains("module M3 \"3\" of Box at A");
    }

    @Test
    void aCueThatIsTooMuchAtOnceIsSplitOrShotInTurn() {
        String many = Quay.SHOW.replace("4 pins at once", "1 pins at once").replace("module M2 \"2\" of Box at B", "module M2 \"2\" of Box at B, A")
                .replace("at Swell  A, B  Peony", "at Swell  A, B  Peony  pin M2/1, M2/2");
        assertThat(mended(many, "too-many-at-once", "Shoot the places in turn, 50 ms apart")).contains("at Swell  A, B  Peony  in turn every 50 ms");
    }

    @Test
    void aSplitCueIsTheSameCue() {
        assertThat(split(Quay.with("    at bar 12  A, B  Willow"), "no-tube")).contains("    at bar 12  A  Willow\n    at bar 12  B  Willow\n");
        assertThat(split(Quay.with("    at bar 12  B, A  2 x Willow fan -5 deg .. 5 deg  note \"both\"  // of the finale"), "no-tube"))
                .contains("    at bar 12  B  2 x Willow fan -5 deg .. 5 deg  note \"both\"\n    at bar 12  A  2 x Willow fan -5 deg .. 5 deg  note \"both\"  // of the finale\n");
        // What names a place twice is shot there once; one line for each would shoot it twice.
        editor.open(FILE, Quay.with("    at bar 12  A, Both  Willow"));
        assertThat(editor.fixes(FILE, "no-tube")).isNotEmpty().extracting(CodeAction::getTitle).noneMatch(title -> title.startsWith("Split"));
    }

    @Test
    void aSoundtrackGetsEnoughPreRoll() {
        assertThat(mended(Quay.SHOW.replace("preroll 60 s", "preroll 2 s"), "preroll-short", "Make the pre-roll 10 s")).contains("preroll  10 s");
    }

    @Test
    void aScoreGetsAFreeSlot() {
        assertThat(mended(Quay.SHOW + "soundtrack Other { length 0:30  timecode 25 fps from 11:00:00:00  preroll 60 s }\nscore Other in slot 0 {\n"
                + "  at 0:10  A  Peony\n}\n", "slot-clash", "Put the score in slot 1, which is free")).contains("score Other in slot 1 {");
    }

    @Test
    void whatNothingUsesIsTakenOut() {
        assertThat(mended(Quay.SHOW, "unused-effect", "Take out Willow")).doesNotContain("Willow");
        assertThat(mended(Quay.SHOW + "waive off-mark for Hero because \"x\" by \"y\"\n", "waiver-unused", "Take out the waiver")).doesNotContain("waive");
    }

    @Test
    void aFindingIsWaivedOnlyWithAReasonAndAName() {
        editor.open(FILE, Quay.with("    at 0:16.040  A  Peony"));
        editor.apply(action("off-mark", "Waive this, with a reason and a name"));
        assertThat(editor.text(FILE)).endsWith("waive off-mark for Peony at A because \"\" by \"\" until 2027-06-20\n");
        // Empty texts agree to nothing: the finding stands, and the waiver is an error of its own.
        assertThat(editor.rules(FILE)).contains("off-mark", "missing-field");
        int at = editor.text(FILE).indexOf("because \"\"");
        editor.type(FILE, at, editor.text(FILE).length(), "because \"on purpose\" by \"T. Example\" until 2027-06-20\n");
        assertThat(editor.rules(FILE)).doesNotContain("missing-field");
        assertThat(editor.findings(FILE)).filteredOn(d -> d.getCode().getLeft().equals("off-mark")).singleElement()
                .satisfies(d -> assertThat(d.getMessage().getLeft()).contains("Waived by T. Example: on purpose"));
    }

    @Test
    void aQuantityIsConvertedAtTheCaret() {
        editor.open(FILE, Quay.SHOW);
        Position caret = editor.at(FILE, "105 m");
        List<String> titles = Editor.get(editor.texts().codeAction(new CodeActionParams(editor.id(FILE), new Range(caret, caret),
                new CodeActionContext(List.of())))).stream().map(a -> a.getRight().getTitle()).toList();
        // 105 m is 344.4882 ft: not the same when written with four places, so that is not offered.
        assertThat(titles).contains("Write it as 105000 mm", "Write it as 0.105 km").doesNotContain("Write it as 344.4882 ft");
    }

    @Test
    void theDocsListEveryRuleThatHasAFix() throws IOException {
        Set<String> documented = new TreeSet<>();
        String docs = Files.readString(DOCS);
        Matcher rows = Pattern.compile("(?m)^\\| (`[a-z-]+`(?:, `[a-z-]+`)*) \\| .+ \\|$").matcher(docs.substring(docs.indexOf("## Quick fixes")));
        while (rows.find()) {
            for (String rule : rows.group(1).split(", ")) {
                documented.add(rule.replace("`", ""));
            }
        }
        Set<String> known = new TreeSet<>(new ServedShowSetup(new ShowBoard()).createInjectorAndDoEMFRegistration().getInstance(Fixes.class).rules());
        assertThat(documented).containsAll(known);
        assertThat(known).hasSizeGreaterThan(15);
    }
}
