package org.girandole.lang.ide.features;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import org.eclipse.lsp4j.FoldingRange;
import org.eclipse.lsp4j.FoldingRangeKind;
import org.eclipse.xtext.nodemodel.ILeafNode;

/** Blocks in braces, comments over several lines, and the list of used files. */
public final class Folding {
    private Folding() {
    }

    public static List<FoldingRange> of(ScriptView view) {
        List<FoldingRange> ranges = new ArrayList<>();
        Deque<Integer> open = new ArrayDeque<>();
        int comments = -1;
        int commentEnd = -1;
        for (ILeafNode leaf : view.root().getLeafNodes()) {
            int line = view.lines().position(leaf.getOffset()).getLine();
            String text = leaf.getText();
            if (leaf.isHidden()) {
                if (text.startsWith("//")) {
                    if (comments < 0 || line != commentEnd + 1) {
                        add(ranges, comments, commentEnd, FoldingRangeKind.Comment);
                        comments = line;
                    }
                    commentEnd = line;
                } else if (text.startsWith("/*")) {
                    add(ranges, line, view.lines().position(leaf.getEndOffset()).getLine(), FoldingRangeKind.Comment);
                }
                continue;
            }
            add(ranges, comments, commentEnd, FoldingRangeKind.Comment);
            comments = -1;
            if (text.equals("{")) {
                open.push(line);
            } else if (text.equals("}") && !open.isEmpty()) {
                // The closing brace stays in sight.
                add(ranges, open.pop(), line - 1, FoldingRangeKind.Region);
            }
        }
        add(ranges, comments, commentEnd, FoldingRangeKind.Comment);
        uses(view, ranges);
        return ranges;
    }

    private static void uses(ScriptView view, List<FoldingRange> ranges) {
        view.script().map(script -> script.getUses()).filter(uses -> uses.size() > 1).ifPresent(uses -> {
            int from = view.range(uses.get(0)).map(range -> range.getStart().getLine()).orElse(-1);
            int to = view.range(uses.get(uses.size() - 1)).map(range -> range.getEnd().getLine()).orElse(-1);
            // Only when nothing else stands between them.
            if (to - from == uses.size() - 1) {
                add(ranges, from, to, FoldingRangeKind.Imports);
            }
        });
    }

    private static void add(List<FoldingRange> ranges, int from, int to, String kind) {
        if (from >= 0 && to > from) {
            FoldingRange range = new FoldingRange(from, to);
            range.setKind(kind);
            ranges.add(range);
        }
    }
}
