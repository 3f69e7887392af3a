package org.girandole.physics.circuit;

/** How a conductor is built; the constant names follow IEC 60228. */
public enum Strands {
    /** One wire, class 1. */
    SOLID("class 1"),
    /** Stranded for fixed wiring, class 2. */
    STRANDED("class 2"),
    /** Fine-stranded, flexible, class 5. */
    FLEXIBLE("class 5");

    private final String iecClass;

    Strands(String iecClass) {
        this.iecClass = iecClass;
    }

    /** The class of IEC 60228 in words. */
    public String iecClass() {
        return iecClass;
    }
}
