package org.girandole.physics.separation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;

import org.girandole.physics.geometry.Disc;
import org.girandole.physics.geometry.Point2;
import org.girandole.physics.geometry.Polygon;
import org.girandole.physics.geometry.Polyline;
import org.girandole.physics.geometry.Shape;
import org.junit.jupiter.api.Test;

class SeparationCheckTest {
    private static final DistanceTable GERMAN = ShippedTables.named("GermanTable").orElseThrow();
    private static final DistanceTable US = ShippedTables.named("UsTable").orElseThrow();
    private static final Point2 ORIGIN = new Point2(0, 0);
    private static final Polyline AUDIENCE_90_M_SOUTH = new Polyline(List.of(new Point2(-200, -90), new Point2(200, -90)));
    /** 100 mm, burst 120 m. */
    private static final FiringCase SHELL = FiringCase.of(ArticleKind.SHELL).with(Quantity.CALIBRE, 0.1)
            .with(Quantity.HEIGHT, 120);

    @Test
    void uprightAtNinetyMetres() {
        // 1. SprengV Annex 6 no. 3.3.2: 96 m; 70 ft per inch: 84 m
        var german = SeparationCheck.of(GERMAN, SHELL, ORIGIN, AUDIENCE_90_M_SOUTH);
        assertThat(german.holds()).isFalse();
        assertThat(german.requirement().metres().orElseThrow()).isCloseTo(96, within(1e-9));
        assertThat(german.foundM()).isEqualTo(90);
        assertThat(german.shortM().orElseThrow()).isCloseTo(6, within(1e-9));
        assertThat(german.at()).isEqualTo(new Point2(0, -90));
        var us = SeparationCheck.of(US, SHELL, ORIGIN, AUDIENCE_90_M_SOUTH);
        assertThat(us.holds()).isTrue();
        assertThat(us.shortM()).contains(0.0);
    }

    @Test
    void tiltedTenDegreesTowardsTheAudience() {
        var check = SeparationCheck.of(GERMAN, SHELL.tilted(10, 180), ORIGIN, AUDIENCE_90_M_SOUTH);
        assertThat(check.requirement().metres().orElseThrow()).isCloseTo(134.4, within(1e-9));
        assertThat(check.shortM().orElseThrow()).isCloseTo(44.4, within(1e-9));
    }

    @Test
    void aSidewaysLeanCountsWhereTheLineIsReachedInItsSector() {
        // leaning east: the line enters the sector at azimuth 90 + 60 = 150, 90 / cos(30 deg) away
        var check = SeparationCheck.of(GERMAN, SHELL.tilted(10, 90), ORIGIN, AUDIENCE_90_M_SOUTH);
        assertThat(check.requirement().metres().orElseThrow()).isCloseTo(134.4, within(1e-9));
        assertThat(check.foundM()).isCloseTo(90 / Math.cos(Math.toRadians(30)), within(1e-9));
    }

    @Test
    void aDiscBesideTheSectorIsMeasuredToItsEdge() {
        var dock = new Disc(new Point2(200, 0), 30);
        var check = SeparationCheck.of(GERMAN, SHELL, ORIGIN, dock);
        assertThat(check.foundM()).isCloseTo(170, within(0.002)).isLessThanOrEqualTo(170);
        // wind from the north leaves the dock across the wind: no change
        assertThat(SeparationCheck.of(GERMAN, SHELL.inWind(0, 11), ORIGIN, dock).requirement().metres().orElseThrow())
                .isCloseTo(96, within(1e-9));
        assertThat(SeparationCheck.of(GERMAN, SHELL.inWind(270, 11), ORIGIN, dock).requirement().metres().orElseThrow())
                .isCloseTo(192, within(1e-9));
    }

    @Test
    void insideTheShapeTheDistanceIsNothing() {
        var square = new Polygon(List.of(new Point2(-50, -50), new Point2(50, -50), new Point2(50, 50), new Point2(-50, 50)));
        var check = SeparationCheck.of(GERMAN, SHELL.tilted(10, 90), ORIGIN, square);
        assertThat(check.foundM()).isZero();
        assertThat(check.requirement().metres().orElseThrow()).isCloseTo(134.4, within(1e-9));
        assertThat(check.holds()).isFalse();
    }

    @Test
    void anAssessmentIsWorseThanAnyShortfall() {
        var check = SeparationCheck.of(GERMAN, SHELL.tilted(25, 180), ORIGIN, AUDIENCE_90_M_SOUTH);
        assertThat(check.requirement().assessmentNeeded()).isTrue();
        assertThat(check.shortM()).isEmpty();
        assertThat(check.holds()).isFalse();
    }

    @Test
    void agreesWithAskingManyPointsOfTheShape() {
        var random = new Random(20);
        for (int trial = 0; trial < 60; trial++) {
            var from = new Point2(random.nextDouble() * 100 - 50, random.nextDouble() * 100);
            var firing = SHELL.tilted(random.nextInt(20), random.nextInt(360)).inWind(random.nextInt(360), 6 + random.nextInt(9));
            var line = new Polyline(List.of(new Point2(-150, -80), new Point2(40, -110), new Point2(180, -30)));
            var check = SeparationCheck.of(GERMAN, firing, from, line);
            double worst = worstByPoints(firing, from, line);
            assertThat(check.requirement().metres().orElseThrow() - check.foundM()).as("trial %s", trial)
                    .isCloseTo(worst, within(1.0)).isGreaterThanOrEqualTo(worst - 1e-6);
        }
    }

    private static double worstByPoints(FiringCase firing, Point2 from, Shape line) {
        double worst = Double.NEGATIVE_INFINITY;
        var segments = ((Polyline) line).segments();
        for (var segment : segments) {
            for (int i = 0; i <= 1000; i++) {
                double share = i / 1000.0;
                var point = new Point2(segment.from().x() + share * (segment.to().x() - segment.from().x()),
                        segment.from().y() + share * (segment.to().y() - segment.from().y()));
                var requirement = GERMAN.evaluate(firing.towards(from.azimuthDegTo(point)));
                worst = Math.max(worst, requirement.metres().orElseThrow() - from.distanceM(point));
            }
        }
        return worst;
    }
}
