package org.girandole.studio.project;

import org.eclipse.compare.CompareConfiguration;
import org.eclipse.compare.IViewerCreator;
import org.eclipse.compare.structuremergeviewer.DiffNode;
import org.eclipse.compare.structuremergeviewer.StructureDiffViewer;
import org.eclipse.jface.viewers.ILabelProvider;
import org.eclipse.jface.viewers.LabelProvider;
import org.eclipse.jface.viewers.Viewer;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.widgets.Composite;
import org.girandole.studio.project.ShowStructure.ShowNode;

/** Shows the differences of two versions by sections and cues, and of a cue that has moved by how much. */
public final class ShowDifferences implements IViewerCreator {
    @Override
    public Viewer createViewer(Composite parent, CompareConfiguration configuration) {
        StructureDiffViewer viewer = new StructureDiffViewer(parent, configuration);
        viewer.setStructureCreator(new ShowStructure());
        viewer.setLabelProvider(new Labels((ILabelProvider) viewer.getLabelProvider()));
        return viewer;
    }

    /** The platform's labels and signs, with words of our own for cues that are on both sides. */
    private static final class Labels extends LabelProvider {
        private final ILabelProvider platform;

        Labels(ILabelProvider platform) {
            this.platform = platform;
        }

        @Override
        public String getText(Object element) {
            if (element instanceof DiffNode node && node.getLeft() instanceof ShowNode left && node.getRight() instanceof ShowNode right
                    && !left.at().equals(right.at()) && left.what().equals(right.what())) {
                return left.what() + "   " + Moved.words(left.at(), right.at());
            }
            return platform.getText(element);
        }

        @Override
        public Image getImage(Object element) {
            return platform.getImage(element);
        }

        @Override
        public void dispose() {
            platform.dispose();
            super.dispose();
        }
    }
}
