package org.girandole.lang.ide.show;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.girandole.lang.ide.server.CheckedScript;
import org.girandole.lang.ide.server.CheckedText;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.script.SourceRef;
import org.girandole.protocol.SourcePlace;

/** The show of a file in the editor, as the server last checked it. */
record EditedShow(Optional<CheckedScript> script) {
    private static final String NO_FILE = "The language server knows no such script. Open it, or the folder that it is in.";
    private static final String NO_SHOW = "No show uses this file yet. Open the script with the show block.";
    private static final String UNREADABLE = "The script cannot be read as a show yet: mend its errors first.";

    /** Empty when there is none. */
    Optional<CheckedPlan> plan() {
        return script.flatMap(found -> found.show().plan());
    }

    /** Why there is no plan, a sentence. */
    String why() {
        return script.isEmpty() ? NO_FILE : script.get().show().loaded().hasErrors() ? UNREADABLE : NO_SHOW;
    }

    /** The script of the show, as the client names it. */
    String uri() {
        return script.orElseThrow().uri();
    }

    /** Every script that the show is read from, as the client names it. */
    List<String> scripts() {
        return script.orElseThrow().files().stream().map(this::uri).toList();
    }

    /** A place in a script as an editor can open it. */
    SourcePlace place(SourceRef source) {
        return new SourcePlace(uri(source.file()), source.file(), source.line(), source.column(), source.length());
    }

    /** A file of the project as an editor can open it; scripts as the client names them. */
    String uri(String file) {
        CheckedText text = script.orElseThrow().texts().get(file);
        return text == null ? path(file).toUri().toString() : text.uri();
    }

    /** A file of the project on disk. */
    Path path(String file) {
        return script.orElseThrow().root().resolve(file);
    }
}
