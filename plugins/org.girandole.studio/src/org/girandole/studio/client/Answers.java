package org.girandole.studio.client;

import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ExecutionException;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.girandole.studio.StudioPlugin;

/** How the server says that an answer is not worth giving any more. */
final class Answers {
    private Answers() {
    }

    /** Whether a later change of the text has overtaken a request: ask again, do not complain. */
    static boolean cancelled(Throwable problem) {
        Throwable cause = cause(problem);
        if (cause instanceof ResponseErrorException error) {
            int code = error.getResponseError().getCode();
            return code == ResponseErrorCode.RequestCancelled.getValue() || code == ResponseErrorCode.ContentModified.getValue();
        }
        return cause instanceof CancellationException || "OperationCanceledException".equals(cause.getClass().getSimpleName())
                || "OperationCanceledError".equals(cause.getClass().getSimpleName());
    }

    /** Why the server refuses what the user wants, in words for the user. */
    static Optional<String> refusal(Throwable problem) {
        return cause(problem) instanceof ResponseErrorException error && error.getResponseError().getCode() == ResponseErrorCode.InvalidParams.getValue()
                ? Optional.of(error.getResponseError().getMessage()) : Optional.empty();
    }

    /** No answer; what was not overtaken is a mishap for the log. */
    static <T> T none(Throwable problem) {
        if (!cancelled(problem)) {
            StudioPlugin.log("A request to the language server failed.", problem);
        }
        return null;
    }

    private static Throwable cause(Throwable problem) {
        Throwable cause = problem;
        while ((cause instanceof CompletionException || cause instanceof ExecutionException) && cause.getCause() != null) {
            cause = cause.getCause();
        }
        return cause;
    }
}
