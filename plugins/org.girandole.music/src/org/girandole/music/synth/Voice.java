package org.girandole.music.synth;

/** One note as it sounds. */
interface Voice {
    /**
     * Adds its next samples to what is there.
     *
     * @param to where to add them, from {@code from} to the end
     * @return whether it goes on sounding after them
     */
    boolean addTo(double[] to, int from);
}
