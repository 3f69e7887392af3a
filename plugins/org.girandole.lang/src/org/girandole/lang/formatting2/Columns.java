package org.girandole.lang.formatting2;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.eclipse.xtext.formatting2.regionaccess.IHiddenRegion;
import org.eclipse.xtext.formatting2.regionaccess.ISemanticRegion;
import org.eclipse.xtext.formatting2.regionaccess.ITextRegionAccess;
import org.girandole.lang.show.AngleField;
import org.girandole.lang.show.AudioField;
import org.girandole.lang.show.ColumnField;
import org.girandole.lang.show.CountField;
import org.girandole.lang.show.CueLine;
import org.girandole.lang.show.Element;
import org.girandole.lang.show.Field;
import org.girandole.lang.show.FigureDef;
import org.girandole.lang.show.GroupDef;
import org.girandole.lang.show.HazardField;
import org.girandole.lang.show.Item;
import org.girandole.lang.show.MarkDef;
import org.girandole.lang.show.NumberField;
import org.girandole.lang.show.PositionDef;
import org.girandole.lang.show.QuantityField;
import org.girandole.lang.show.RefField;
import org.girandole.lang.show.RepeatBlock;
import org.girandole.lang.show.ScoreDef;
import org.girandole.lang.show.Script;
import org.girandole.lang.show.SectionDef;
import org.girandole.lang.show.ShotsField;
import org.girandole.lang.show.SpanField;
import org.girandole.lang.show.TempoField;
import org.girandole.lang.show.TempoLine;
import org.girandole.lang.show.TextField;
import org.girandole.lang.show.TimecodeField;
import org.girandole.lang.show.WordField;
import org.girandole.lang.show.WordsField;

/**
 * Puts what belongs together below each other. What is much longer than the rest does not move the rest: it stands out, and a
 * comparison of versions shows one line.
 */
final class Columns {
    private static final int WIDEST_TIME = 28;
    private static final int WIDEST_PLACES = 16;
    private static final int WIDEST_WORD = 24;
    /** Lines that are a word and its value. */
    private static final List<Class<? extends Field>> VALUES = List.of(QuantityField.class, SpanField.class, TimecodeField.class,
            AudioField.class, WordField.class, WordsField.class, CountField.class, HazardField.class, NumberField.class, RefField.class,
            TextField.class, ShotsField.class, AngleField.class);

    private final ITextRegionAccess access;
    private final Layout layout;

    Columns(ITextRegionAccess access, Layout layout) {
        this.access = access;
        this.layout = layout;
    }

    /** One line of a column: from its first token to the one that is to be put in line. */
    private record Cell(ISemanticRegion first, ISemanticRegion next) {
    }

    void script(Script script) {
        for (Element element : script.getElements()) {
            EStructuralFeature fields = element.eClass().getEStructuralFeature("fields");
            if (fields != null) {
                @SuppressWarnings("unchecked")
                List<Field> lines = (List<Field>) element.eGet(fields);
                fields(lines);
            } else if (element instanceof FigureDef figure) {
                items(figure.getItems());
            } else if (element instanceof ScoreDef score) {
                items(score.getItems());
            }
        }
    }

    private void items(List<Item> items) {
        List<Cell> times = new ArrayList<>();
        List<Cell> places = new ArrayList<>();
        for (Item item : items) {
            ISemanticRegion start = layout.first(item);
            if (start != null && start.getPreviousHiddenRegion().getText().matches("(?s).*\\n\\s*\\n.*")) {
                align(times, WIDEST_TIME, 2);
                align(places, WIDEST_PLACES, 2);
            }
            if (item instanceof CueLine cue && cue.getPlaces() != null) {
                ISemanticRegion place = layout.first(cue.getPlaces());
                ISemanticRegion effect = Layout.effectStart(access, cue);
                add(times, start, place);
                add(places, place, effect);
            } else if (item instanceof SectionDef section) {
                items(section.getItems());
            } else if (item instanceof RepeatBlock repeat) {
                items(repeat.getItems());
            }
        }
        align(times, WIDEST_TIME, 2);
        align(places, WIDEST_PLACES, 2);
    }

    private void fields(List<Field> fields) {
        List<Cell> cells = new ArrayList<>();
        Class<?> kind = null;
        for (int i = 0; i < fields.size(); i++) {
            Field field = fields.get(i);
            if (field instanceof TempoField tempo) {
                tempo(tempo);
            }
            Class<?> column = kindOfColumn(field);
            ISemanticRegion start = layout.first(field);
            ISemanticRegion target = target(field);
            boolean alone = layout.beginsLine(start) && (i + 1 == fields.size() || layout.beginsLine(layout.first(fields.get(i + 1))));
            if (!alone || column == null || target == null || column != kind) {
                align(cells, WIDEST_WORD, 1);
            }
            kind = alone && target != null ? column : null;
            if (kind != null) {
                add(cells, start, target);
            }
        }
        align(cells, WIDEST_WORD, 1);
    }

    private void tempo(TempoField tempo) {
        List<Cell> cells = new ArrayList<>();
        for (TempoLine line : tempo.getEntries()) {
            ISemanticRegion ramp = access.regionForEObject(line).getRegionFor().keyword("ramp");
            add(cells, layout.first(line), ramp != null ? ramp
                    : access.regionForEObject(line).getRegionFor().feature(eINSTANCE.getTempoLine_Bpm()));
        }
        align(cells, WIDEST_TIME, 2);
    }

    /** Lines of one kind make a column; null makes none. Sentences such as "wind from 240 deg at 5 m/s" make none. */
    private static Class<?> kindOfColumn(Field field) {
        if (field instanceof MarkDef || field instanceof PositionDef || field instanceof GroupDef || field instanceof ColumnField) {
            return field.eClass().getInstanceClass();
        }
        return VALUES.stream().anyMatch(type -> type.isInstance(field)) ? Field.class : null;
    }

    private ISemanticRegion target(Field field) {
        if (field instanceof MarkDef || field instanceof PositionDef) {
            return keyword(field, "at");
        }
        if (field instanceof GroupDef || field instanceof ColumnField) {
            return keyword(field, "=");
        }
        ISemanticRegion key = layout.first(field);
        // What is said in two words, such as "sync within", reads as one sentence.
        return key.getText().chars().anyMatch(Character::isWhitespace) ? null : key.getNextSemanticRegion();
    }

    private ISemanticRegion keyword(EObject owner, String word) {
        return access.regionForEObject(owner).getRegionFor().keyword(word);
    }

    private void add(List<Cell> cells, ISemanticRegion first, ISemanticRegion next) {
        if (first != null && next != null) {
            cells.add(new Cell(first, next));
        }
    }

    private void align(List<Cell> cells, int widest, int space) {
        int column = 0;
        for (Cell cell : cells) {
            int width = width(cell);
            column = width <= widest ? Math.max(column, width) : column;
        }
        for (Cell cell : cells) {
            layout.setSpaces(cell.next, Math.max(0, column - width(cell)) + space);
        }
        cells.clear();
    }

    /** How wide the tokens of a cell will be; very wide when a comment stands between them. */
    private int width(Cell cell) {
        int width = 0;
        for (ISemanticRegion token = cell.first; token != cell.next; token = token.getNextSemanticRegion()) {
            IHiddenRegion gap = token.getNextHiddenRegion();
            if (gap.containsComment()) {
                return Integer.MAX_VALUE / 2;
            }
            ISemanticRegion next = token.getNextSemanticRegion();
            width += Tokens.canonical(token).length() + (next == cell.next ? 0 : Tokens.space(token, next));
        }
        return width;
    }
}
