package org.girandole.lang.compile;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.show.ColumnField;
import org.girandole.lang.show.LabelsField;
import org.girandole.lang.show.Quantity;
import org.girandole.lang.show.RatesField;
import org.girandole.lang.show.ReleaseDef;
import org.girandole.lang.show.RuleLine;
import org.girandole.lang.show.TableDef;
import org.girandole.lang.show.TableRefField;
import org.girandole.lang.show.TextField;
import org.girandole.lang.show.WaiverDef;
import org.girandole.lang.show.WordField;
import org.girandole.lang.show.WordsField;
import org.girandole.plan.script.LabelGrid;
import org.girandole.plan.script.ReleaseSpec;
import org.girandole.plan.script.RuleSetting;
import org.girandole.plan.script.TableLayout;
import org.girandole.plan.script.Waiver;

/** Waivers, severities, tables and the release. */
final class Outputs {
    private static final String STANDARD = "standard";
    private static final List<Integer> WAV_RATES = List.of(44_100, 48_000, 96_000);

    private final Compilation compilation;
    private final Clocks clocks;

    Outputs(Compilation compilation, Clocks clocks) {
        this.compilation = compilation;
        this.clocks = clocks;
    }

    /** Empty when any part of it is wrong: a waiver that is not sure must not excuse anything. */
    Optional<Waiver> waiver(WaiverDef def) {
        boolean subjectWritten = !Sources.text(def, eINSTANCE.getWaiverDef_Subject()).isEmpty();
        boolean positionWritten = !Sources.text(def, eINSTANCE.getWaiverDef_Position()).isEmpty();
        Optional<String> subject = compilation.resolvedName(def, eINSTANCE.getWaiverDef_Subject());
        Optional<String> position = compilation.resolvedName(def, eINSTANCE.getWaiverDef_Position());
        Optional<LocalDate> until = clocks.date(def, eINSTANCE.getWaiverDef_Until(), def.getUntil());
        boolean reasons = said(def, def.getBecause(), "a reason") & said(def, def.getBy(), "the name of who agreed");
        if (!reasons || def.getRule() == null || subjectWritten && subject.isEmpty() || positionWritten && position.isEmpty()
                || def.getUntil() != null && until.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Waiver(def.getRule(), subject, position, def.getBecause(), def.getBy(), until,
                compilation.sources().of(def, eINSTANCE.getWaiverDef_Rule())));
    }

    private boolean said(WaiverDef def, String text, String what) {
        if (text != null && text.isBlank()) {
            compilation.problems().report(LanguageRules.MISSING_FIELD, "A waiver needs " + what + ", and here it is empty")
                    .found("nothing", what).remedy("write why, and who agreed").at(compilation.sources().whole(def));
        }
        return text != null && !text.isBlank();
    }

    Optional<RuleSetting> rule(RuleLine line) {
        if (line.getRule() == null) {
            return Optional.empty();
        }
        return Choices.word(compilation, line, eINSTANCE.getRuleLine_Severity(), 0, line.getSeverity(), List.of("error", "warning", "info"))
                .map(severity -> new RuleSetting(line.getRule(), severity, compilation.sources().of(line, eINSTANCE.getRuleLine_Rule())));
    }

    Optional<TableLayout> table(TableDef def) {
        Block block = new Block(compilation, def, def.getFields(), "a table", compilation.grammar().getTableFieldRule(), Set.of("column"));
        block.missing("file", "file \"controller.csv\"");
        block.missing("column", "column \"cue\" = number");
        Optional<String> file = block.field("file", TextField.class).flatMap(this::fileName);
        Optional<String> separator = block.field("separator", TextField.class).flatMap(this::separator);
        boolean crlf = block.field("line ending", WordField.class)
                .flatMap(field -> Choices.word(compilation, field, List.of("crlf", "lf"))).filter("crlf"::equals).isPresent();
        boolean header = block.field("header", WordField.class)
                .flatMap(field -> Choices.word(compilation, field, List.of("yes", "no"))).filter("no"::equals).isEmpty();
        List<TableLayout.Column> columns = new ArrayList<>();
        for (ColumnField column : block.all("column", ColumnField.class)) {
            if (column.getTitle() != null && column.getField() != null) {
                columns.add(new TableLayout.Column(column.getTitle(), column.getField(), column.getFormat() == null ? "" : column.getFormat(),
                        compilation.sources().of(column, eINSTANCE.getColumnField_Field())));
            }
        }
        if (file.isEmpty() || columns.isEmpty() || def.getName() == null) {
            compilation.drop(def);
            return Optional.empty();
        }
        return Optional.of(new TableLayout(def.getName(), file.get(), separator.orElse(","), crlf, header, columns,
                compilation.sources().of(def)));
    }

