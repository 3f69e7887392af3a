package org.girandole.lang.formatting2;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.eclipse.xtext.formatting2.regionaccess.IComment;
import org.eclipse.xtext.formatting2.regionaccess.IEObjectRegion;
import org.eclipse.xtext.formatting2.regionaccess.IHiddenRegion;
import org.eclipse.xtext.formatting2.regionaccess.IHiddenRegionPart;
import org.eclipse.xtext.formatting2.regionaccess.ISemanticRegion;
import org.eclipse.xtext.formatting2.regionaccess.ITextRegionAccess;
import org.girandole.lang.show.AreaField;
import org.girandole.lang.show.CueLine;
import org.girandole.lang.show.CueOption;
import org.girandole.lang.show.Element;
import org.girandole.lang.show.Field;
import org.girandole.lang.show.FigureDef;
import org.girandole.lang.show.Item;
import org.girandole.lang.show.Point;
import org.girandole.lang.show.RepeatBlock;
import org.girandole.lang.show.ScoreDef;
import org.girandole.lang.show.Script;
import org.girandole.lang.show.SectionDef;
import org.girandole.lang.show.StrayItem;
import org.girandole.lang.show.StrayWaiver;
import org.girandole.lang.show.TempoField;
import org.girandole.lang.show.TempoLine;
import org.girandole.lang.show.UseLine;
import org.girandole.lang.show.WaiverDef;

/** Which tokens begin what, and how far in that stands. */
final class Layout {
    static final int INDENT = 2;

    /** What a token begins. */
    enum Kind {
        /** A part of the script: always on a line of its own. */
        ELEMENT,
        /** A line of a block that must be on a line of its own, unless the whole block is on one line. */
        LINE,
        /** Something said in a block: on a line of its own when the author put it there. */
        FIELD,
        /** More of a line, which the author may have put on the next. */
        MORE,
        /** The end of a block. */
        CLOSE
    }

    /**
     * The beginning of something.
     *
     * @param indent spaces before it when it begins a line
     * @param open whether the block that it is in takes several lines
     * @param first whether it comes right after the opening brace
     */
    record Start(Kind kind, int indent, boolean open, boolean first) {
    }

    private final ITextRegionAccess access;
    private final String text;
    private final Map<ISemanticRegion, Start> starts = new HashMap<>();
    private final Map<ISemanticRegion, Integer> spaces = new HashMap<>();

    Layout(ITextRegionAccess access) {
        this.access = access;
        this.text = access.regionForDocument().getText();
    }

    /** What a token begins, or null. */
    Start start(ISemanticRegion token) {
        return starts.get(token);
    }

    /** Spaces before a token within its line. */
    int spaces(ISemanticRegion before, ISemanticRegion token) {
        return spaces.getOrDefault(token, Tokens.space(before, token));
    }

    /** Puts a token into a column. */
    void setSpaces(ISemanticRegion token, int count) {
        spaces.put(token, count);
    }

    ISemanticRegion first(EObject object) {
        IEObjectRegion region = access.regionForEObject(object);
        return region == null ? null : region.getPreviousHiddenRegion().getNextSemanticRegion();
    }

    void script(Script script) {
        for (UseLine use : script.getUses()) {
            begin(use, new Start(Kind.ELEMENT, 0, true, false));
        }
        for (Element element : script.getElements()) {
            begin(element, new Start(Kind.ELEMENT, 0, true, false));
            EStructuralFeature fields = element.eClass().getEStructuralFeature("fields");
            if (fields != null) {
                @SuppressWarnings("unchecked")
                List<Field> lines = (List<Field>) element.eGet(fields);
                fields(element, lines);
            } else if (element instanceof FigureDef figure) {
                items(figure, figure.getItems(), 0);
            } else if (element instanceof ScoreDef score) {
                items(score, score.getItems(), 0);
            } else if (element instanceof WaiverDef waiver) {
                waiver(waiver, 0);
            }
        }
    }

    private void begin(EObject object, Start start) {
        ISemanticRegion token = first(object);
        if (token != null) {
            // The innermost that begins here counts least: a block's first line is a line before it is anything else.
            starts.putIfAbsent(token, start);
        }
    }

