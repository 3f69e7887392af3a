package org.girandole.lang.ide.server;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.eclipse.emf.common.util.URI;
import org.eclipse.emf.ecore.resource.Resource;
import org.eclipse.emf.ecore.resource.impl.ExtensibleURIConverterImpl;
import org.eclipse.emf.ecore.resource.impl.ResourceFactoryRegistryImpl;
import org.eclipse.xtext.parser.IParseResult;
import org.eclipse.xtext.resource.IResourceFactory;
import org.eclipse.xtext.resource.XtextResource;
import org.eclipse.xtext.resource.XtextResourceSet;
import org.girandole.lang.files.LargestScript;
import org.girandole.lang.files.ProjectRoot;
import org.girandole.lang.files.UsedFiles;
import org.girandole.lang.show.Script;
import org.girandole.lang.show.ShowDef;

/**
 * The scripts below one project root, parsed. What a client has open counts, not what is on disk. Changed only while nobody reads;
 * that is the affair of the caller.
 */
final class ShowFolder {
    /** Ten times the script of a show of 10,000 cues. A parsed script takes some hundred times its size in memory. */
    private static final int LARGEST_BYTES = 5 << 20;

    private final Path root;
    private final UsedFiles used;
    private final XtextResourceSet resources;
    private final Map<URI, String> buffers = new HashMap<>();

    ShowFolder(Path root, Language language) {
        this.root = root;
        this.used = language.get(UsedFiles.class);
        this.resources = language.get(XtextResourceSet.class);
        ProjectRoot.set(resources, root);
        LargestScript.set(resources, LARGEST_BYTES);
        // A text that was never saved may have no extension, and is a script all the same.
        IResourceFactory scripts = language.get(IResourceFactory.class);
        resources.setResourceFactoryRegistry(new ResourceFactoryRegistryImpl() {
            @Override
            public Resource.Factory getFactory(URI uri, String contentType) {
                return scripts;
            }
        });
        resources.setURIConverter(new ExtensibleURIConverterImpl() {
            @Override
            public InputStream createInputStream(URI uri, Map<?, ?> options) throws IOException {
                String buffer = buffers.get(uri);
                return buffer == null ? super.createInputStream(uri, options)
                        : new ByteArrayInputStream(buffer.getBytes(StandardCharsets.UTF_8));
            }
        });
    }

    Path root() {
        return root;
    }

    /** Takes the text of a client in place of what is on disk; null gives the disk its right again. */
    void buffer(URI uri, String text) {
        if (text == null) {
            buffers.remove(uri);
        } else {
            buffers.put(uri, text);
        }
    }

    Optional<XtextResource> get(URI uri) {
        return resources.getResource(uri, false) instanceof XtextResource resource && resource.isLoaded()
                ? Optional.of(resource) : Optional.empty();
    }

    /** Reads a script anew, or for the first time; empty when there is none. */
    Optional<XtextResource> load(URI uri) {
        Set<XtextResource> users = users(uri);
        forget(uri);
        try {
            XtextResource loaded = used.load(resources, uri);
            relink(users, loaded);
            return Optional.of(loaded);
        } catch (IOException e) {
            remove(uri);
            relink(users, null);
            return Optional.empty();
        }
    }

    /** Takes a script out, because it is gone. */
    void remove(URI uri) {
        Set<XtextResource> users = users(uri);
        forget(uri);
        relink(users, null);
    }

    /** Replaces a stretch of a script's text. What the change cannot have touched is not parsed again. */
    void edit(XtextResource script, int offset, int length, String text) {
        if (script.getParseResult().getRootNode().getTotalLength() - length + text.length() > LARGEST_BYTES) {
            load(script.getURI());
            return;
        }
        IParseResult before = script.getParseResult();
        Set<XtextResource> users = users(script.getURI());
        script.update(offset, length, text);
        if (script.getParseResult() != before) {
            relink(users, script);
        }
    }

    /** All scripts known here, by URI. */
    List<XtextResource> scripts() {
        List<XtextResource> scripts = new ArrayList<>();
        for (Resource resource : resources.getResources()) {
            if (resource instanceof XtextResource script && script.isLoaded()) {
                scripts.add(script);
            }
        }
        scripts.sort((a, b) -> a.getURI().toString().compareTo(b.getURI().toString()));
        return scripts;
    }

    /** What is checked by itself: scripts that hold a show, and those that no show uses. */
    List<XtextResource> checked() {
        List<XtextResource> shows = new ArrayList<>();
        Set<XtextResource> parts = new LinkedHashSet<>();
        List<XtextResource> scripts = scripts();
        for (XtextResource script : scripts) {
            if (holdsShow(script)) {
                shows.add(script);
                parts.addAll(used.of(script).files());
            }
        }
        // Looking for used files may have read more of them.
        for (XtextResource script : scripts()) {
            if (!parts.contains(script)) {
                shows.add(script);
            }
        }
        return shows;
    }

    /** The script with all it uses. */
    List<XtextResource> closure(XtextResource script) {
        return used.of(script).files();
    }

    static boolean holdsShow(XtextResource script) {
        return !script.getContents().isEmpty() && script.getContents().get(0) instanceof Script content
                && content.getElements().stream().anyMatch(ShowDef.class::isInstance);
    }

    private Set<XtextResource> users(URI uri) {
        Set<XtextResource> users = new LinkedHashSet<>();
        for (XtextResource script : scripts()) {
            if (!script.getURI().equals(uri) && used.of(script).files().stream().anyMatch(file -> file.getURI().equals(uri))) {
                users.add(script);
            }
        }
        return users;
    }

    private void forget(URI uri) {
        Resource old = resources.getResource(uri, false);
        if (old != null) {
            resources.getResources().remove(old);
            old.unload();
        }
    }

    /** Names that led into the changed script are looked up again. */
    private static void relink(Set<XtextResource> users, XtextResource changed) {
        for (XtextResource user : users) {
            if (user != changed && user.isLoaded() && user.getResourceSet() != null) {
                user.relink();
            }
        }
    }
}
