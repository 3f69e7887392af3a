package org.girandole.studio.editor;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.eclipse.core.runtime.IAdapterFactory;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.util.IPropertyChangeListener;
import org.eclipse.jface.viewers.DelegatingStyledCellLabelProvider;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.jface.viewers.ITreeContentProvider;
import org.eclipse.jface.viewers.LabelProvider;
import org.eclipse.jface.viewers.SelectionChangedEvent;
import org.eclipse.jface.viewers.StyledString;
import org.eclipse.jface.viewers.TreeViewer;
import org.eclipse.lsp4j.DocumentSymbol;
import org.eclipse.lsp4j.DocumentSymbolParams;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.texteditor.ITextEditor;
import org.eclipse.ui.views.contentoutline.ContentOutlinePage;
import org.eclipse.ui.views.contentoutline.IContentOutlinePage;
import org.girandole.studio.client.OpenText;
import org.girandole.studio.client.Positions;
import org.girandole.studio.client.ShowClient;
import org.girandole.studio.client.ShowListener;

/** The outline: definitions, scores, sections, cues. Follows the text after each check; a selection goes to its place. */
public final class Outline extends ContentOutlinePage implements ShowListener {
    private final ITextEditor editor;
    private final IPropertyChangeListener themes = event -> repaint();

    private Outline(ITextEditor editor) {
        this.editor = editor;
    }

    /** A symbol and where it stands; the same place after an edit is the same node, so that it stays open. */
    private static final class Node {
        private final String path;
        private final DocumentSymbol symbol;
        private final Node parent;
        private final List<Node> children = new ArrayList<>();

        Node(Node parent, DocumentSymbol symbol, int index) {
            this.parent = parent;
            this.symbol = symbol;
            this.path = (parent == null ? "" : parent.path + "/") + symbol.getName() + "#" + index;
            if (symbol.getChildren() != null) {
                children.addAll(nodes(this, symbol.getChildren()));
            }
        }

        static List<Node> nodes(Node parent, List<DocumentSymbol> symbols) {
            List<Node> nodes = new ArrayList<>();
            Map<String, Integer> same = new HashMap<>();
            for (DocumentSymbol symbol : symbols) {
                nodes.add(new Node(parent, symbol, same.merge(symbol.getName(), 1, Integer::sum) - 1));
            }
            return nodes;
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Node node && node.path.equals(path);
        }

        @Override
        public int hashCode() {
            return path.hashCode();
        }
    }

    @Override
    public void createControl(Composite parent) {
        super.createControl(parent);
        TreeViewer tree = getTreeViewer();
        tree.setContentProvider(new Content());
        tree.setLabelProvider(new DelegatingStyledCellLabelProvider(new Labels()));
        ShowClient.get().addListener(this);
        JFaceResources.getColorRegistry().addListener(themes);
        PlatformUI.getWorkbench().getThemeManager().addPropertyChangeListener(themes);
        update();
    }

    /** Another theme has other colours, and labels keep those that they were made with. */
    private void repaint() {
        TreeViewer tree = getTreeViewer();
        if (tree != null && !tree.getControl().isDisposed()) {
            tree.refresh();
        }
    }

    @Override
    public void dispose() {
        ShowClient.get().removeListener(this);
        JFaceResources.getColorRegistry().removeListener(themes);
        PlatformUI.getWorkbench().getThemeManager().removePropertyChangeListener(themes);
        super.dispose();
    }

    private OpenText text() {
        IDocument document = editor.getDocumentProvider() == null ? null : editor.getDocumentProvider().getDocument(editor.getEditorInput());
        return ShowClient.get().text(document).filter(open -> !open.huge()).orElse(null);
    }

    @Override
    public void checked(String uri) {
        OpenText text = text();
        if (text != null && text.uri().equals(uri)) {
            update();
        }
    }

    private void update() {
        OpenText text = text();
        if (text == null) {
            return;
        }
        ShowClient.get().ask(server -> server.getTextDocumentService().documentSymbol(new DocumentSymbolParams(text.id())))
                .thenAccept(symbols -> {
                    if (symbols != null) {
                        List<Node> roots = Node.nodes(null, symbols.stream().filter(either -> either.isRight()).map(either -> either.getRight()).toList());
                        Control control = getControl();
                        if (control != null && !control.isDisposed()) {
                            control.getDisplay().asyncExec(() -> show(roots));
                        }
                    }
                });
    }

    private void show(List<Node> roots) {
        TreeViewer tree = getTreeViewer();
        if (tree == null || tree.getControl().isDisposed()) {
            return;
        }
        Object[] expanded = tree.getExpandedElements();
        boolean first = tree.getInput() == null;
        tree.setInput(roots);
        if (first) {
            tree.expandToLevel(2);
        } else {
            tree.setExpandedElements(expanded);
        }
    }

    @Override
    public void selectionChanged(SelectionChangedEvent event) {
        super.selectionChanged(event);
        OpenText text = text();
        if (text != null && getControl().isFocusControl()
                && ((IStructuredSelection) event.getSelection()).getFirstElement() instanceof Node node) {
            var region = Positions.region(text.document(), node.symbol.getSelectionRange());
            editor.selectAndReveal(region.getOffset(), region.getLength());
        }
    }

    private static final class Content implements ITreeContentProvider {
        @Override
        public Object[] getElements(Object input) {
            return ((List<?>) input).toArray();
        }

        @Override
        public Object[] getChildren(Object parent) {
            return ((Node) parent).children.toArray();
        }

        @Override
        public Object getParent(Object element) {
            return element instanceof Node node ? node.parent : null;
        }

        @Override
        public boolean hasChildren(Object element) {
            return !((Node) element).children.isEmpty();
        }
    }

    private static final class Labels extends LabelProvider implements DelegatingStyledCellLabelProvider.IStyledLabelProvider {
        @Override
        public StyledString getStyledText(Object element) {
            DocumentSymbol symbol = ((Node) element).symbol;
            StyledString text = new StyledString(symbol.getName());
            if (symbol.getDetail() != null && !symbol.getDetail().isBlank()) {
                text.append("  " + symbol.getDetail(), Colours.DETAIL);
            }
            return text;
        }
    }

    /** Gives the editor its outline. */
    public static final class Factory implements IAdapterFactory {
        @Override
        public <T> T getAdapter(Object adapted, Class<T> type) {
            if (type == IContentOutlinePage.class && adapted instanceof ITextEditor editor && editor.getEditorInput() != null
                    && editor.getEditorInput().getName().endsWith(".show")) {
                return type.cast(new Outline(editor));
            }
            return null;
        }

        @Override
        public Class<?>[] getAdapterList() {
            return new Class<?>[] {IContentOutlinePage.class};
        }
    }
}
