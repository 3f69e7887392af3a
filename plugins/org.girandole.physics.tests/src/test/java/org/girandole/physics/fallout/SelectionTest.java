package org.girandole.physics.fallout;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.function.IntToDoubleFunction;

import org.junit.jupiter.api.Test;

/** Held against the sorting of the JDK. */
class SelectionTest {
    private static final int[] SIZES = {1, 2, 3, 10, 101, 1000};

    private static void placesAreThoseOfTheSorted(IntToDoubleFunction value) {
        for (int n : SIZES) {
            double[] values = new double[n];
            Arrays.setAll(values, value);
            double[] sorted = values.clone();
            Arrays.sort(sorted);
            int done = 0;
            for (int k : new int[] {0, n / 4, n / 2, n * 9 / 10, n - 1}) {
                assertThat(Selection.place(values, done, k)).as("place %s of %s", k, n).isEqualTo(sorted[k]);
                assertThat(Arrays.stream(values, 0, k).allMatch(v -> v <= sorted[k])).isTrue();
                done = k;
            }
            Arrays.sort(values);
            assertThat(values).as("nothing lost").isEqualTo(sorted);
        }
    }

    @Test
    void ofRandomNumbers() {
        var random = new SplittableRandom(3);
        placesAreThoseOfTheSorted(i -> random.nextDouble());
    }

    @Test
    void ofFewDifferentNumbers() {
        var random = new SplittableRandom(4);
        placesAreThoseOfTheSorted(i -> random.nextInt(3));
    }

    @Test
    void ofEqualRisingAndFallingNumbers() {
        placesAreThoseOfTheSorted(i -> 7);
        placesAreThoseOfTheSorted(i -> i);
        placesAreThoseOfTheSorted(i -> -i);
        placesAreThoseOfTheSorted(i -> Math.abs(i - 500));
    }
}
