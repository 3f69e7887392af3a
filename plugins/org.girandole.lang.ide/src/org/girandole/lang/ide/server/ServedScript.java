package org.girandole.lang.ide.server;

import java.util.List;
import java.util.Optional;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.diagnostics.Severity;
import org.eclipse.xtext.linking.lazy.LazyLinkingResource;
import org.eclipse.xtext.resource.impl.ListBasedDiagnosticConsumer;

/**
 * A script that changes key press by key press. When nothing but lines of a score without names was parsed again, nothing but these is linked again:
 * no other line refers to them, and what they say gives no name elsewhere another meaning.
 */
class ServedScript extends LazyLinkingResource {
    /** Linking a line leaves a little behind that goes when everything is linked. */
    private static final int MOST_BEFORE_ALL = 1_000;

    private EditedBlock edited = new EditedBlock(List.of());
    private boolean linkingLines;
    private int edits;

    @Override
    public void update(int offset, int replacedTextLength, String newText) {
        edited = EditedBlock.at(getParseResult(), offset);
        try {
            super.update(offset, replacedTextLength, newText);
        } finally {
            edited = new EditedBlock(List.of());
        }
    }

    @Override
    protected void doLinking() {
        Optional<List<EObject>> lines = edits < MOST_BEFORE_ALL ? edited.parsedAgain(getParseResult()) : Optional.empty();
        edits = lines.isPresent() ? edits + 1 : 0;
        if (lines.isEmpty()) {
            super.doLinking();
            return;
        }
        ListBasedDiagnosticConsumer consumer = new ListBasedDiagnosticConsumer();
        linkingLines = true;
        try {
            for (EObject line : lines.get()) {
                getLinker().linkModel(line, consumer);
            }
        } finally {
            linkingLines = false;
        }
        getErrors().addAll(consumer.getResult(Severity.ERROR));
        getWarnings().addAll(consumer.getResult(Severity.WARNING));
    }

    /** What the references of all other lines need stays. */
    @Override
    public void clearLazyProxyInformation() {
        if (!linkingLines) {
            super.clearLazyProxyInformation();
        }
    }
}
