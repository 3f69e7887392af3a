package org.girandole.lang.ide.server;

import com.google.inject.Singleton;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;

/**
 * Where the server puts what its checks have found, for everything that shows plans and findings. All methods may be called from any
 * thread.
 */
@Singleton
public final class ShowBoard {
    private final Map<String, CheckedScript> scripts = new LinkedHashMap<>();
    private final List<Waiting> waiting = new ArrayList<>();
    private final List<Consumer<CheckedScript>> listeners = new CopyOnWriteArrayList<>();
    private boolean current;

    private record Waiting(String uri, CompletableFuture<Optional<CheckedScript>> answer) {
    }

    /**
     * What was last found about a file: the check of the show in it, else of the first show that uses it, else of the file alone. The
     * text may have changed since.
     */
    public Optional<CheckedScript> latest(String uri) {
        synchronized (scripts) {
            return find(uri);
        }
    }

    /** As {@link #latest}, of the text as it stands now; completes when the check has caught up. Empty when there is no such file. */
    public CompletableFuture<Optional<CheckedScript>> fresh(String uri) {
        synchronized (scripts) {
            if (current) {
                return CompletableFuture.completedFuture(find(uri));
            }
            Waiting one = new Waiting(uri, new CompletableFuture<>());
            waiting.add(one);
            return one.answer;
        }
    }

    /** All scripts that hold a show, in the order of their URIs. */
    public List<CheckedScript> shows() {
        synchronized (scripts) {
            return scripts.values().stream().filter(ShowBoard::holdsShow)
                    .sorted((a, b) -> a.uri().compareTo(b.uri())).toList();
        }
    }

    /** Whoever wants to hear of each finished check of a script. */
    public void onChecked(Consumer<CheckedScript> listener) {
        listeners.add(listener);
    }

    /** The text has changed; a check is on its way. */
    void outdated() {
        synchronized (scripts) {
            current = false;
        }
    }

    /**
     * A check has finished, and nothing has changed since it began.
     *
     * @param tell what has to be done before those who wait for the check go on
     */
    void post(Collection<CheckedScript> checked, Collection<String> gone, Runnable tell) {
        List<Waiting> served;
        Map<Waiting, Optional<CheckedScript>> answers = new LinkedHashMap<>();
        synchronized (scripts) {
            gone.forEach(scripts::remove);
            checked.forEach(script -> scripts.put(script.uri(), script));
            current = true;
            served = List.copyOf(waiting);
            waiting.clear();
            served.forEach(one -> answers.put(one, find(one.uri)));
        }
        // Not while holding the lock: what is done with an answer is not ours.
        tell.run();
        checked.forEach(script -> listeners.forEach(listener -> listener.accept(script)));
        answers.forEach((one, answer) -> one.answer.complete(answer));
    }

    /** No check will come any more. */
    void close() {
        List<Waiting> left;
        synchronized (scripts) {
            left = List.copyOf(waiting);
            waiting.clear();
        }
        left.forEach(one -> one.answer.cancel(false));
    }

    List<CheckedScript> all() {
        synchronized (scripts) {
            return List.copyOf(scripts.values());
        }
    }

    private Optional<CheckedScript> find(String uri) {
        String wanted = ScriptUris.client(uri);
        Optional<CheckedScript> own = scripts.values().stream().filter(script -> ScriptUris.client(script.uri()).equals(wanted)).findFirst();
        if (own.filter(ShowBoard::holdsShow).isPresent()) {
            return own;
        }
        return scripts.values().stream().filter(ShowBoard::holdsShow)
                .filter(script -> script.texts().values().stream().anyMatch(text -> ScriptUris.client(text.uri()).equals(wanted)))
                .min((a, b) -> a.uri().compareTo(b.uri())).or(() -> own);
    }

    private static boolean holdsShow(CheckedScript script) {
        return script.show().loaded().script().isPresent();
    }
}
