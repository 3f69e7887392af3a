package org.girandole.lang.ide.server;

import static java.util.Map.entry;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionItemKind;
import org.eclipse.lsp4j.InsertTextFormat;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is proposed where. The text behind the caret is half written everywhere here, as it is when somebody types. */
class CompletionTest {
    @TempDir
    private Path folder;
    private Editor editor;

    @BeforeEach
    void start() {
        editor = new Editor(folder);
        editor.open("quay.show", Quay.SHOW);
    }

    @AfterEach
    void stop() {
        editor.close();
    }

    /** Proposals after some words in the section. */
    private List<String> afterInScore(String words) {
        return labels(itemsInScore(words));
    }

    private List<CompletionItem> itemsInScore(String words) {
        replace(Quay.SHOW.replace("    play Pair2", "    " + words + "\n    play Pair2"));
        return editor.completions("quay.show", Quay.SHOW.indexOf("    play Pair2") + 4 + words.length());
    }

    /** Proposals after some words at the end of the file. */
    private List<String> afterAtEnd(String words) {
        return labels(itemsAtEnd(words));
    }

    private List<CompletionItem> itemsAtEnd(String words) {
        replace(Quay.SHOW + words);
        return editor.completions("quay.show", Quay.SHOW.length() + words.length());
    }

    private static List<String> labels(List<CompletionItem> items) {
        return items.stream().map(CompletionItem::getLabel).toList();
    }

    private void replace(String text) {
        editor.type("quay.show", 0, editor.text("quay.show").length(), text);
    }

    @Test
    void aCueBeginsWithMarksBarsAndClockTimes() {
        assertThat(afterInScore("at ")).contains("Swell", "Last", "bar", "bar and beat", "minutes and seconds").doesNotContain("Peony", "A", "shell");
    }

    @Test
    void marksTellTheirMoment() {
        // 120 bpm, 4/4: bar 9 begins after 8 bars of 2 s.
        assertThat(itemsInScore("at ")).filteredOn(item -> item.getLabel().equals("Swell")).singleElement()
                .extracting(CompletionItem::getDetail).isEqualTo("mark at 0:16.000");
    }

    @Test
    void behindTheTimeComePlaces() {
        assertThat(afterInScore("at Swell + 1 beat ")).contains("A", "B", "Both", "all");
        assertThat(afterInScore("at bar 9 beat 2 A, ")).contains("B", "Both").doesNotContain("Peony");
    }

    @Test
    void behindANumberComesItsUnit() {
        assertThat(afterInScore("at Swell + 2 ")).startsWith("beats", "beat", "bars");
        assertThat(afterAtEnd("shell New { calibre 75 ")).contains("mm", "in").doesNotContain("kg");
        assertThat(afterAtEnd("shell New { charge 75 ")).contains("g", "kg").doesNotContain("mm");
        assertThat(afterAtEnd("igniter New { all-fire 1 ")).contains("A", "mA");
        assertThat(afterAtEnd("firing system New { clock within 25 ")).contains("ppm");
    }

    @Test
    void effectsThatAFreeTubeFitsComeFirst() {
        // Rack R2 has three tubes: two are used at B. There is no tube of 100 mm anywhere.
        assertThat(afterInScore("at bar 20  B  ")).startsWith("Peony").contains("Willow");
        List<CompletionItem> items = itemsInScore("at bar 20  B  ");
        assertThat(items).filteredOn(item -> item.getLabel().equals("Peony")).singleElement()
                .extracting(CompletionItem::getDetail).asString().endsWith("(room for 1 more here)");
        assertThat(items).filteredOn(item -> item.getLabel().equals("Willow")).singleElement()
                .extracting(CompletionItem::getDetail).asString().endsWith("(no free tube here)");
    }

    @Test
    void aGroupOrRangeHasAsMuchRoomAsItsTightestPlace() {
        for (String places : List.of("Both", "A, B", "A .. B", "all")) {
            assertThat(itemsInScore("at bar 20  " + places + "  ")).as(places).filteredOn(item -> item.getLabel().equals("Peony")).singleElement()
                    .extracting(CompletionItem::getDetail).asString().endsWith("(room for 1 more here)");
        }
        assertThat(afterInScore("at bar 20  A .. ")).contains("A", "B", "Both").doesNotContain("Peony");
    }

    @Test
    void groupsThatGoRoundInACircleAreLookedIntoOnce() {
        replace(Quay.SHOW.replace("  group Both = A, B\n", "  group Both = Round, A\n  group Round = Both\n")
                .replace("    play Pair2", "    at bar 20  Round  \n    play Pair2"));
        assertThat(labels(editor.completions("quay.show", editor.text("quay.show").indexOf("Round  \n    play") + 7))).contains("Peony");
    }

