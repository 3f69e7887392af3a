package org.girandole.lang.ide.server;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.lsp4j.CodeLensParams;
import org.eclipse.lsp4j.DefinitionParams;
import org.eclipse.lsp4j.DocumentFormattingParams;
import org.eclipse.lsp4j.DocumentHighlightParams;
import org.eclipse.lsp4j.DocumentLink;
import org.eclipse.lsp4j.DocumentLinkParams;
import org.eclipse.lsp4j.DocumentRangeFormattingParams;
import org.eclipse.lsp4j.DocumentSymbol;
import org.eclipse.lsp4j.DocumentSymbolParams;
import org.eclipse.lsp4j.FoldingRange;
import org.eclipse.lsp4j.FoldingRangeRequestParams;
import org.eclipse.lsp4j.FormattingOptions;
import org.eclipse.lsp4j.Hover;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.InlayHint;
import org.eclipse.lsp4j.InlayHintParams;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.ReferenceContext;
import org.eclipse.lsp4j.ReferenceParams;
import org.eclipse.lsp4j.RenameParams;
import org.eclipse.lsp4j.SemanticTokensParams;
import org.eclipse.lsp4j.SignatureHelp;
import org.eclipse.lsp4j.SignatureHelpParams;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.WorkspaceSymbol;
import org.eclipse.lsp4j.WorkspaceSymbolParams;
import org.girandole.lang.ide.features.Tokens;
import org.girandole.lang.check.CheckedShow;
import org.girandole.lang.check.ShowPipeline;
import org.girandole.plan.explain.Explanations;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What an editor can ask of a script, beyond completion and fixes. */
class FeaturesTest {
    private static final String FILE = "quay.show";

    @TempDir
    private Path folder;
    private Editor editor;

    @BeforeEach
    void start() {
        editor = new Editor(folder);
        editor.open(FILE, Quay.SHOW);
    }

    @AfterEach
    void stop() {
        editor.close();
    }

    private String hover(String word) {
        Hover hover = Editor.get(editor.texts().hover(new HoverParams(editor.id(FILE), editor.at(FILE, word))));
        return hover == null ? "" : hover.getContents().getRight().getValue();
    }

    @Test
    void theHoverOfACueIsWhatExplainPrints() {
        CheckedShow show = new ShowPipeline().check(folder.resolve(FILE), folder);
        String explained = new Explanations(show.plan().orElseThrow().plan())
                .of(Explanations.find(show.plan().get().plan(), "Hero").get(0)).text();
        assertThat(hover("Hero at bar 12")).contains(explained);
        assertThat(hover("bar 12")).contains(explained);
    }

    @Test
    void theHoverOfANameIsItsDefinition() {
        assertThat(hover("Peony\n    cue")).contains("**effect Peony**", "calibre 75 mm");
        assertThat(hover("Swell to")).contains("**mark Swell**", "at 0:16.000 of Tides");
    }

    @Test
    void theHoverOfARuleIsItsPage() {
        editor.type(FILE, Quay.SHOW.length(), Quay.SHOW.length(), "waive off-mark for Hero because \"x\" by \"y\"\n");
        assertThat(hover("off-mark for")).startsWith("# off-mark").contains("How to mend it");
    }

    @Test
    void theOutlineShowsScoresSectionsAndCues() {
        List<String> lines = new ArrayList<>();
        Editor.get(editor.texts().documentSymbol(new DocumentSymbolParams(editor.id(FILE)))).forEach(s -> outline(s.getRight(), "", lines));
        assertThat(lines).contains("Quay: show", "Pier: site", "  A: position", "Peony: effect", "  Swell: mark",
                "score Tides: ", "  Opening: from Swell to Last", "    at Swell: A, B  Peony", "    Hero: bar 12  A  Peony", "    play Pair2: ");
    }

    private static void outline(DocumentSymbol symbol, String indent, List<String> lines) {
        lines.add(indent + symbol.getName() + ": " + symbol.getDetail());
        symbol.getChildren().forEach(child -> outline(child, indent + "  ", lines));
    }

