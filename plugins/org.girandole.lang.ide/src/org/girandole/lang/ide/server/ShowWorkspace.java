package org.girandole.lang.ide.server;

import com.google.inject.Inject;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Supplier;
import org.apache.log4j.Logger;
import org.eclipse.emf.common.util.URI;
import org.eclipse.lsp4j.DidChangeWorkspaceFoldersParams;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import org.eclipse.lsp4j.WorkspaceFolder;
import org.eclipse.xtext.ide.server.BuildManager.Buildable;
import org.eclipse.xtext.ide.server.Document;
import org.eclipse.xtext.ide.server.ProjectManager;
import org.eclipse.xtext.ide.server.WorkspaceManager;
import org.eclipse.xtext.resource.XtextResource;
import org.eclipse.xtext.util.CancelIndicator;
import org.eclipse.xtext.util.Pair;
import org.eclipse.xtext.util.Tuples;
import org.eclipse.xtext.validation.Issue;
import org.eclipse.xtext.xbase.lib.Functions.Function2;
import org.eclipse.xtext.xbase.lib.Procedures.Procedure2;
import org.girandole.lang.files.UsedFiles;
import org.girandole.lang.ide.features.ScriptView;

/**
 * All scripts of a client, open or below its folders. Takes the place of Xtext's workspace, which would parse a script from its first
 * character on each key press, builds an index that this language does not need, and knows nothing of files outside of every folder.
 *
 * <p>Writes come one at a time and never beside a read; the request manager sees to that.
 */
final class ShowWorkspace extends WorkspaceManager {
    private static final Logger LOG = Logger.getLogger(ShowWorkspace.class);
    private static final int DEEPEST_FOLDER = 16;
    private static final int MOST_SCRIPTS = 5_000;
    private static final Set<String> NO_SOURCES = Set.of("target", "node_modules");

    /** An open text; {@code parsed} is what the model has been told of it. */
    private record Open(String clientUri, int version, TextLines text, String parsed) {
    }

    /** One scan's worth of scripts. */
    record Script(XtextResource resource, ShowFolder folder) {
    }

    private final Language language;
    private final Checking checking;
    private final WarmUp warmUp;
    private final Map<Path, ShowFolder> folders = new TreeMap<>();
    private final Map<URI, Open> open = new LinkedHashMap<>();
    private final Set<URI> unparsed = new LinkedHashSet<>();
    private List<Path> workspaceFolders = List.of();

    @Inject
    ShowWorkspace(Language language, Checking checking, WarmUp warmUp) {
        this.language = language;
        this.checking = checking;
        this.warmUp = warmUp;
        checking.of(this);
    }

    @Override
    public void initialize(List<WorkspaceFolder> given, Procedure2<? super URI, ? super Iterable<Issue>> issues, CancelIndicator cancel) {
        workspaceFolders = paths(given);
        refreshWorkspaceConfig(cancel);
    }

    @Override
    public void initialize(URI baseDir, Procedure2<? super URI, ? super Iterable<Issue>> issues, CancelIndicator cancel) {
        workspaceFolders = baseDir == null ? List.of() : ScriptUris.path(baseDir.toString()).map(List::of).orElse(List.of());
        refreshWorkspaceConfig(cancel);
    }

    /** Reads everything anew: for the first time, and when something may have changed that nobody told of. */
    @Override
    protected void refreshWorkspaceConfig(CancelIndicator cancel) {
        folders.clear();
        unparsed.clear();
        for (Path folder : workspaceFolders) {
            for (Path script : scriptsBelow(folder)) {
                folder(script).load(ScriptUris.model(script));
            }
        }
        open.replaceAll((uri, text) -> {
            ShowFolder folder = folderOf(uri);
            folder.buffer(uri, text.text.text());
            folder.load(uri);
            return new Open(text.clientUri, text.version, text.text, text.text.text());
        });
        checking.everything();
    }

    @Override
    public void didChangeWorkspaceFolders(DidChangeWorkspaceFoldersParams params, CancelIndicator cancel) {
        List<Path> now = new ArrayList<>(workspaceFolders);
        now.removeAll(paths(params.getEvent().getRemoved()));
        paths(params.getEvent().getAdded()).stream().filter(path -> !now.contains(path)).forEach(now::add);
        workspaceFolders = List.copyOf(now);
        refreshWorkspaceConfig(cancel);
    }

    /** The URI here is the client's own. */
    @Override
    public Buildable didOpen(URI clientUri, Integer version, String contents) {
        warmUp.enough();
        URI uri = ScriptUris.model(clientUri.toString());
        TextLines text = new TextLines(contents);
        open.put(uri, new Open(clientUri.toString(), version == null ? 0 : version, text, contents));
        ShowFolder folder = folderOf(uri);
        boolean same = folder.get(uri).filter(script -> contents.equals(text(script))).isPresent();
        folder.buffer(uri, contents);
        if (!same) {
            folder.load(uri);
        }
        unparsed.remove(uri);
        checking.changed(uri);
        return parsing();
    }

