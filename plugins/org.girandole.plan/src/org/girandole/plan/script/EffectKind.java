package org.girandole.plan.script;

/** The kinds of effect, by how they leave the ground. */
public enum EffectKind {
    /** Rises from a tube and bursts. */
    SHELL("shell", true),
    /** A shell whose main effect is the report. */
    SALUTE("salute", true),
    /** Throws its stars from the tube's mouth. */
    MINE("mine", true),
    /** One burning star that rises from a tube. */
    COMET("comet", true),
    /** One tube, several shots one after another; brings its own tube. */
    CANDLE("candle", false),
    /** A box of many tubes fused together. */
    CAKE("cake", false),
    /** A steady spray from the ground. */
    FOUNTAIN("fountain", false),
    /** Turns on an axle. */
    WHEEL("wheel", false),
    /** A steady light. */
    FLARE("flare", false),
    /** Flies by its own motor from a launcher of its own. */
    ROCKET("rocket", false);

    private final String word;
    private final boolean needsTube;

    EffectKind(String word, boolean needsTube) {
        this.word = word;
        this.needsTube = needsTube;
    }

    /** The keyword of the language and the word on sheets. */
    public String word() {
        return word;
    }

    /** Whether it must be loaded into a tube of a rack. The others stand by themselves. */
    public boolean needsTube() {
        return needsTube;
    }

    /** Whether it has a burst above the ground that comes after the firing. */
    public boolean rises() {
        return this == SHELL || this == SALUTE || this == ROCKET;
    }
}
