package org.girandole.lang.ide.server;

import com.google.inject.Inject;
import com.google.inject.Singleton;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;
import org.apache.log4j.Logger;
import org.eclipse.emf.common.util.URI;
import org.eclipse.xtext.ide.server.concurrent.IRequestManager;
import org.eclipse.xtext.resource.XtextResource;
import org.eclipse.xtext.util.CancelIndicator;
import org.girandole.lang.LoadedShow;
import org.girandole.lang.check.CheckedShow;
import org.girandole.lang.check.ShowPipeline;
import org.girandole.lang.compile.CueMemory;
import org.girandole.lang.compile.ShowCompiler;
import org.girandole.lang.files.ProjectRoot;
import org.girandole.lang.files.Recordings;
import org.girandole.lang.files.RememberedRecordings;
import org.girandole.plan.fallout.FlightMemory;
import org.girandole.plan.schedule.WiringMemory;

/**
 * Checks in the background what has changed, a moment after the last change, by the same path as the command line. Compiling needs the
 * model and is a read like others; planning and the rules need only what was compiled, and run beside the next key presses. What a new
 * change has overtaken is dropped.
 */
@Singleton
final class Checking {
    private static final Logger LOG = Logger.getLogger(Checking.class);
    /** Changes that come as one, such as those of a rename, are no further apart; what a later key press overtakes is given up half way. */
    private static final long PAUSE_MS = 15;

    private final ShowCompiler compiler;
    private final IRequestManager requests;
    private final ShowBoard board;
    private final FindingsPublisher publisher;
    /** Of all shows of this server: what a key press has not touched need not fly again. */
    private final FlightMemory flights = new FlightMemory();
    /** A recording of an hour is hashed in seconds, and it does not change by typing. */
    private final Recordings recordings = new RememberedRecordings(Recordings.FROM_DISK);
    private final Map<URI, Earlier> earlier = new HashMap<>();
    private final AtomicLong changes = new AtomicLong();
    private final Set<URI> changed = new HashSet<>();
    private final Map<URI, Set<URI>> closures = new HashMap<>();
    private final ScheduledExecutorService worker = Executors.newSingleThreadScheduledExecutor(work -> {
        Thread thread = new Thread(work, "girandole-checking");
        thread.setDaemon(true);
        return thread;
    });
    private ShowWorkspace workspace;
    private boolean all = true;

    /** What earlier checks of a script left for the next. */
    private record Earlier(CueMemory cues, WiringMemory wirings) {
    }

    /** A compiled script on its way to the rules. */
    private record Compiled(XtextResource script, Earlier earlier, ShowFolder folder, LoadedShow loaded, String uri, Map<String, CheckedText> texts) {
    }

    /** What one round has to look at. */
    private record Round(List<Compiled> compiled, Set<String> present) {
    }

    @Inject
    Checking(Language language, IRequestManager requests, ShowBoard board, FindingsPublisher publisher) {
        this.compiler = language.get(ShowCompiler.class);
        this.requests = requests;
        this.board = board;
        this.publisher = publisher;
    }

    void of(ShowWorkspace checked) {
        workspace = checked;
    }

    /** One script has changed. */
    void changed(URI script) {
        synchronized (changed) {
            changed.add(script);
        }
        schedule();
    }

    /** Anything may have changed. */
    void everything() {
        synchronized (changed) {
            all = true;
        }
        schedule();
    }

    void stop() {
        changes.incrementAndGet();
        worker.shutdownNow();
        board.close();
    }

    private void schedule() {
        board.outdated();
        later(changes.incrementAndGet());
    }

    private void later(long change) {
        try {
            worker.schedule(() -> round(change), PAUSE_MS, TimeUnit.MILLISECONDS);
        } catch (RejectedExecutionException e) {
            LOG.debug("The server is going; nothing is checked any more.");
        }
    }

    private void round(long change) {
        if (change != changes.get()) {
            return;
        }
        try {
            Round round = requests.runRead(cancel -> workspace.alone(() -> compile(change, cancel))).join();
            List<CheckedScript> checked = new ArrayList<>();
            for (Compiled one : round.compiled) {
                if (change != changes.get()) {
                    return;
                }
                checked.add(check(one, () -> change != changes.get()));
            }
            if (change != changes.get()) {
                return;
            }
            synchronized (changed) {
                if (change == changes.get()) {
                    changed.clear();
                    all = false;
                }
            }
            List<String> gone = board.all().stream().map(CheckedScript::uri).filter(uri -> !round.present.contains(uri)).toList();
            board.post(checked, gone, () -> publisher.publish(board.all()));
        } catch (CancellationException e) {
            // A write came between. One that changed something has ordered the next round, any other has not.
            LOG.debug("A check was overtaken.");
            if (change == changes.get()) {
                later(change);
            }
        } catch (RuntimeException e) {
            LOG.error("A check failed.", e);
        }
    }

    private Round compile(long change, CancelIndicator cancel) {
        Set<URI> wanted;
        boolean every;
        synchronized (changed) {
            wanted = new HashSet<>(changed);
            every = all;
        }
        List<Compiled> compiled = new ArrayList<>();
        Set<String> present = new HashSet<>();
        List<ShowWorkspace.Script> scripts = workspace.checked();
        earlier.keySet().retainAll(scripts.stream().map(script -> script.resource().getURI()).toList());
        for (ShowWorkspace.Script script : scripts) {
            if (cancel.isCanceled() || change != changes.get()) {
                throw new CancellationException();
            }
            URI uri = script.resource().getURI();
            present.add(workspace.clientUri(uri));
            Set<URI> closure = new HashSet<>();
            script.folder().closure(script.resource()).forEach(file -> closure.add(file.getURI()));
            Set<URI> before = closures.put(uri, closure);
            boolean touched = every || before == null || !before.equals(closure) || closure.stream().anyMatch(wanted::contains);
            if (touched) {
                compiled.add(compile(script, () -> cancel.isCanceled() || change != changes.get()));
            }
        }
        return new Round(compiled, present);
    }

    private Compiled compile(ShowWorkspace.Script script, BooleanSupplier overtaken) {
        Earlier known = earlier.computeIfAbsent(script.resource().getURI(), uri -> new Earlier(new CueMemory(), new WiringMemory()));
        LoadedShow loaded = compiler.compile(script.resource(), recordings, known.cues, overtaken);
        Map<String, CheckedText> texts = new LinkedHashMap<>();
        for (XtextResource file : script.folder().closure(script.resource())) {
            texts.put(ProjectRoot.relative(script.folder().root(), ProjectRoot.path(file.getURI())), workspace.textOf(file));
        }
        return new Compiled(script.resource(), known, script.folder(), loaded, workspace.clientUri(script.resource().getURI()), texts);
    }

    private CheckedScript check(Compiled one, BooleanSupplier overtaken) {
        CheckedShow show = ShowPipeline.check(one.loaded, ProjectRoot.path(one.script.getURI()), one.folder.root(), flights, one.earlier.wirings,
                overtaken);
        return new CheckedScript(one.uri, one.folder.root(), show, one.texts);
    }
}