    private Optional<String> fileName(TextField field) {
        String name = field.getText();
        if (name != null && (name.isBlank() || name.startsWith(".") || name.matches(".*[/\\\\:*?\"<>|\\p{Cntrl}].*"))) {
            compilation.problems().report(LanguageRules.USE_OUTSIDE, "A table is written into the release folder, under a plain name")
                    .found(Words.shown(name), "a name without folders, such as controller.csv").remedy("write a plain file name")
                    .at(compilation.sources().of(field, eINSTANCE.getTextField_Text()));
            return Optional.empty();
        }
        return Optional.ofNullable(name);
    }

    private Optional<String> separator(TextField field) {
        String text = field.getText();
        if (text != null && (text.length() != 1 || "\"\r\n".contains(text))) {
            compilation.problems().report(LanguageRules.UNKNOWN_WORD, "A separator is one character, and neither a quote nor a line end")
                    .found(Words.shown(text), "one character, such as , or ; or \\t").remedy("write one character")
                    .at(compilation.sources().of(field, eINSTANCE.getTextField_Text()));
            return Optional.empty();
        }
        return Optional.ofNullable(text);
    }

    ReleaseSpec release(ReleaseDef def) {
        Block block = new Block(compilation, def, def.getFields(), "a release", compilation.grammar().getReleaseFieldRule(), Set.of("table"));
        List<String> tables = new ArrayList<>();
        for (TableRefField field : block.all("table", TableRefField.class)) {
            Optional<String> name = field.isStandard() ? Optional.of(STANDARD)
                    : compilation.resolvedName(field, eINSTANCE.getTableRefField_Table());
            name.filter(n -> !tables.contains(n)).ifPresent(tables::add);
        }
        List<Integer> rates = new ArrayList<>();
        for (Quantity rate : block.field("timecode wav", RatesField.class).<List<Quantity>>map(f -> List.copyOf(f.getRates())).orElse(List.of())) {
            compilation.quantities().si(rate, Range.SAMPLE_RATE).ifPresent(hz -> {
                if (hz == Math.rint(hz) && WAV_RATES.contains(hz.intValue())) {
                    rates.add(hz.intValue());
                } else {
                    compilation.problems().report(LanguageRules.NUMBER_RANGE, "Timecode is recorded at 44.1, 48 or 96 kHz")
                            .found(Sources.text(rate), "44.1 kHz, 48 kHz or 96 kHz").remedy("write one of the three")
                            .at(compilation.sources().whole(rate));
                }
            });
        }
        String paper = block.field("paper", WordField.class)
                .flatMap(field -> Choices.word(compilation, field, List.of("A4", "Letter"))).orElse("A4");
        Optional<LabelGrid> labels = block.field("labels", LabelsField.class).flatMap(new LabelPaper(compilation, paper)::grid);
        return new ReleaseSpec(words(block, "sheets", List.of("pdf", "html")), tables, paper, labels, rates,
                words(block, "marks", List.of("midi", "labels", "cues")), compilation.sources().whole(def));
    }

    private List<String> words(Block block, String key, List<String> possible) {
        List<String> words = new ArrayList<>();
        block.field(key, WordsField.class).ifPresent(field -> {
            for (int i = 0; i < field.getWords().size(); i++) {
                Choices.word(compilation, field, eINSTANCE.getWordsField_Words(), i, field.getWords().get(i), possible)
                        .filter(word -> !words.contains(word)).ifPresent(words::add);
            }
        });
        return words;
    }
}
