package org.girandole.studio.tests;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.compare.ITypedElement;
import org.eclipse.compare.structuremergeviewer.DiffNode;
import org.eclipse.compare.structuremergeviewer.Differencer;
import org.eclipse.compare.structuremergeviewer.IDiffElement;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.girandole.studio.project.Moved;
import org.girandole.studio.project.ShowStructure;
import org.junit.jupiter.api.Test;

/** Two versions of a script, compared by sections and cues. */
class StructureTest {
    private static final String OLD = """
            score Song in slot 1 {
              section Opening from Start to Turn {
                cue First at Start     B      RedPeony75
                at Start + 1 bar       A, C   RedPeony75
                repeat 2 every 2 bars from bar 7 {
                  at 0                 A      SilverMine75
                }
              }
            }
            """;

    /** Kind of change and the name of each leaf that differs, as the comparison shows them. */
    private static List<String> differences(String old, String now) {
        ShowStructure structure = new ShowStructure();
        Differencer differencer = new Differencer() {
            @Override
            protected boolean contentsEqual(Object left, Object right) {
                return structure.getContents(left, false).equals(structure.getContents(right, false));
            }
        };
        Object root = differencer.findDifferences(false, new NullProgressMonitor(), null, null, structure.getStructure(new Version("before.show", old)),
                structure.getStructure(new Version("now.show", now)));
        List<String> leaves = new ArrayList<>();
        if (root instanceof DiffNode node) {
            collect(node, leaves);
        }
        return leaves;
    }

    private static void collect(DiffNode node, List<String> leaves) {
        if (!node.hasChildren()) {
            String kind = switch (node.getKind() & Differencer.CHANGE_TYPE_MASK) {
                case Differencer.ADDITION -> "+ ";
                case Differencer.DELETION -> "- ";
                default -> "~ ";
            };
            ITypedElement shown = node.getRight() != null ? node.getRight() : node.getLeft();
            leaves.add(kind + shown.getName());
        }
        for (IDiffElement child : node.getChildren()) {
            collect((DiffNode) child, leaves);
        }
    }

    @Test
    void theSameIsTheSame() {
        assertThat(differences(OLD, OLD)).isEmpty();
    }

    @Test
    void aCueThatMovedIsOneChangedCue() {
        assertThat(differences(OLD, OLD.replace("at Start + 1 bar ", "at Start + 1 bar + 0.2 s ")))
                .containsExactly("~ at Start + 1 bar + 0.2 s   A, C RedPeony75");
    }

    @Test
    void aNamedCueKeepsItsIdentityWhateverChanges() {
        assertThat(differences(OLD, OLD.replace("at Start     B      RedPeony75", "at Start     C      GoldPeony75")))
                .containsExactly("~ First  at Start   C GoldPeony75");
    }

    @Test
    void howFarACueMovedIsSaidWhereTheWordsSayIt() {
        assertThat(Moved.words("Start + 1 bar + 200 ms", "Start + 1 bar")).startsWith("moved 0.2 s ");
        assertThat(Moved.words("1:02.500", "0:59.750")).startsWith("moved 2.75 s ");
        assertThat(Moved.words("Start - 1/2 beat", "Start + 1 beat")).startsWith("moved 1.5 beats ");
        assertThat(Moved.words("End - 2 bars", "End - 1 bar")).startsWith("moved 1 bar ");
        // Between two marks, or in beats and seconds at once, only the plan knows.
        assertThat(Moved.words("Start", "Turn")).isEqualTo("moved   (at Start | at Turn)");
        assertThat(Moved.words("bar 9 beat 2", "bar 9 beat 3")).startsWith("moved   (");
        assertThat(Moved.words("Start + 1 beat", "Start + 0.5 s")).startsWith("moved   (");
    }

    @Test
    void cuesThatCameAndWent() {
        assertThat(differences(OLD, OLD.replace("      at 0                 A      SilverMine75", "      at 0                 B      GoldComet")))
                .containsExactlyInAnyOrder("- at 0   A SilverMine75", "+ at 0   B GoldComet");
    }

    @Test
    void unfinishedTextsAreCompared() {
        assertThat(differences(OLD, OLD.substring(0, OLD.indexOf("repeat") + 4))).contains("- repeat 2");
        assertThat(differences("", "section {{{ at")).hasSize(1);
    }
}
