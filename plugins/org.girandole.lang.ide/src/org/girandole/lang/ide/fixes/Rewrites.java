package org.girandole.lang.ide.fixes;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.lsp4j.Position;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.girandole.lang.compile.Dimension;
import org.girandole.lang.ide.features.ScriptView;
import org.girandole.lang.ide.server.CheckedScript;
import org.girandole.lang.show.CueLine;
import org.girandole.lang.show.Quantity;
import org.girandole.plan.Finding;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.script.SourceRef;

/** Says the same in another way: a quantity in another unit, a cue as several. */
final class Rewrites {
    private static final int PLACES = 4;

    List<Fix> at(ScriptView view, CheckedScript checked, Position caret) {
        ILeafNode leaf = NodeModelUtils.findLeafNodeAtOffset(view.resource().getParseResult().getRootNode(), view.lines().offset(caret));
        EObject object = leaf == null ? null : NodeModelUtils.findActualSemanticObjectFor(leaf);
        List<Fix> fixes = new ArrayList<>();
        Case one = here(view, checked, caret);
        if (object instanceof Quantity quantity) {
            fixes.addAll(units(one, quantity));
        }
        for (EObject o = object; o != null; o = o.eContainer()) {
            if (o instanceof CueLine cue) {
                fixes.addAll(CueFixes.split(one, cue));
                break;
            }
        }
        return fixes;
    }

    /** Fixes work on a finding; there is none here, only a place. */
    private static Case here(ScriptView view, CheckedScript checked, Position caret) {
        return new Case(view, checked, new Finding("", Severity.INFO, "", "", "", "", "", new SourceRef("", caret.getLine() + 1,
                caret.getCharacter() + 1, 1), Subject.SHOW, Map.of(), Optional.empty()));
    }

    /** Only where the number comes out exactly, or as one that a person would write; a tolerance in a unit of its own stays. */
    private static List<Fix> units(Case one, Quantity quantity) {
        List<Fix> fixes = new ArrayList<>();
        String unit = quantity.getUnit();
        if (unit == null || quantity.getTolerance() != null || quantity.getNumber() == null) {
            return fixes;
        }
        INode node = NodeModelUtils.findActualNodeFor(quantity);
        for (Dimension dimension : List.of(Dimension.LENGTH, Dimension.MASS, Dimension.SPEED, Dimension.TIME)) {
            if (!dimension.has(unit)) {
                continue;
            }
            for (String other : dimension.symbols()) {
                if (!other.equals(unit)) {
                    BigDecimal number = new BigDecimal(quantity.getNumber());
                    BigDecimal size = dimension.in(number, unit, other).setScale(PLACES, RoundingMode.HALF_UP).stripTrailingZeros();
                    // What would change by being written so is not the same quantity any more.
                    boolean exact = dimension.in(size, other, unit).setScale(PLACES + 2, RoundingMode.HALF_UP)
                            .compareTo(number.setScale(PLACES + 2, RoundingMode.HALF_UP)) == 0;
                    if (exact) {
                        String text = (quantity.isNegative() ? "-" : "") + size.toPlainString() + " " + other;
                        fixes.add(one.fix("Write it as " + text, one.replace(node, text)));
                    }
                }
            }
        }
        return fixes;
    }
}