    @Override
    public Buildable didChangeTextDocumentContent(URI clientUri, Integer version, Iterable<TextDocumentContentChangeEvent> changes) {
        URI uri = ScriptUris.model(clientUri.toString());
        Open before = open.get(uri);
        if (before == null) {
            return parsing();
        }
        Document changed = new Document(before.version, before.text.text());
        String now = changed.applyTextDocumentChanges(changes).getContents();
        open.put(uri, new Open(before.clientUri, version == null ? before.version + 1 : version, new TextLines(now), before.parsed));
        unparsed.add(uri);
        checking.changed(uri);
        return parsing();
    }

    /** Parsing waits for the last of several writes that come at once: each gives up the parsing of the one before, so each must do it. */
    private Buildable parsing() {
        return cancel -> {
            parse();
            return List.of();
        };
    }

    @Override
    public Buildable didClose(URI clientUri) {
        URI uri = ScriptUris.model(clientUri.toString());
        open.remove(uri);
        unparsed.remove(uri);
        folderOf(uri).buffer(uri, null);
        readFromDisk(uri);
        return parsing();
    }

    @Override
    public Buildable didChangeFiles(List<URI> changed, List<URI> deleted) {
        List<URI> all = new ArrayList<>(changed);
        all.addAll(deleted);
        for (URI each : all) {
            URI uri = ScriptUris.model(each.toString());
            if (uri.lastSegment() != null && uri.lastSegment().endsWith(UsedFiles.EXTENSION)) {
                if (!open.containsKey(uri)) {
                    readFromDisk(uri);
                }
            } else {
                // Sound, marks and lock files: nothing is parsed, but findings may change.
                checking.everything();
            }
        }
        return parsing();
    }

    private void readFromDisk(URI uri) {
        ShowFolder folder = folderOf(uri);
        boolean known = folder.get(uri).isPresent();
        if (known == folder.load(uri).isPresent()) {
            checking.changed(uri);
        } else {
            // A file that came may be the one that others were missing; which these are, is not remembered.
            refreshWorkspaceConfig(CancelIndicator.NullImpl);
        }
    }

    /** Brings the model up to the text. */
    private void parse() {
        for (URI uri : List.copyOf(unparsed)) {
            Open text = open.get(uri);
            if (text != null) {
                ShowFolder folder = folderOf(uri);
                String now = text.text.text();
                folder.buffer(uri, now);
                Optional<XtextResource> script = folder.get(uri);
                if (script.isPresent() && text.parsed.equals(text(script.get()))) {
                    edit(folder, script.get(), Stretch.between(text.parsed, now));
                } else {
                    folder.load(uri);
                }
                open.put(uri, new Open(text.clientUri, text.version, text.text, now));
            }
            unparsed.remove(uri);
        }
    }

    /** What cannot be worked into the parsed script is read with all of it: nobody may be left with the model of a text of long ago. */
    private static void edit(ShowFolder folder, XtextResource script, Stretch change) {
        try {
            folder.edit(script, change.offset(), change.length(), change.text());
        } catch (RuntimeException e) {
            LOG.error("A change could not be worked into " + script.getURI() + "; it is read anew.", e);
            folder.load(script.getURI());
        }
    }

    /** The text and model of a script; null when there is none. */
    @Override
    public Pair<? super Document, ? super XtextResource> read(URI clientUri) {
        URI uri = ScriptUris.model(clientUri.trimFragment().toString());
        if (unparsed.contains(uri)) {
            // A later change is waiting already; what would be answered now is worth nothing.
            throw new java.util.concurrent.CancellationException();
        }
        Optional<ShowFolder> folder = known(uri);
        Optional<XtextResource> script = folder.flatMap(f -> f.get(uri));
        return script.map(found -> Tuples.pair(getDocument(found), found)).orElse(null);
    }

    @Override
    protected Document getDocument(XtextResource resource) {
        Open text = open.get(resource.getURI());
        return text != null ? new Document(text.version, text.text.text()) : new Document(0, text(resource));
    }

    /**
     * Does something with the model while nobody else does. Reads run side by side, but names are resolved and remembered while they are
     * read, and a model does not bear that from two threads.
     */
    <T> T alone(Supplier<T> work) {
        synchronized (folders) {
            return work.get();
        }
    }

    /** Services never see a script that is not there. */
    @Override
    public <T> T doRead(URI uri, Function2<? super Document, ? super XtextResource, ? extends T> work) {
        return alone(() -> readNow(uri, work));
    }

