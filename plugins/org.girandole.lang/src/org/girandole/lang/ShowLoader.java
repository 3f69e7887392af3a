package org.girandole.lang;

import com.google.inject.Injector;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.eclipse.emf.common.util.URI;
import org.eclipse.xtext.resource.XtextResource;
import org.eclipse.xtext.resource.XtextResourceSet;
import org.girandole.lang.compile.Problems;
import org.girandole.lang.compile.ShowCompiler;
import org.girandole.lang.files.ProjectRoot;
import org.girandole.lang.files.UsedFiles;
import org.girandole.plan.rules.RuleInfo;
import org.girandole.plan.script.SourceRef;

/** Reads scripts from disk. One loader may read any number of them, one after the other. */
public final class ShowLoader {
    private final Injector injector;

    public ShowLoader() {
        this(new ShowStandaloneSetup().createInjectorAndDoEMFRegistration());
    }

    /** For programs that have an injector of the language already. */
    public ShowLoader(Injector injector) {
        this.injector = injector;
    }

    /** Reads a script whose project is the folder that it is in. */
    public LoadedShow load(Path script) {
        return load(script, script.toAbsolutePath().normalize().getParent());
    }

    /**
     * Reads a script and what it uses. Whatever is wrong with the files is among the problems; nothing is thrown for it.
     *
     * @param root the project; files outside of it are not read
     */
    public LoadedShow load(Path script, Path root) {
        Path file = script.toAbsolutePath().normalize();
        Path folder = root.toAbsolutePath().normalize();
        String name = ProjectRoot.relative(folder, file);
        if (!ProjectRoot.contains(folder, file)) {
            return refused(name, Path.of(name).isAbsolute() || name.startsWith("..") ? "The script lies outside of the project" : "The script "
                    + "is a link to a file outside of the project", "name a folder above it as the project root", LanguageRules.USE_OUTSIDE);
        }
        if (!name.endsWith(UsedFiles.EXTENSION)) {
            return refused(name, "This is not a script; scripts end in " + UsedFiles.EXTENSION, "name a file that ends in "
                    + UsedFiles.EXTENSION, LanguageRules.UNREADABLE);
        }
        XtextResourceSet resources = injector.getInstance(XtextResourceSet.class);
        ProjectRoot.set(resources, folder);
        try {
            XtextResource resource = injector.getInstance(UsedFiles.class).load(resources, URI.createFileURI(file.toString()));
            return injector.getInstance(ShowCompiler.class).compile(resource);
        } catch (IOException e) {
            return refused(name, Files.isDirectory(file) ? "This is a folder, not a script"
                    : Files.exists(file) ? "The script cannot be read" : "There is no such file",
                    Files.isDirectory(file) ? "name a script in it" : "check the path, and that you may read the file",
                    LanguageRules.UNREADABLE);
        }
    }

    private static LoadedShow refused(String name, String message, String remedy, RuleInfo rule) {
        Problems problems = new Problems();
        problems.report(rule, message + ": " + name).found(name, "a script that can be read").remedy(remedy)
                .at(new SourceRef(name, 1, 1, 1));
        return new LoadedShow(name, Optional.empty(), problems.sorted(), List.of());
    }
}
