package org.girandole.physics.flight;

import org.girandole.physics.Estimate;
import org.girandole.physics.Figures;
import org.girandole.physics.PhysicsInputException;
import org.girandole.physics.Require;

/**
 * What a shell of a calibre usually does, for want of better data. Heights, spreads, diameters and masses are
 * interpolated in the tables of the Japanese trade, where a size is the bore of the mortar in sun (30.3 mm); the ends
 * of the range take in the Western rule of thumb and the disagreement among the tables.
 */
public final class Estimates {
    private static final double SMALLEST_MM = 40;
    private static final double LARGEST_MM = 610;
    private static final double SUN_MM = 30.303;

    /**
     * Columns: size in sun; shell diameter mm; mass kg; burst height m from, to; spread m from, to. From the size pages
     * of hanabi.co.jp; mass and spread of size 10 from hanavigate.com and the diameter from the Japan Pyrotechnics
     * Association booklet of 2022. The two trade tables differ by up to a fifth in spread and a third in mass;
     * the ranges cover that.
     */
    private static final double[][] SIZES = {
            {2.5, 69, 0.12, 80, 90, 50, 60},
            {3, 86, 0.23, 120, 130, 60, 70},
            {4, 114, 0.55, 160, 170, 110, 120},
            {5, 142, 1.1, 190, 200, 150, 160},
            {6, 171, 1.9, 220, 220, 180, 200},
            {7, 199, 2.8, 250, 250, 200, 220},
            {8, 233, 4.3, 280, 280, 250, 260},
            {10, 285, 8.5, 330, 330, 280, 300},
            {20, 570, 52.5, 450, 490, 490, 520},
    };
    private static final double SPREAD_OF_TABLES = 0.2;
    private static final double MASS_OF_TABLES = 0.34;
    /** A shell fills its bore by nine tenths to all of it; the tables sit near 0.94. */
    private static final double SMALLEST_FIT = 0.95;
    private static final String TABLES = "Japanese trade tables by size (hanabi.co.jp, hanavigate.com)";
    /** Burst height per calibre by the Western rule of 100 ft per inch. */
    private static final double WESTERN_M_PER_MM = 1.2;

    /** Columns: calibre in inches, rise in seconds. Common practice, no published source. */
    private static final double[][] RISE_S = {
            {3, 3.0}, {4, 3.5}, {5, 4.0}, {6, 4.75}, {8, 5.75}, {10, 6.5}, {12, 7.0},
    };
    private static final double MM_PER_INCH = 25.4;
    private static final double RISE_LEAST = 0.75;
    /** The long end is about the time to the apex at the tables' heights with quadratic drag, 1.37 to 1.44 times. */
    private static final double RISE_MOST = 1.45;

    private Estimates() {
    }

    /**
     * Burst height in metres.
     *
     * @param calibreMm bore of the mortar in millimetres, 40 to 610
     */
    public static Estimate apexM(double calibreMm) {
        double size = size(calibreMm);
        double least = interpolate(SIZES, size, 3);
        double most = interpolate(SIZES, size, 4);
        double western = WESTERN_M_PER_MM * calibreMm;
        return new Estimate((least + most) / 2, Math.min(least, western), Math.max(most, western), "m",
                TABLES + "; range with the Western 100 ft per inch");
    }

    /** Diameter of the burst in metres. */
    public static Estimate spreadM(double calibreMm) {
        double size = size(calibreMm);
        double least = interpolate(SIZES, size, 5);
        double most = interpolate(SIZES, size, 6);
        return new Estimate((least + most) / 2, least * (1 - SPREAD_OF_TABLES), most * (1 + SPREAD_OF_TABLES), "m",
                TABLES);
    }

    /** Diameter of the shell in millimetres. */
    public static Estimate shellDiameterMm(double calibreMm) {
        double diameter = interpolate(SIZES, size(calibreMm), 1);
        return new Estimate(diameter, SMALLEST_FIT * diameter, calibreMm, "mm", TABLES);
    }

    /** Mass of the shell without its lift charge, in kilograms. */
    public static Estimate massKg(double calibreMm) {
        double mass = interpolateMass(size(calibreMm));
        return new Estimate(mass, mass * (1 - MASS_OF_TABLES), mass * (1 + MASS_OF_TABLES), "kg", TABLES);
    }

    /** Time from firing to burst in microseconds, as an estimate in microseconds. */
    public static Estimate riseUs(double calibreMm) {
        size(calibreMm);
        double inches = calibreMm / MM_PER_INCH;
        double seconds = interpolate(RISE_S, inches, 1);
        double us = Math.rint(seconds * 1e6);
        return new Estimate(us, Math.rint(us * RISE_LEAST), Math.rint(us * RISE_MOST), "us",
                "usual rise by calibre, common practice without a published source");
    }

    private static double size(double calibreMm) {
        Require.positive(calibreMm, "calibre", "mm");
        if (calibreMm < SMALLEST_MM || calibreMm > LARGEST_MM) {
            throw new PhysicsInputException("the calibre is " + Figures.of(calibreMm) + " mm and no data is given",
                    "a calibre of 40 mm to 610 mm for an estimate", "give rise, apex and spread of the effect");
        }
        return calibreMm / SUN_MM;
    }

    /** Piecewise linear; in proportion below the first row, the last piece run on above the last. */
    private static double interpolate(double[][] rows, double x, int column) {
        if (x < rows[0][0]) {
            return rows[0][column] * x / rows[0][0];
        }
        int upper = upperRow(rows, x);
        double[] a = rows[upper - 1];
        double[] b = rows[upper];
        return a[column] + (b[column] - a[column]) * (x - a[0]) / (b[0] - a[0]);
    }

    /** As a power law between the rows and below the first, where a mass goes with the cube of the size. */
    private static double interpolateMass(double size) {
        if (size < SIZES[0][0]) {
            return SIZES[0][2] * StrictMath.pow(size / SIZES[0][0], 3);
        }
        int upper = upperRow(SIZES, size);
        double[] a = SIZES[upper - 1];
        double[] b = SIZES[upper];
        double share = StrictMath.log(size / a[0]) / StrictMath.log(b[0] / a[0]);
        return a[2] * StrictMath.pow(b[2] / a[2], share);
    }

    private static int upperRow(double[][] rows, double x) {
        int upper = 1;
        while (upper < rows.length - 1 && rows[upper][0] < x) {
            upper++;
        }
        return upper;
    }
}
