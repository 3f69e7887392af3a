package org.girandole.studio.client;

import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.function.BiConsumer;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.services.LanguageServer;
import org.eclipse.swt.widgets.Display;

/**
 * What a person has asked about a place of a text. A change of this or another open text does not lose the question: it is asked again about the
 * place, wherever that is now, as long as it is there. On the display's thread.
 *
 * @param <T> the answer
 */
public final class PlaceQuestion<T> {
    private static final String LOST = "The text has changed meanwhile; nothing was done. Try again.";

    private final OpenText text;
    private final Position place;
    private final boolean named;
    private final Optional<String> name;
    private final BiFunction<LanguageServer, Range, CompletableFuture<T>> question;
    private final Display display = Display.getCurrent();

    private PlaceQuestion(OpenText text, int offset, int length, boolean named, BiFunction<LanguageServer, Range, CompletableFuture<T>> question) {
        this.text = text;
        this.place = new Position(offset, length);
        this.named = named;
        this.name = written();
        this.question = question;
    }

    /** About a name: no longer, when another stands there. */
    public static <T> PlaceQuestion<T> ofName(OpenText text, int offset, int length,
            BiFunction<LanguageServer, Range, CompletableFuture<T>> question) {
        return new PlaceQuestion<>(text, offset, length, true, question);
    }

    /** About a place, whatever stands there. */
    public static <T> PlaceQuestion<T> of(OpenText text, int offset, int length, BiFunction<LanguageServer, Range, CompletableFuture<T>> question) {
        return new PlaceQuestion<>(text, offset, length, false, question);
    }

    /**
     * Asks until there is an answer to the texts as they are.
     *
     * @param taken takes the answer, which may be null, and the texts that it is about
     * @param failed takes the reason, in words for the user
     */
    public void ask(BiConsumer<T, KnownTexts> taken, Consumer<String> failed) {
        try {
            text.document().addPosition(place);
            ask(taken, failed, ShowClient.MOST_TRIES);
        } catch (BadLocationException e) {
            failed.accept(LOST);
        }
    }

    private void ask(BiConsumer<T, KnownTexts> taken, Consumer<String> failed, int tries) {
        if (tries == 0 || place.isDeleted() || named && !name.equals(written())) {
            done(() -> failed.accept(LOST));
            return;
        }
        KnownTexts asked = KnownTexts.now();
        Range range = Positions.range(text.document(), place.getOffset(), place.getLength());
        ShowClient.get().attempt(server -> question.apply(server, range)).whenComplete((answer, problem) -> display.asyncExec(() -> {
            if (!asked.isStill() || problem != null && Answers.cancelled(problem)) {
                ask(taken, failed, tries - 1);
            } else if (problem != null && Answers.refusal(problem).isPresent()) {
                done(() -> failed.accept(Answers.refusal(problem).get()));
            } else {
                T value = problem == null ? answer : Answers.none(problem);
                done(() -> taken.accept(value, asked));
            }
        }));
    }

    private void done(Runnable end) {
        text.document().removePosition(place);
        end.run();
    }

    private Optional<String> written() {
        return Positions.word(text.document(), place.getOffset()).map(region -> Positions.text(text.document(), region));
    }
}
