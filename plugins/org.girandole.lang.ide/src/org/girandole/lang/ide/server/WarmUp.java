package org.girandole.lang.ide.server;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Objects;
import org.apache.log4j.Logger;
import org.eclipse.emf.common.util.URI;
import org.eclipse.xtext.resource.XtextResource;
import org.girandole.lang.LoadedShow;
import org.girandole.lang.check.CheckedShow;
import org.girandole.lang.check.ShowPipeline;
import org.girandole.lang.compile.ShowCompiler;
import org.girandole.lang.ide.features.ScriptView;
import org.girandole.lang.ide.features.Symbols;
import org.girandole.lang.ide.features.Tokens;

/**
 * Reads and checks a small show as the server starts. The first script of a session is then opened by a program that has all its classes and
 * has done everything before; a big show would else wait for that as long as for itself.
 */
final class WarmUp {
    private static final Logger LOG = Logger.getLogger(WarmUp.class);
    private static final String SHOW = "warm-up.show";
    /** More often brings little. */
    private static final int MOST = 10;

    private final Language language;
    private volatile boolean enough;

    WarmUp(Language language) {
        this.language = language;
    }

    /** Begins beside the start; returns at once. */
    void begin() {
        Thread thread = new Thread(this::run, "girandole-warm-up");
        thread.setDaemon(true);
        thread.start();
    }

    /** The first script has come: what goes on here would only be in its way. */
    void enough() {
        enough = true;
    }

    private void run() {
        try {
            for (int i = 0; i < MOST && !enough; i++) {
                check(language);
            }
        } catch (RuntimeException e) {
            LOG.error("The warm-up failed; what comes first takes longer, and nothing else is lost.", e);
        }
    }

    /** Everything that is found about the small show. */
    static CheckedShow check(Language language) {
        String text = text();
        // Nothing is read there: the show uses no files.
        Path root = Path.of("").toAbsolutePath();
        URI uri = ScriptUris.model(root.resolve(SHOW));
        ShowFolder folder = new ShowFolder(root, language);
        folder.buffer(uri, text);
        XtextResource script = folder.load(uri).orElseThrow();
        LoadedShow loaded = language.get(ShowCompiler.class).compile(script);
        CheckedShow checked = ShowPipeline.check(loaded);
        TextLines lines = new TextLines(text);
        ScriptView view = new ScriptView(SHOW, script, lines);
        Symbols.outline(view);
        Tokens.of(view, 0, lines.count());
        return checked;
    }

    private static String text() {
        try (InputStream in = Objects.requireNonNull(WarmUp.class.getResourceAsStream(SHOW))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