    @Test
    void behindTheEffectComeOptionsAndFreePinsAndTubes() {
        assertThat(afterInScore("at bar 20  A  Peony  ")).contains("fan", "tilt", "in turn", "note", "heard", "pin", "tube", "from lot");
        // Module M1 has six pins, rack R1 six tubes; three cues at A and the one being written take the first four.
        assertThat(afterInScore("at bar 20  A  Peony  pin ")).contains("M1/5").doesNotContain("M1/1");
        assertThat(afterInScore("at bar 20  A  Peony  tube R1/")).contains("5", "6").doesNotContain("1");
        assertThat(afterInScore("at bar 20  A  Peony  from lot ")).containsExactly("L1");
    }

    @Test
    void figuresComeWithGapsForTheirValues() {
        assertThat(itemsInScore("play ").stream().filter(item -> item.getLabel().equals("Pair2")).toList())
                .singleElement().satisfies(item -> {
                    assertThat(item.getTextEdit().getLeft().getNewText()).isEqualTo("Pair2(${1:shot}, ${2:step}) at ${3:bar 1}");
                    assertThat(item.getInsertTextFormat()).isEqualTo(InsertTextFormat.Snippet);
                });
        assertThat(afterInScore("play Pair2(Peony, 1 ")).contains("beat", "s");
    }

    @Test
    void insideAFigureTimesCountFromItsStartAndItsValuesAreNames() {
        assertThat(afterAtEnd("figure New(shot, step) {\n  at ")).contains("0", "shot", "step").doesNotContain("Swell", "bar");
    }

    @Test
    void aLeanSaysWhereTo() {
        assertThat(afterInScore("at bar 20  A  Peony  tilt 15 ")).contains("deg");
        assertThat(afterInScore("at bar 20  A  Peony  tilt 15 deg toward ")).containsExactly("audience");
        assertThat(afterInScore("at bar 20  A  Peony  tilt 15 deg away ")).containsExactly("from audience");
        assertThat(afterInScore("at bar 20  A  Peony  in turn ")).containsExactly("every");
        assertThat(afterInScore("at bar 20  A  Peony  in turn every 1/2 ")).contains("beat", "ms");
        assertThat(afterInScore("at bar 20  A  Peony  pin M1/")).contains("5", "6").doesNotContain("1");
    }

    @Test
    void stretchesOfAScoreGoFromOneMomentToAnother() {
        assertThat(afterInScore("hold ")).containsExactly("from");
        assertThat(afterInScore("hold from ")).contains("Swell", "bar").doesNotContain("A", "Peony");
        assertThat(afterInScore("hold from Swell ")).contains("to");
        assertThat(afterInScore("hold from Swell to ")).contains("Last");
        assertThat(afterInScore("repeat 4 ")).containsExactly("every");
        assertThat(afterInScore("repeat 4 every 1 ")).contains("bar", "beats", "s");
        assertThat(afterInScore("repeat 4 every 1 bar from ")).contains("Swell", "bar");
        assertThat(afterInScore("repeat 4 every 1 bar {\n      at ")).contains("0").doesNotContain("Swell");
        assertThat(afterInScore("play Pair2(Peony, 1 beat) ")).containsExactly("at");
        assertThat(afterInScore("play Pair2(Peony, 1 beat) at ")).contains("Swell", "bar").doesNotContain("A");
        assertThat(afterInScore("play Pair2(")).contains("Peony", "A", "Swell");
        assertThat(afterInScore("cue Grand ")).containsExactly("at");
        assertThat(afterInScore("cue Grand at ")).contains("Swell");
    }

    @Test
    void musicAndRehearsalsKnowTheirMoments() {
        assertThat(afterAtEnd("soundtrack New {\n  mark End at ")).contains("bar", "minutes and seconds");
        assertThat(afterAtEnd("soundtrack New {\n  tempo { at 0:00 120 ")).contains("bpm", "4/4");
        assertThat(afterAtEnd("soundtrack New {\n  marks ")).containsExactly("from");
        assertThat(afterAtEnd("rehearse \"Lost code\" ")).contains("of");
        assertThat(afterAtEnd("rehearse \"Lost code\" of ")).containsExactly("Tides");
        assertThat(afterAtEnd("rehearse \"Lost code\" {\n  timecode lost from ")).contains("Swell", "Last");
        assertThat(afterAtEnd("rehearse \"Lost code\" {\n  expect suppressed ")).contains("Hero");
    }

    @Test
    void rulesAreTakenMoreOrLessSeriously() {
        assertThat(afterAtEnd("rule ")).contains("off-mark", "unused-effect");
        assertThat(afterAtEnd("rule off-mark ")).containsExactly("is");
        assertThat(afterAtEnd("rule off-mark is ")).containsExactly("error", "warning", "info");
    }

