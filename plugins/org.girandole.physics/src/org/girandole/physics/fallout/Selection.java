package org.girandole.physics.fallout;

/** The k-th smallest of some numbers, without putting all in order: algorithm FIND of C. A. R. Hoare (1961). */
final class Selection {
    private Selection() {
    }

    /**
     * Moves the smaller of {@code values} before the place {@code k}, the larger behind it; what is then at that place
     * is returned. Only values from {@code from} on are looked at; those before must be the smallest already.
     */
    static double place(double[] values, int from, int k) {
        int low = from;
        int high = values.length - 1;
        while (low < high) {
            double pivot = middle(values[low], values[(low + high) >>> 1], values[high]);
            int i = low;
            int j = high;
            while (i <= j) {
                while (values[i] < pivot) {
                    i++;
                }
                while (values[j] > pivot) {
                    j--;
                }
                if (i <= j) {
                    double value = values[i];
                    values[i++] = values[j];
                    values[j--] = value;
                }
            }
            if (k <= j) {
                high = j;
            } else if (k >= i) {
                low = i;
            } else {
                return values[k];
            }
        }
        return values[k];
    }

    private static double middle(double a, double b, double c) {
        return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
    }
}
