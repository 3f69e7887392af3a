package org.girandole.studio.client;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.eclipse.core.filebuffers.FileBuffers;
import org.eclipse.core.filebuffers.ITextFileBuffer;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IMarker;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.resources.WorkspaceJob;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.text.Document;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.IRegion;
import org.eclipse.jface.text.Position;
import org.eclipse.jface.text.source.Annotation;
import org.eclipse.jface.text.source.IAnnotationModel;
import org.eclipse.jface.text.source.IAnnotationModelExtension;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.girandole.studio.StudioPlugin;

/** What the server found, as markers of the workspace; for a file outside of it, as annotations in its editor. */
public final class Findings {
    /** Marker type. */
    public static final String MARKER = StudioPlugin.ID + ".finding";
    /** Marker attribute: the id of the rule. */
    public static final String RULE = "rule";
    /** Marker attribute: where the page of the rule is. */
    public static final String PAGE = "page";

    private static final Map<Integer, String> ANNOTATIONS = Map.of(IMarker.SEVERITY_ERROR, "org.eclipse.ui.workbench.texteditor.error",
            IMarker.SEVERITY_WARNING, "org.eclipse.ui.workbench.texteditor.warning",
            IMarker.SEVERITY_INFO, "org.eclipse.ui.workbench.texteditor.info");

    private final OpenTexts texts;
    private final Map<String, PublishDiagnosticsParams> latest = new ConcurrentHashMap<>();

    Findings(OpenTexts texts) {
        this.texts = texts;
    }

    void show(PublishDiagnosticsParams told) {
        if (told.getDiagnostics().isEmpty() && texts.of(told.getUri()).isEmpty()) {
            latest.remove(told.getUri());
        } else {
            latest.put(told.getUri(), told);
        }
        Optional<IFile> file = Places.file(told.getUri());
        if (file.isPresent()) {
            mark(file.get(), told);
        } else {
            annotate(told);
        }
    }

    void again() {
        latest.values().forEach(this::show);
    }

    /** The findings of a file as they were told last. */
    List<Diagnostic> of(String uri) {
        PublishDiagnosticsParams told = latest.get(uri);
        return told == null ? List.of() : List.copyOf(told.getDiagnostics());
    }

    private boolean outdated(PublishDiagnosticsParams told) {
        Optional<OpenText> open = texts.of(told.getUri());
        return told.getVersion() != null && open.isPresent() && open.get().version() != told.getVersion();
    }

    private void mark(IFile file, PublishDiagnosticsParams told) {
        WorkspaceJob job = new WorkspaceJob("Findings of " + file.getName()) {
            @Override
            public IStatus runInWorkspace(IProgressMonitor monitor) throws CoreException {
                // Newer findings are on their way; these would stand at the wrong places.
                if (file.exists() && !outdated(told)) {
                    update(file, told);
                }
                return Status.OK_STATUS;
            }
        };
        job.setSystem(true);
        job.setPriority(Job.SHORT);
        // Markers need no rule, but nobody may delete the file, or mark it as well, meanwhile.
        job.setRule(file);
        job.schedule();
    }

    private void update(IFile file, PublishDiagnosticsParams told) throws CoreException {
        Optional<IDocument> document = told.getDiagnostics().isEmpty() ? Optional.of(new Document()) : document(file, told.getUri());
        if (document.isEmpty()) {
            return;
        }
        List<Map<String, Object>> wanted = new ArrayList<>();
        told.getDiagnostics().forEach(diagnostic -> wanted.add(attributes(document.get(), diagnostic)));
        for (IMarker marker : file.findMarkers(MARKER, false, IResource.DEPTH_ZERO)) {
            Map<String, Object> there = marker.getAttributes();
            // What is still so stays, with its place in the list and its icon in the margin.
            if (there == null || !wanted.remove(there)) {
                marker.delete();
            }
        }
        for (Map<String, Object> attributes : wanted) {
            file.createMarker(MARKER, attributes);
        }
    }

    private Optional<IDocument> document(IFile file, String uri) {
        Optional<OpenText> open = texts.of(uri);
        if (open.isPresent()) {
            return Optional.of(open.get().document());
        }
        try {
            return Optional.of(new Document(file.readString()));
        } catch (CoreException e) {
            // Deleted or changed just now; the server will say so.
            return Optional.empty();
        }
    }

    private static Map<String, Object> attributes(IDocument document, Diagnostic diagnostic) {
        IRegion region = visible(document, Positions.region(document, diagnostic.getRange()));
        Map<String, Object> attributes = new LinkedHashMap<>();
        String rule = rule(diagnostic);
        attributes.put(IMarker.MESSAGE, message(diagnostic));
        attributes.put(IMarker.SEVERITY, Severities.of(rule, diagnostic.getSeverity()));
        attributes.put(IMarker.LINE_NUMBER, diagnostic.getRange().getStart().getLine() + 1);
        attributes.put(IMarker.CHAR_START, region.getOffset());
        attributes.put(IMarker.CHAR_END, region.getOffset() + region.getLength());
        attributes.put(IMarker.SOURCE_ID, rule);
        attributes.put(RULE, rule);
        if (diagnostic.getCodeDescription() != null) {
            attributes.put(PAGE, diagnostic.getCodeDescription().getHref());
        }
        return attributes;
    }

    static String rule(Diagnostic diagnostic) {
        return diagnostic.getCode() != null && diagnostic.getCode().isLeft() ? diagnostic.getCode().getLeft() : "";
    }

    static String message(Diagnostic diagnostic) {
        return diagnostic.getMessage().isLeft() ? diagnostic.getMessage().getLeft() : diagnostic.getMessage().getRight().getValue();
    }

    /** An empty region cannot be seen. */
    private static IRegion visible(IDocument document, IRegion region) {
        if (region.getLength() > 0 || document.getLength() == 0) {
            return region;
        }
        int offset = Math.min(region.getOffset(), document.getLength() - 1);
        return new org.eclipse.jface.text.Region(offset, 1);
    }

    private void annotate(PublishDiagnosticsParams told) {
        Optional<OpenText> open = texts.of(told.getUri());
        if (open.isEmpty() || outdated(told)) {
            return;
        }
        ITextFileBuffer buffer = FileBuffers.getTextFileBufferManager().getTextFileBuffer(open.get().document());
        IAnnotationModel model = buffer == null ? null : buffer.getAnnotationModel();
        if (!(model instanceof IAnnotationModelExtension editable)) {
            return;
        }
        List<Annotation> old = new ArrayList<>();
        model.getAnnotationIterator().forEachRemaining(annotation -> {
            if (annotation instanceof FindingAnnotation) {
                old.add(annotation);
            }
        });
        Map<Annotation, Position> now = new LinkedHashMap<>();
        for (Diagnostic diagnostic : told.getDiagnostics()) {
            IRegion region = visible(open.get().document(), Positions.region(open.get().document(), diagnostic.getRange()));
            now.put(new FindingAnnotation(ANNOTATIONS.get(Severities.of(rule(diagnostic), diagnostic.getSeverity())), message(diagnostic)),
                    new Position(region.getOffset(), region.getLength()));
        }
        editable.replaceAnnotations(old.toArray(Annotation[]::new), now);
    }

    /** A finding in a file that is not of the workspace. */
    public static final class FindingAnnotation extends Annotation {
        FindingAnnotation(String type, String text) {
            super(type, false, text);
        }
    }
}
