package org.girandole.lang.files;

import com.google.inject.Singleton;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.eclipse.emf.common.notify.impl.AdapterImpl;
import org.eclipse.emf.common.util.URI;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.resource.Resource;
import org.eclipse.emf.ecore.resource.ResourceSet;
import org.eclipse.emf.ecore.util.EcoreUtil;
import org.eclipse.xtext.parser.IParseResult;
import org.eclipse.xtext.resource.XtextResource;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.compile.Words;
import org.girandole.lang.show.Script;
import org.girandole.lang.show.UseLine;
import org.girandole.plan.rules.RuleInfo;

/** Finds the files that a script uses, directly and through others. */
@Singleton
public class UsedFiles {
    /** The end of the name of every script. */
    public static final String EXTENSION = ".show";

    /**
     * A script with all it uses.
     *
     * @param files used files before those that use them, the script itself last
     */
    public record Closure(List<XtextResource> files, List<UseTrouble> troubles) {
        public Closure {
            files = List.copyOf(files);
            troubles = List.copyOf(troubles);
        }
    }

    /** A {@code use} that leads nowhere. */
    public record UseTrouble(UseLine line, RuleInfo rule, String message, String remedy) {
    }

    /** The closure, computed once for each state of the files. */
    public Closure of(XtextResource script) {
        Remembered remembered = (Remembered) EcoreUtil.getExistingAdapter(script, Remembered.class);
        if (remembered != null && remembered.holds()) {
            return remembered.closure;
        }
        Walk walk = new Walk();
        walk.visit(script);
        Closure closure = new Closure(new ArrayList<>(walk.done), walk.troubles);
        script.eAdapters().removeIf(Remembered.class::isInstance);
        script.eAdapters().add(new Remembered(closure));
        return closure;
    }

    /** What was wrong when a file was read from disk. */
    public static Optional<ScriptText.Trouble> readTrouble(Resource script) {
        return Optional.ofNullable((ReadTrouble) EcoreUtil.getExistingAdapter(script, ReadTrouble.class)).map(t -> t.trouble);
    }

    /**
     * Loads a script from disk.
     *
     * @throws IOException if there is no such file or it cannot be read
     */
    public XtextResource load(ResourceSet resources, URI uri) throws IOException {
        ScriptText read;
        try (InputStream in = resources.getURIConverter().createInputStream(uri)) {
            read = ScriptText.read(in, LargestScript.of(resources));
        }
        XtextResource resource = (XtextResource) resources.createResource(uri);
        resource.load(new ByteArrayInputStream(read.text().getBytes(StandardCharsets.UTF_8)), null);
        read.trouble().ifPresent(trouble -> resource.eAdapters().add(new ReadTrouble(trouble)));
        return resource;
    }

    private final class Walk {
        private final Set<XtextResource> done = new LinkedHashSet<>();
        private final Map<XtextResource, Boolean> open = new LinkedHashMap<>();
        private final List<UseTrouble> troubles = new ArrayList<>();

        void visit(XtextResource resource) {
            open.put(resource, true);
            if (!resource.getContents().isEmpty() && resource.getContents().get(0) instanceof Script script) {
                for (UseLine line : script.getUses()) {
                    if (line.getPath() != null) {
                        follow(resource, line);
                    }
                }
            }
            open.remove(resource);
            done.add(resource);
        }

        private void follow(XtextResource user, UseLine line) {
            Path root = ProjectRoot.of(user);
            Path target;
            try {
                target = ProjectRoot.path(user.getURI()).getParent().resolve(line.getPath()).normalize();
            } catch (InvalidPathException e) {
                trouble(line, LanguageRules.USE_MISSING, "'" + line.getPath() + "' is no possible name of a file",
                        "write a path relative to this file, such as \"catalogue/house.show\"");
                return;
            }
            if (line.getPath().contains("\\")) {
                trouble(line, LanguageRules.USE_MISSING, "'" + line.getPath() + "' has a backslash in it",
                        "separate folders by a forward slash; it works on every system");
                return;
            }
            if (!ProjectRoot.contains(root, target)) {
                trouble(line, LanguageRules.USE_OUTSIDE, "'" + line.getPath() + "' lies outside of the project",
                        "copy the file into the project, or name a folder above both as the project root");
                return;
            }
            if (!line.getPath().endsWith(EXTENSION)) {
                trouble(line, LanguageRules.UNREADABLE, "'" + line.getPath() + "' is not a script; scripts end in " + EXTENSION,
                        "name a script that ends in " + EXTENSION);
                return;
            }
            Optional<XtextResource> used = open(user, line, target);
            if (used.isEmpty()) {
                return;
            }
            if (open.containsKey(used.get())) {
                trouble(line, LanguageRules.USE_CYCLE, circle(used.get(), user, root),
                        "take one use out of the circle; put what both files need into a third");
            } else if (!done.contains(used.get())) {
                visit(used.get());
            }
        }

