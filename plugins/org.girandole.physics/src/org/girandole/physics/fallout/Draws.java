package org.girandole.physics.fallout;

/**
 * Random numbers by counter: the draw depends on seed, key, sample and its place in the sample alone, never on which
 * thread asks or in what order. The mixing is the finaliser of SplitMix64 (Steele, Lea, Flood 2014).
 */
final class Draws {
    static final long GOLDEN = 0x9E3779B97F4A7C15L;
    private static final double UNIT = 0x1.0p-53;

    private final long stream;
    private long counter;

    /**
     * @param seed the seed of the run
     * @param key names the article, place and tilt; the same key gives the same scatter whatever else is in the show
     */
    Draws(long seed, String key) {
        long hash = mix(seed + GOLDEN);
        for (int i = 0; i < key.length(); i++) {
            hash = mix((hash ^ key.charAt(i)) + GOLDEN);
        }
        stream = hash;
    }

    /** Begins the draws of a sample's flight. */
    void sample(int index) {
        counter = mix(stream + GOLDEN * (2L * index + 1));
    }

    /** Begins the draws of a sample's debris. */
    void piece(int index) {
        counter = mix(stream + GOLDEN * (2L * index + 2));
    }

    /** The next number, above 0 and below 1. */
    double uniform() {
        counter += GOLDEN;
        return ((mix(counter) >>> 11) + 0.5) * UNIT;
    }

    /** The next number of a standard normal distribution. */
    double normal() {
        return NormalQuantile.of(uniform());
    }

    static long mix(long z) {
        long a = (z ^ z >>> 30) * 0xBF58476D1CE4E5B9L;
        long b = (a ^ a >>> 27) * 0x94D049BB133111EBL;
        return b ^ b >>> 31;
    }
}
