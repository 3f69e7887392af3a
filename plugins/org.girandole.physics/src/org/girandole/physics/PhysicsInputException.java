package org.girandole.physics;

/**
 * Input from which nothing sensible can be computed. The message says what was found, what was expected, and how to
 * mend it; it is meant for the user as it stands.
 */
public final class PhysicsInputException extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    /**
     * @param found what was found, with its unit, as a clause ("the calibre is -75 mm")
     * @param expected what would have been right ("a calibre above 0 mm")
     * @param cure how to mend it ("give the calibre of the shell"), a clause that follows "; "
     */
    public PhysicsInputException(String found, String expected, String cure) {
        super(found + "; expected " + expected + "; " + cure);
    }
}
