package org.girandole.plan.rehearse;

/** A night that cannot be rehearsed, in words for the person who described it. */
public class RehearsalException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public RehearsalException(String message) {
        super(message);
    }
}