    private void fields(EObject owner, List<Field> fields) {
        boolean open = braces(owner, 0);
        boolean first = true;
        for (Field field : fields) {
            begin(field, new Start(Kind.FIELD, INDENT, open, first));
            first = false;
            if (field instanceof TempoField tempo) {
                boolean tempoOpen = braces(tempo, INDENT);
                boolean firstLine = true;
                for (TempoLine line : tempo.getEntries()) {
                    begin(line, new Start(Kind.LINE, 2 * INDENT, tempoOpen, firstLine));
                    firstLine = false;
                }
            } else if (field instanceof AreaField area) {
                for (Point point : area.getPoints()) {
                    more(first(point), INDENT);
                }
            }
        }
    }

    private void items(EObject owner, List<Item> items, int indent) {
        boolean open = braces(owner, indent);
        boolean first = true;
        for (Item item : items) {
            begin(item, new Start(Kind.LINE, indent + INDENT, open, first));
            first = false;
            if (item instanceof CueLine cue) {
                for (CueOption option : cue.getOptions()) {
                    more(first(option), indent + INDENT);
                    setSpaces(first(option), 2);
                }
            } else if (item instanceof SectionDef section) {
                items(section, section.getItems(), indent + INDENT);
            } else if (item instanceof RepeatBlock repeat) {
                items(repeat, repeat.getItems(), indent + INDENT);
            } else if (item instanceof StrayItem stray) {
                items(stray, stray.getItems(), indent + INDENT);
            } else if (item instanceof StrayWaiver stray && stray.getWaiver() != null) {
                waiver(stray.getWaiver(), indent + INDENT);
            }
        }
    }

    private void waiver(WaiverDef waiver, int indent) {
        for (String word : List.of("for", "at", "because", "by", "until")) {
            ISemanticRegion token = access.regionForEObject(waiver).getRegionFor().keyword(word);
            if (token != null) {
                more(token, indent);
            }
        }
    }

    private void more(ISemanticRegion token, int indent) {
        starts.putIfAbsent(token, new Start(Kind.MORE, indent + 2 * INDENT, true, false));
    }

    /** Notes the end of a block. @return whether the block takes several lines */
    private boolean braces(EObject owner, int indent) {
        IEObjectRegion region = access.regionForEObject(owner);
        ISemanticRegion opening = region.getRegionFor().keyword("{");
        ISemanticRegion closing = region.getRegionFor().keyword("}");
        if (opening == null || closing == null) {
            return true;
        }
        int lineEnd = text.indexOf('\n', opening.getOffset());
        boolean open = lineEnd >= 0 && lineEnd < closing.getOffset();
        starts.put(closing, new Start(Kind.CLOSE, indent, open, closing.getPreviousSemanticRegion() == opening));
        return open;
    }

    /** Whether a token will begin a line. */
    boolean beginsLine(ISemanticRegion token) {
        IHiddenRegion gap = token.getPreviousHiddenRegion();
        Start start = starts.get(token);
        if (gap.containsComment()) {
            return breaks(gap);
        }
        if (gap.getPreviousSemanticRegion() == null || start == null) {
            return false;
        }
        return switch (start.kind()) {
            case ELEMENT -> true;
            case LINE, CLOSE -> start.open();
            case FIELD -> start.open() && (start.first() || breaks(gap));
            case MORE -> breaks(gap);
        };
    }

    /** Whether the author ended a line in a gap, after the comments that are in it. */
    private static boolean breaks(IHiddenRegion gap) {
        boolean breaks = false;
        for (IHiddenRegionPart part : gap.getParts()) {
            breaks = part instanceof IComment comment ? comment.getText().startsWith("//")
                    : breaks || part.getText().indexOf('\n') >= 0;
        }
        return breaks;
    }

    /** Feature of cues that columns are made of. */
    static ISemanticRegion effectStart(ITextRegionAccess access, CueLine cue) {
        IEObjectRegion region = access.regionForEObject(cue);
        ISemanticRegion count = region.getRegionFor().feature(eINSTANCE.getCueLine_Count());
        return count != null ? count : region.getRegionFor().feature(eINSTANCE.getCueLine_Effect());
    }
}
