package org.girandole.physics.separation;

/** The kinds of article that tables tell apart. */
public enum ArticleKind {
    /** An aerial shell whose effect is stars. */
    SHELL("shell"),
    /** An aerial shell whose main effect is the report. */
    SALUTE("report shell"),
    /** Throws its contents from the tube's mouth. */
    MINE("mine"),
    /** One burning star that rises from a tube. */
    COMET("comet"),
    /** One tube, several shots. */
    CANDLE("candle"),
    /** A battery of tubes fused together. */
    CAKE("cake"),
    /** A steady spray from the ground. */
    FOUNTAIN("fountain"),
    /** Turns on an axle. */
    WHEEL("wheel"),
    /** A steady light. */
    FLARE("flare"),
    /** Flies by its own motor. */
    ROCKET("rocket");

    private final String word;

    ArticleKind(String word) {
        this.word = word;
    }

    /** The word for it in messages. */
    public String word() {
        return word;
    }
}
