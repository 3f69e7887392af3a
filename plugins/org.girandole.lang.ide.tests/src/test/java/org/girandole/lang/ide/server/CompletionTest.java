package org.girandole.lang.ide.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.eclipse.lsp4j.CompletionItem;
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