        private String circle(XtextResource first, XtextResource last, Path root) {
            List<String> names = new ArrayList<>();
            boolean inside = false;
            for (XtextResource resource : open.keySet()) {
                inside |= resource == first;
                if (inside) {
                    names.add(ProjectRoot.relative(root, ProjectRoot.path(resource.getURI())));
                }
            }
            return first == last ? "This file uses itself"
                    : "These files use each other in a circle: " + String.join(" -> ", names) + " -> " + names.get(0);
        }

        private Optional<XtextResource> open(XtextResource user, UseLine line, Path target) {
            URI uri = user.getURI().isFile() ? URI.createFileURI(target.toString())
                    : URI.createURI(URI.encodeFragment(line.getPath(), true)).resolve(user.getURI());
            ResourceSet resources = user.getResourceSet();
            Resource there = resources.getResource(uri, false);
            if (there instanceof XtextResource resource && resource.isLoaded()) {
                return Optional.of(resource);
            }
            String name = ProjectRoot.relative(ProjectRoot.of(user), target);
            if (uri.isFile() && !Files.exists(target)) {
                trouble(line, LanguageRules.USE_MISSING, "There is no file '" + name + "'", similar(target));
                return Optional.empty();
            }
            try {
                return Optional.of(load(resources, uri));
            } catch (IOException e) {
                trouble(line, LanguageRules.UNREADABLE, "'" + name + "' cannot be read",
                        Files.isDirectory(target) ? "it is a folder; name a script in it" : "check that you may read the file");
                return Optional.empty();
            }
        }

        private String similar(Path target) {
            List<String> names = new ArrayList<>();
            if (target.getParent() != null && Files.isDirectory(target.getParent())) {
                try (var files = Files.list(target.getParent())) {
                    files.map(file -> file.getFileName().toString()).filter(name -> name.endsWith(EXTENSION)).sorted().forEach(names::add);
                } catch (IOException e) {
                    names.clear();
                }
            }
            return Words.nearest(target.getFileName().toString(), names)
                    .map(name -> "did you mean '" + name + "'?").orElse("check the path; it is relative to this file");
        }

        private void trouble(UseLine line, RuleInfo rule, String message, String remedy) {
            troubles.add(new UseTrouble(line, rule, message, remedy));
        }
    }

    private static final class Remembered extends AdapterImpl {
        private final Closure closure;
        private final Map<XtextResource, IParseResult> states = new IdentityHashMap<>();

        Remembered(Closure closure) {
            this.closure = closure;
            closure.files.forEach(file -> states.put(file, file.getParseResult()));
        }

        boolean holds() {
            for (Map.Entry<XtextResource, IParseResult> state : states.entrySet()) {
                if (state.getKey().getParseResult() != state.getValue() || state.getKey().getResourceSet() == null) {
                    return false;
                }
            }
            return true;
        }

        @Override
        public boolean isAdapterForType(Object type) {
            return type == Remembered.class;
        }
    }

    private static final class ReadTrouble extends AdapterImpl {
        private final ScriptText.Trouble trouble;

        ReadTrouble(ScriptText.Trouble trouble) {
            this.trouble = trouble;
        }

        @Override
        public boolean isAdapterForType(Object type) {
            return type == ReadTrouble.class;
        }
    }

    /** The script that an object is part of, with all it uses. */
    public Optional<Closure> around(EObject object) {
        return object.eResource() instanceof XtextResource resource && resource.getResourceSet() != null
                ? Optional.of(of(resource)) : Optional.empty();
    }
}
