package org.girandole.physics.separation;

/** Yes-or-no facts about a firing that tables ask for. A fact not stated is no. */
public enum Flag {
    /** The main effect is a report; true of every report shell without being stated. */
    REPORT("report as main effect"),
    /** A day shell without burning effect. */
    DAY_EFFECT("day effect without fire"),
    /** A shell that breaks softly and lets its contents fall; others are taken as hard breaking. */
    SOFT_BREAK("soft break"),
    /** A chain of shells in a rack whose strength is not proved. */
    CHAIN_IN_UNPROVED_RACK("chain-fused in a rack of unproved strength"),
    /** A piece that is driven or has wings: a large wheel, a winged piece. */
    LARGE_DRIVER("large driver or wings"),
    /** Made for use on water. */
    WATER("used on water"),
    /** What is to be protected is a hospital, a place of detention, or bulk storage of dangerous goods. */
    SPECIAL_OCCUPANCY("special occupancy");

    private final String word;

    Flag(String word) {
        this.word = word;
    }

    /** The words for it in messages. */
    public String word() {
        return word;
    }
}
