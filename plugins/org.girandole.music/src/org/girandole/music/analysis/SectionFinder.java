package org.girandole.music.analysis;

import java.util.ArrayList;
import java.util.List;

/**
 * Divides a track into sections by self-similarity: a checkerboard kernel slid along the diagonal of the similarity matrix
 * of bars shows where the music before differs from the music after (J. Foote, Automatic audio segmentation using a measure
 * of audio novelty, ICME 2000). Bars are compared by pitch classes, spectral shape and level.
 */
final class SectionFinder {
    private static final int KERNEL = 8;
    private static final int LEAST_SPANS = 4;
    private static final double CLEAR = 0.12;
    private static final double ALIKE = 0.35;
    private static final long SPAN_WITHOUT_BARS_US = 2_000_000;

    private SectionFinder() {
    }

    /** @param barLines moments of the bar lines, or none */
    static List<Section> find(Features f, List<Long> barLines) {
        List<Long> edges = edges(f, barLines);
        double[][] spans = new double[edges.size() - 1][];
        for (int i = 0; i < spans.length; i++) {
            spans[i] = vector(f, edges.get(i), edges.get(i + 1));
        }
        standardise(spans);
        double[] novelty = novelty(spans);
        List<Integer> cuts = peaks(novelty);
        List<Section> sections = new ArrayList<>();
        List<double[]> known = new ArrayList<>();
        for (int i = 0; i < cuts.size(); i++) {
            int from = cuts.get(i);
            int to = i + 1 < cuts.size() ? cuts.get(i + 1) : spans.length;
            String label = label(known, mean(spans, from, to));
            long start = i == 0 ? 0 : edges.get(from);
            long end = i + 1 < cuts.size() ? edges.get(to) : f.lengthUs();
            sections.add(new Section(start, end, label, i == 0 ? 1 : Math.min(1, novelty[from])));
        }
        return sections;
    }

    private static List<Long> edges(Features f, List<Long> barLines) {
        List<Long> edges = new ArrayList<>();
        edges.add(0L);
        if (barLines.size() >= 2) {
            barLines.stream().filter(t -> t > 0 && t < f.lengthUs()).forEach(edges::add);
        } else {
            for (long t = SPAN_WITHOUT_BARS_US; t < f.lengthUs(); t += SPAN_WITHOUT_BARS_US) {
                edges.add(t);
            }
        }
        edges.add(Math.max(f.lengthUs(), edges.get(edges.size() - 1) + 1));
        return edges;
    }

    private static double[] vector(Features f, long fromUs, long toUs) {
        int bands = f.timbre().length == 0 ? 0 : f.timbre()[0].length;
        double[] v = new double[12 + bands + 1];
        int from = (int) Math.min(f.chroma().length, fromUs / Features.SLOW_STEP_US);
        int to = (int) Math.max(from, Math.min(f.chroma().length, toUs / Features.SLOW_STEP_US));
        for (int i = from; i < to; i++) {
            for (int c = 0; c < 12; c++) {
                v[c] += f.chroma()[i][c] / (to - from);
            }
            for (int b = 0; b < bands; b++) {
                v[12 + b] += f.timbre()[i][b] / (to - from);
            }
            int n = Math.min(f.size() - 1, i * Features.RATE / Features.SLOW_RATE);
            v[12 + bands] += f.level()[n] / (to - from);
        }
        return v;
    }

    /** Each part of the vectors gets mean 0 and deviation 1; the level, which is one number for all, counts as much as six. */
    private static void standardise(double[][] spans) {
        int width = spans[0].length;
        for (int k = 0; k < width; k++) {
            double mean = 0;
            double squares = 0;
            for (double[] span : spans) {
                mean += span[k] / spans.length;
                squares += span[k] * span[k] / spans.length;
            }
            double deviation = Math.sqrt(Math.max(1e-9, squares - mean * mean));
            double weight = k == width - 1 ? 2.5 : 1;
            for (double[] span : spans) {
                span[k] = (span[k] - mean) / deviation * weight;
            }
        }
    }

    private static double similarity(double[] a, double[] b) {
        double both = 0;
        double aa = 1e-9;
        double bb = 1e-9;
        for (int k = 0; k < a.length; k++) {
            both += a[k] * b[k];
            aa += a[k] * a[k];
            bb += b[k] * b[k];
        }
        return both / Math.sqrt(aa * bb);
    }

    /** Similarity within the two sides less that across, weighted towards the middle; 0 to about 1. */
    private static double[] novelty(double[][] spans) {
        double[] novelty = new double[spans.length];
        for (int i = 1; i < spans.length; i++) {
            int reach = Math.min(KERNEL, Math.min(i, spans.length - i));
            double sum = 0;
            double weights = 0;
            for (int a = -reach; a < reach; a++) {
                for (int b = -reach; b < reach; b++) {
                    double x = (a + 0.5) / KERNEL;
                    double y = (b + 0.5) / KERNEL;
                    double w = Math.exp(-2 * (x * x + y * y));
                    sum += (a < 0) == (b < 0) ? w * similarity(spans[i + a], spans[i + b]) : -w * similarity(spans[i + a], spans[i + b]);
                    weights += w;
                }
            }
            novelty[i] = Math.max(0, sum / weights) * Math.min(1, (double) reach / LEAST_SPANS);
        }
        return novelty;
    }

    private static List<Integer> peaks(double[] novelty) {
        List<Integer> cuts = new ArrayList<>();
        cuts.add(0);
        for (int i = 2; i < novelty.length - 1; i++) {
            boolean most = novelty[i] >= CLEAR;
            for (int d = -LEAST_SPANS + 1; d < LEAST_SPANS && most; d++) {
                int j = i + d;
                most = j < 0 || j >= novelty.length || novelty[j] < novelty[i] || j == i || novelty[j] == novelty[i] && j > i;
            }
            if (most) {
                cuts.add(i);
            }
        }
        return cuts;
    }

    private static double[] mean(double[][] spans, int from, int to) {
        double[] mean = new double[spans[0].length];
        for (int i = from; i < to; i++) {
            for (int k = 0; k < mean.length; k++) {
                mean[k] += spans[i][k] / (to - from);
            }
        }
        return mean;
    }

    private static String label(List<double[]> known, double[] mean) {
        int best = -1;
        double most = ALIKE;
        for (int i = 0; i < known.size(); i++) {
            double alike = similarity(known.get(i), mean);
            if (alike > most) {
                most = alike;
                best = i;
            }
        }
        if (best < 0) {
            known.add(mean);
            best = known.size() - 1;
        }
        return best < 26 ? String.valueOf((char) ('A' + best)) : "Z" + best;
    }
}