    @Test
    void waiversKnowTheRulesThatFindSomething() {
        // Nothing is found of most rules; what is found just now comes first.
        List<String> rules = afterAtEnd("waive ");
        assertThat(rules).contains("separation", "off-mark", "no-tube").doesNotContain("syntax");
        assertThat(itemsAtEnd("waive ").get(0).getDetail()).startsWith("found: ");
        assertThat(afterAtEnd("waive separation for ")).contains("Peony", "Hero", "M1");
        assertThat(afterAtEnd("waive separation for Peony at ")).containsExactly("A", "B");
        assertThat(afterAtEnd("waive separation for Peony because \"x\" by \"y\" until ")).containsExactly("2027-06-20");
    }

    @Test
    void tablesKnowTheirColumnsAndFormats() {
        assertThat(afterAtEnd("table New { file \"a.csv\"\n  column \"when\" = ")).contains("fire", "module", "effect label");
        assertThat(afterAtEnd("table New { file \"a.csv\"\n  column \"when\" = fire as ")).contains("timecode").doesNotContain("grams");
    }

    @Test
    void blocksKnowTheirWords() {
        assertThat(afterAtEnd("shell New { ")).contains("calibre", "rise", "apex", "tube length", "hazard").doesNotContain("spaced");
        assertThat(afterAtEnd("release { sheets ")).containsExactly("pdf", "html");
        assertThat(afterAtEnd("show Other { site ")).containsExactly("Pier");
        assertThat(afterAtEnd("module M9 of ")).containsExactly("Box");
        assertThat(afterAtEnd("module M9 of Box at ")).contains("A", "B", "Both");
        assertThat(afterAtEnd("lot L9 of ")).contains("Peony");
        assertThat(afterAtEnd("chain New of 4 ")).contains("Peony", "Willow");
        assertThat(afterAtEnd("shell New ")).contains("like");
        assertThat(afterAtEnd("shell New like ")).contains("Peony", "Willow");
        assertThat(afterAtEnd("rack R9 at ")).containsExactly("A", "B");
        assertThat(afterAtEnd("rack R9 at A { ")).contains("spaced", "tilt").doesNotContain("calibre");
        assertThat(afterAtEnd("score ")).containsExactly("Tides");
        assertThat(afterAtEnd("score Tides ")).contains("in slot");
        assertThat(afterAtEnd("firing ")).contains("system");
        assertThat(afterAtEnd("show Other { firing system ")).containsExactly("Desk");
        assertThat(afterAtEnd("show Other { separation by ")).contains("UsTable");
        assertThat(afterAtEnd("shell New { igniter ")).containsExactly("Standard");
        assertThat(afterAtEnd("firing system New { lead ")).containsExactly("Pair");
        assertThat(afterAtEnd("module type New { lead ")).contains("Pair", "at most");
        assertThat(afterAtEnd("site Other { group Wings = ")).contains("A", "B", "all");
        assertThat(afterAtEnd("site Other { group Wings = A, ")).contains("B").doesNotContain("audience");
        assertThat(afterAtEnd("table New { line ending ")).containsExactly("crlf", "lf");
        assertThat(afterAtEnd("table New { header ")).containsExactly("yes", "no");
        assertThat(afterAtEnd("release { table ")).contains("standard");
        assertThat(afterAtEnd("release { paper ")).containsExactly("A4", "Letter");
        assertThat(afterAtEnd("release { marks ")).containsExactly("midi", "labels", "cues");
    }

    @Test
    void everyNumberKnowsItsUnits() {
        Map.ofEntries(entry("shell New { rise 2.4 ", "s"), entry("shell New { apex 105 ", "m"), entry("shell New { lasts 2 ", "s"),
                entry("shell New { mass 1 ", "kg"), entry("shell New { tube length 500 ", "mm"), entry("candle New { shots 8 every 2 ", "s"),
                entry("cake New { shots 25 over 20 ", "s"), entry("chain New of 3 Peony { gap 250 ", "ms"), entry("chain New of 3 Peony { lead 100 ", "ms"),
                entry("igniter New { resistance 1.6 ", "ohm"), entry("igniter New { no-fire 200 ", "mA"), entry("wire New { gauge 20 ", "awg"),
                entry("module type New { drive 24 ", "V"), entry("module type New { source 1 ", "ohm"), entry("module type New { test 10 ", "mA"),
                entry("rack New at A { 5 tubes 75 ", "mm"), entry("rack New at A { 5 tubes 75 mm long 500 ", "mm"), entry("rack New at A { spaced 140 ", "mm"),
                entry("rack New at A { tilt -15 ", "deg"), entry("firing system New { step 10 ", "ms"), entry("firing system New { latency 5 ", "ms"),
                entry("firing system New { lead Pair slack 2 ", "m"), entry("soundtrack New { length 60 ", "s"), entry("soundtrack New { preroll 60 ", "s"),
                entry("soundtrack New { timecode 25 ", "fps"), entry("site New { position A at (3 ", "m"), entry("site New { wind from 240 ", "deg"),
                entry("site New { wind from 240 deg at 5 ", "m/s"), entry("site New { wind from 240 deg at 5 m/s gusting 8 ", "m/s"),
                entry("site New { air 18 ", "degC"), entry("show New { sync within 100 ", "ms"), entry("release { timecode wav 48 ", "kHz"),
                entry("distances New { keep ground 30 ", "m")).forEach((words, unit) -> assertThat(afterAtEnd(words)).as(words).contains(unit));
    }

