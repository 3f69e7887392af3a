package org.girandole.physics.separation;

/** In which direction from the firing place a rule holds. */
public enum Where {
    /** In every direction. */
    EVERYWHERE(""),
    /** Where the tube leans. An upright tube, or one whose lean is not known, counts as leaning everywhere. */
    TOWARDS_TILT("in the direction of the tilt"),
    /** Opposite to where the tube leans. */
    AGAINST_TILT("opposite to the tilt"),
    /** Where the wind blows to. Wind whose direction is not known counts as blowing everywhere. */
    DOWNWIND("downwind"),
    /** Where the wind comes from. */
    UPWIND("upwind");

    private final String words;

    Where(String words) {
        this.words = words;
    }

    /** The words for it in messages, empty for everywhere. */
    public String words() {
        return words;
    }
}