    private <T> T readNow(URI uri, Function2<? super Document, ? super XtextResource, ? extends T> work) {
        Pair<? super Document, ? super XtextResource> pair = read(uri);
        return pair == null ? null : work.apply((Document) pair.getFirst(), (XtextResource) pair.getSecond());
    }

    /** There are no projects in Xtext's sense. */
    @Override
    public ProjectManager getProjectManager(URI uri) {
        return null;
    }

    @Override
    public boolean isDocumentOpen(URI uri) {
        return open.containsKey(ScriptUris.model(uri.toString()));
    }

    /** A script as the client knows it; empty when there is none. */
    Optional<ScriptView> view(String clientUri) {
        Pair<? super Document, ? super XtextResource> pair = read(URI.createURI(clientUri));
        return pair == null ? Optional.empty() : Optional.of(view((XtextResource) pair.getSecond()));
    }

    ScriptView view(XtextResource script) {
        CheckedText text = textOf(script);
        return new ScriptView(text.uri(), script, text.lines());
    }

    /** Everything that is checked by itself. Only while nobody writes. */
    List<Script> checked() {
        List<Script> all = new ArrayList<>();
        for (ShowFolder folder : folders.values()) {
            folder.checked().forEach(script -> all.add(new Script(script, folder)));
        }
        return all;
    }

    /** All scripts. Only while nobody writes. */
    List<XtextResource> scripts() {
        List<XtextResource> all = new ArrayList<>();
        folders.values().forEach(folder -> all.addAll(folder.scripts()));
        return all;
    }

    /** The name that a client knows a script by. */
    String clientUri(URI uri) {
        Open text = open.get(uri);
        return text == null ? ScriptUris.protocol(uri) : text.clientUri;
    }

    CheckedText textOf(XtextResource script) {
        Open text = open.get(script.getURI());
        return text != null ? new CheckedText(text.clientUri, Optional.of(text.version), text.text)
                : new CheckedText(ScriptUris.protocol(script.getURI()), Optional.empty(), new TextLines(text(script)));
    }

    private static String text(XtextResource script) {
        return script.getParseResult() == null ? "" : script.getParseResult().getRootNode().getText();
    }

    private Optional<ShowFolder> known(URI uri) {
        return Optional.ofNullable(folders.get(rootOf(uri)));
    }

    private ShowFolder folderOf(URI uri) {
        return folders.computeIfAbsent(rootOf(uri), root -> new ShowFolder(root, language));
    }

    private ShowFolder folder(Path script) {
        return folderOf(ScriptUris.model(script));
    }

    private Path rootOf(URI uri) {
        return uri.isFile() ? rootOf(Path.of(uri.toFileString())) : Path.of("/");
    }

    /**
     * The project of a script: the nearest folder above with a {@code pom.xml}, as for the command line, though not above the client's
     * own folder; else that folder, and for a script outside of all of them its own.
     */
    private Path rootOf(Path script) {
        Path top = workspaceFolders.stream().filter(script::startsWith).max((a, b) -> Integer.compare(a.getNameCount(), b.getNameCount()))
                .orElse(null);
        for (Path folder = script.getParent(); folder != null; folder = folder.getParent()) {
            if (Files.isRegularFile(folder.resolve("pom.xml"))) {
                return folder;
            }
            if (folder.equals(top)) {
                return top;
            }
        }
        return script.getParent() == null ? script : script.getParent();
    }

    private static List<Path> paths(List<WorkspaceFolder> given) {
        return given == null ? List.of() : given.stream().flatMap(folder -> ScriptUris.path(folder.getUri()).stream()).distinct().toList();
    }

    private static List<Path> scriptsBelow(Path folder) {
        List<Path> found = new ArrayList<>();
        if (!Files.isDirectory(folder)) {
            return found;
        }
        try {
            Files.walkFileTree(folder, Set.of(), DEEPEST_FOLDER, new SimpleFileVisitor<>() {
                @Override
                public FileVisitResult preVisitDirectory(Path dir, BasicFileAttributes attributes) {
                    String name = dir.getFileName() == null ? "" : dir.getFileName().toString();
                    boolean skipped = !dir.equals(folder) && (name.startsWith(".") || NO_SOURCES.contains(name));
                    return skipped ? FileVisitResult.SKIP_SUBTREE : FileVisitResult.CONTINUE;
                }

                @Override
                public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
                    if (file.getFileName().toString().endsWith(UsedFiles.EXTENSION) && attributes.isRegularFile()) {
                        found.add(file.toAbsolutePath().normalize());
                    }
                    return found.size() < MOST_SCRIPTS ? FileVisitResult.CONTINUE : FileVisitResult.TERMINATE;
                }

                @Override
                public FileVisitResult visitFileFailed(Path file, IOException failure) {
                    return FileVisitResult.CONTINUE;
                }
            });
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        found.sort(null);
        return found;
    }
}
