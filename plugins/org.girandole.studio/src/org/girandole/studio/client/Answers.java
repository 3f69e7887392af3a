package org.girandole.studio.client;

import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ExecutionException;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;

/** How the server says that an answer is not worth giving any more. */
final class Answers {
    private Answers() {
    }

    /** Whether a later change of the text has overtaken a request: ask again, do not complain. */
    static boolean cancelled(Throwable problem) {
        Throwable cause = problem;
        while ((cause instanceof CompletionException || cause instanceof ExecutionException) && cause.getCause() != null) {
            cause = cause.getCause();
        }
        if (cause instanceof ResponseErrorException error) {
            int code = error.getResponseError().getCode();
            return code == ResponseErrorCode.RequestCancelled.getValue() || code == ResponseErrorCode.ContentModified.getValue();
        }
        return cause instanceof CancellationException || "OperationCanceledException".equals(cause.getClass().getSimpleName())
                || "OperationCanceledError".equals(cause.getClass().getSimpleName());
    }
}
