package org.girandole.studio.client;

import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import org.eclipse.swt.widgets.Display;
import org.girandole.studio.StudioPlugin;

/**
 * The only place that waits for an answer of the server. It keeps account of waits on the display's thread: none of them may be longer
 * than {@link #SHORT_MS}, whatever its caller asks for.
 */
public final class Waiting {
    /** The longest that the display's thread ever waits. */
    public static final int SHORT_MS = 80;
    /** For threads that nobody looks at: content assist, hovers, reconciling. */
    public static final int LONG_MS = 5_000;

    private static final AtomicInteger TOO_LONG = new AtomicInteger();
    private static final AtomicLong LONGEST_ASKED_MS = new AtomicLong();

    private Waiting() {
    }

    /** The answer, or empty when it did not come in time, was cancelled, or is null. */
    public static <T> Optional<T> of(Future<T> answer, int limitMs) {
        int limit = limitMs;
        if (Display.getCurrent() != null) {
            LONGEST_ASKED_MS.accumulateAndGet(limitMs, Math::max);
            if (limitMs > SHORT_MS) {
                TOO_LONG.incrementAndGet();
                limit = SHORT_MS;
            }
        }
        try {
            return Optional.ofNullable(answer.get(limit, TimeUnit.MILLISECONDS));
        } catch (TimeoutException | CancellationException e) {
            return Optional.empty();
        } catch (InterruptedException e) {
            // The popup that wanted the answer was closed.
            Thread.currentThread().interrupt();
            answer.cancel(true);
            return Optional.empty();
        } catch (ExecutionException e) {
            if (!Answers.cancelled(e)) {
                StudioPlugin.log("A request to the language server failed.", e.getCause());
            }
            return Optional.empty();
        }
    }

    /** How often the display's thread was to wait for longer than it may. */
    public static int tooLong() {
        return TOO_LONG.get();
    }

    /** The longest wait that was asked of the display's thread, in milliseconds. */
    public static long longestAskedMs() {
        return LONGEST_ASKED_MS.get();
    }
}