    @Test
    void namesAreFoundOverTheWholeWorkspace() {
        editor.open("catalogue/house.show", "comet RedStar { }\n");
        assertThat(Editor.get(editor.server().getWorkspaceService().symbol(new WorkspaceSymbolParams("star"))).getRight())
                .extracting(WorkspaceSymbol::getName).containsExactly("RedStar");
    }

    @Test
    void blocksFold() {
        List<FoldingRange> folds = Editor.get(editor.texts().foldingRange(new FoldingRangeRequestParams(editor.id(FILE))));
        int section = editor.at(FILE, "section Opening").getLine();
        assertThat(folds).anySatisfy(fold -> {
            assertThat(fold.getStartLine()).isEqualTo(section);
            assertThat(fold.getEndLine()).isEqualTo(section + 3);
        });
    }

    @Test
    void anEffectOfAnotherFileIsRenamedEverywhereInOneEdit() {
        String used = "comet Star { calibre 45 mm }\n";
        editor.open("house.show", used);
        editor.type(FILE, 0, 0, "use \"house.show\"\n");
        int end = editor.text(FILE).indexOf("    play");
        editor.type(FILE, end, end, "    at bar 20  A  Star\n    at bar 21  B  Star\n");
        WorkspaceEdit edit = Editor.get(editor.texts().rename(new RenameParams(editor.id(FILE), editor.at(FILE, "Star\n"), "GoldStar")));
        assertThat(edit.getChanges()).containsOnlyKeys(editor.uri(FILE), editor.uri("house.show"));
        assertThat(Editor.applied(used, edit.getChanges().get(editor.uri("house.show")))).isEqualTo("comet GoldStar { calibre 45 mm }\n");
        assertThat(Editor.applied(editor.text(FILE), edit.getChanges().get(editor.uri(FILE)))).contains("A  GoldStar\n", "B  GoldStar\n");
    }

    @Test
    void aNameThatIsTakenOrNoneIsRefused() {
        assertThatThrownBy(() -> rename("Willow")).hasMessageContaining("'Willow' is already an effect");
        assertThatThrownBy(() -> rename("two words")).hasMessageContaining("cannot be a name");
        assertThat(rename("shell").getChanges().get(editor.uri(FILE))).allSatisfy(edit -> assertThat(edit.getNewText()).isEqualTo("^shell"));
    }

    private WorkspaceEdit rename(String name) {
        return Editor.get(editor.texts().rename(new RenameParams(editor.id(FILE), editor.at(FILE, "Peony \"Red"), name)));
    }

    @Test
    void definitionsReferencesAndHighlights() {
        Position swell = editor.at(FILE, "Swell to");
        assertThat(Editor.get(editor.texts().definition(new DefinitionParams(editor.id(FILE), swell))).getLeft()).singleElement()
                .extracting(Location::getRange).isEqualTo(range("Swell at bar 9", 5));
        assertThat(Editor.get(editor.texts().references(new ReferenceParams(editor.id(FILE), swell, new ReferenceContext(true))))).hasSize(3);
        assertThat(Editor.get(editor.texts().references(new ReferenceParams(editor.id(FILE), swell, new ReferenceContext(false))))).hasSize(2);
        assertThat(Editor.get(editor.texts().documentHighlight(new DocumentHighlightParams(editor.id(FILE), swell)))).hasSize(3);
    }

    private Range range(String word, int length) {
        Position start = editor.at(FILE, word);
        return new Range(start, new Position(start.getLine(), start.getCharacter() + length));
    }

    @Test
    void formattingIsThatOfTheCommandLineAndComesToRest() {
        List<? extends TextEdit> edits = Editor.get(editor.texts().formatting(new DocumentFormattingParams(editor.id(FILE), new FormattingOptions(2, true))));
        String once = Editor.applied(Quay.SHOW, edits);
        assertThat(once).isEqualTo(new org.girandole.lang.ScriptFormat().format(Quay.SHOW).orElseThrow()).isNotEqualTo(Quay.SHOW);
        editor.type(FILE, 0, Quay.SHOW.length(), once);
        assertThat(Editor.get(editor.texts().formatting(new DocumentFormattingParams(editor.id(FILE), new FormattingOptions(2, true))))).isEmpty();
    }

