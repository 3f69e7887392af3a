package org.girandole.plan.table;

/** A table layout that cannot be filled. The message is for the user. */
public final class TableException extends RuntimeException {
    private static final long serialVersionUID = 1;

    public TableException(String message) {
        super(message);
    }
}