    /** A snippet as somebody writes it who takes all its gaps as they are. */
    private static String filled(CompletionItem snippet) {
        return snippet.getTextEdit().getLeft().getNewText().replaceAll("\\$\\{\\d+:([^}]*)}", "$1").replaceAll("\\$\\d+", "");
    }

    private static List<CompletionItem> snippets(List<CompletionItem> items) {
        return items.stream().filter(item -> item.getKind() == CompletionItemKind.Snippet).toList();
    }

    @Test
    void everySnippetIsWellFormed() {
        for (CompletionItem snippet : snippets(itemsAtEnd("\n"))) {
            replace(Quay.SHOW + "\n" + filled(snippet) + "\n");
            assertThat(editor.rules("quay.show")).as(filled(snippet)).doesNotContain("syntax", "unknown-word", "missing-unit", "wrong-unit");
        }
        for (String line : List.of("    play Pair2", "  section Opening", "  at 0  A  shot")) {
            for (CompletionItem snippet : snippets(before(line, ""))) {
                replace(Quay.SHOW.replace(line, "  " + filled(snippet) + "\n" + line));
                assertThat(editor.rules("quay.show")).as(filled(snippet)).doesNotContain("syntax", "unknown-word", "missing-unit", "wrong-unit");
            }
        }
    }

    /** Proposals on a new line before another. */
    private List<CompletionItem> before(String line, String words) {
        replace(Quay.SHOW.replace(line, "  " + words + "\n" + line));
        return editor.completions("quay.show", Quay.SHOW.indexOf(line) + 2 + words.length());
    }

    @Test
    void linesAreProposedWhereTheyMayStand() {
        assertThat(labels(before("  section Opening", ""))).contains("at a time", "cue with a name", "repeat block", "play a figure", "hold line", "section block", "section");
        assertThat(labels(before("    play Pair2", ""))).contains("at a time", "hold line", "hold").doesNotContain("section block", "section");
        assertThat(labels(before("  at 0  A  shot", ""))).contains("at a time", "play").doesNotContain("hold line", "section block", "section", "hold");
    }

    @Test
    void everythingThatCanStandAtTheTopHasASnippet() {
        List<CompletionItem> items = itemsAtEnd("\n");
        List<String> begun = snippets(items).stream().map(item -> filled(item).split(" ")[0]).toList();
        assertThat(begun).containsAll(items.stream().filter(item -> item.getKind() == CompletionItemKind.Keyword).map(CompletionItem::getLabel).toList());
    }

    @Test
    void everyConstructHasABeginning() {
        assertThat(afterAtEnd("\n")).contains("show block", "soundtrack block", "shell block", "cake block", "lot block", "chain block", "site block",
                "igniter block", "wire block", "module type block", "module line", "rack block", "firing system block", "figure block", "score block",
                "distances block", "table block", "waiver", "rule line", "release block", "rehearse block", "use a file");
    }

    @Test
    void usesAreTheOtherScriptsOfTheProject() {
        editor.open("catalogue/house.show", "comet Star { }\n");
        assertThat(afterAtEnd("use ")).contains("\"catalogue/house.show\"");
    }

    @Test
    void nothingIsProposedInTextsAndComments() {
        assertThat(afterInScore("at Swell A Peony note \"at ")).isEmpty();
        assertThat(afterAtEnd("// at ")).isEmpty();
        assertThat(afterAtEnd("/* at ")).isEmpty();
    }

    @Test
    void aWordBegunIsReplacedByTheProposal() {
        CompletionItem item = itemsInScore("at Sw").get(0);
        assertThat(item.getLabel()).isEqualTo("Swell");
        String done = Editor.applied(editor.text("quay.show"), List.of(item.getTextEdit().getLeft()));
        assertThat(done).contains("\n    at Swell").doesNotContain("SwSwell");
    }
}