    @Test
    void formattingOfSomeLinesLeavesTheOthers() {
        String untidy = Quay.SHOW.replace("at Swell  A, B  Peony", "at   Swell A,B Peony").replace("site Pier {", "site   Pier {");
        editor.type(FILE, 0, Quay.SHOW.length(), untidy);
        int line = editor.at(FILE, "at   Swell").getLine();
        List<? extends TextEdit> edits = Editor.get(editor.texts().rangeFormatting(new DocumentRangeFormattingParams(editor.id(FILE),
                new FormattingOptions(2, true), new Range(new Position(line, 0), new Position(line, 40)))));
        assertThat(Editor.applied(untidy, edits)).contains("A, B  ").contains("site   Pier {").doesNotContain("at   Swell A,B");
    }

    @Test
    void wordsHaveTheColourOfWhatTheyAre() {
        List<Integer> data = Editor.get(editor.texts().semanticTokensFull(new SemanticTokensParams(editor.id(FILE)))).getData();
        List<String> tokens = new ArrayList<>();
        TextLines lines = new TextLines(Quay.SHOW);
        int line = 0;
        int column = 0;
        for (int i = 0; i < data.size(); i += 5) {
            line += data.get(i);
            column = data.get(i) == 0 ? column + data.get(i + 1) : data.get(i + 1);
            tokens.add(lines.line(line).substring(column, column + data.get(i + 2)) + ":" + Tokens.legend().getTokenTypes().get(data.get(i + 3)));
        }
        assertThat(tokens).contains("show:keyword", "Quay:namespace", "\"Quay night\":string", "Swell:event", "A:enumMember", "Peony:class", "beat:number",
                "Pair2:function", "shot:parameter", "2:number");
    }

    @Test
    void eachCueTellsWhenItFires() {
        List<InlayHint> hints = Editor.get(editor.texts().inlayHint(new InlayHintParams(editor.id(FILE), new Range(new Position(0, 0), new Position(999, 0)))));
        // Bar 12 at 120 bpm in 4/4 is 22 s; less 2.3 s rise and 5 ms latency, rounded half up to 10 ms; timecode 60 s later, 25 fps: 0.70 s is frame 17.
        assertThat(hints).filteredOn(hint -> hint.getPosition().getLine() == editor.at(FILE, "cue Hero").getLine()).singleElement()
                .extracting(hint -> hint.getLabel().getLeft()).isEqualTo("fires 0:19.700  10:01:19:17");
    }

    @Test
    void eachSectionTellsItsCountDurationAndCharge() {
        // Five shells of 62 g; from bar 9 to bar 25 at 120 bpm in 4/4 are 32 s.
        assertThat(Editor.get(editor.texts().codeLens(new CodeLensParams(editor.id(FILE)))).stream().map(lens -> lens.getCommand().getTitle()))
                .containsExactly("5 igniters, 32.000 s, 0.310 kg");
    }

    @Test
    void aFigureTellsWhatItWants() {
        Position caret = editor.at(FILE, ", 1 beat)");
        caret.setCharacter(caret.getCharacter() + 1);
        SignatureHelp help = Editor.get(editor.texts().signatureHelp(new SignatureHelpParams(editor.id(FILE), caret)));
        assertThat(help.getSignatures()).singleElement().extracting(s -> s.getLabel()).isEqualTo("Pair2(shot, step)");
        assertThat(help.getActiveParameter()).isEqualTo(1);
    }

    @Test
    void usedFilesAreLinks() {
        editor.open("house.show", "comet Star { }\n");
        editor.type(FILE, 0, 0, "use \"house.show\"\n");
        assertThat(Editor.get(editor.texts().documentLink(new DocumentLinkParams(editor.id(FILE))))).singleElement()
                .extracting(DocumentLink::getTarget).isEqualTo(editor.uri("house.show"));
    }
}
