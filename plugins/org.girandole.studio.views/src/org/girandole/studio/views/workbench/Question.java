package org.girandole.studio.views.workbench;

import java.util.concurrent.CompletableFuture;
import java.util.function.Consumer;
import java.util.function.Function;
import org.eclipse.swt.widgets.Display;

/** A question that is asked again and again: one is on its way at a time, and of those that come meanwhile only the last is asked. */
final class Question<Q, A> {
    private final Display display;
    private final Function<Q, CompletableFuture<A>> send;
    private final Consumer<A> use;
    private boolean waiting;
    private Q next;

    /** @param use takes the answer on the display's thread; an answer of null means ask again later, and is not passed on */
    Question(Display display, Function<Q, CompletableFuture<A>> send, Consumer<A> use) {
        this.display = display;
        this.send = send;
        this.use = use;
    }

    void ask(Q question) {
        if (waiting) {
            next = question;
            return;
        }
        waiting = true;
        send.apply(question).whenComplete((answer, failure) -> {
            if (!display.isDisposed()) {
                display.asyncExec(() -> answered(answer));
            }
        });
    }

    private void answered(A answer) {
        waiting = false;
        if (answer != null && next == null) {
            use.accept(answer);
        }
        if (next != null) {
            Q question = next;
            next = null;
            ask(question);
        }
    }
}
