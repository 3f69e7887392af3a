package org.girandole.physics.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;

import org.girandole.physics.PhysicsInputException;
import org.junit.jupiter.api.Test;

/** Figures checked by hand: 3-4-5 triangles, squares, and right angles. */
class GeometryTest {
    private static final Polygon SQUARE = new Polygon(List.of(p(0, 0), p(10, 0), p(10, 10), p(0, 10)));
    /** A U open to the north. */
    private static final Polygon U = new Polygon(
            List.of(p(0, 0), p(9, 0), p(9, 9), p(6, 9), p(6, 3), p(3, 3), p(3, 9), p(0, 9)));

    private static Point2 p(double x, double y) {
        return new Point2(x, y);
    }

    @Test
    void azimuthsAreClockwiseFromNorth() {
        assertThat(p(0, 0).azimuthDegTo(p(0, 5))).isEqualTo(0);
        assertThat(p(0, 0).azimuthDegTo(p(5, 0))).isEqualTo(90);
        assertThat(p(0, 0).azimuthDegTo(p(0, -5))).isEqualTo(180);
        assertThat(p(0, 0).azimuthDegTo(p(-5, 0))).isEqualTo(270);
        assertThat(p(0, 0).azimuthDegTo(p(-1e-20, 5))).isEqualTo(0);
        assertThat(p(1, 1).towards(90, 5).distanceM(p(6, 1))).isCloseTo(0, within(1e-12));
    }

    @Test
    void distances() {
        assertThat(p(0, 0).distanceM(p(3, 4))).isEqualTo(5);
        assertThat(new Point3(0, 0, 0).distanceM(new Point3(2, 3, 6))).isEqualTo(7);
        var segment = new Segment(p(0, 0), p(10, 0));
        assertThat(segment.distanceM(p(5, 3))).isEqualTo(3);
        assertThat(segment.distanceM(p(13, 4))).isEqualTo(5);
        assertThat(segment.distanceM(p(-3, -4))).isEqualTo(5);
        assertThat(new Segment(p(1, 1), p(1, 1)).distanceM(p(4, 5))).isEqualTo(5);
    }

    @Test
    void polyline() {
        var line = new Polyline(List.of(p(0, 0), p(10, 0), p(10, 20)));
        assertThat(line.lengthM()).isEqualTo(30);
        assertThat(line.middle()).isEqualTo(p(10, 5));
        assertThat(line.nearest(p(4, 7))).isEqualTo(p(10, 7));
        assertThat(line.nearest(p(4, 3))).isEqualTo(p(4, 0));
        assertThat(new Polyline(List.of(p(2, 2))).distanceM(p(5, 6))).isEqualTo(5);
        assertThat(new Polyline(List.of(p(2, 2))).middle()).isEqualTo(p(2, 2));
    }

    @Test
    void polygonContains() {
        assertThat(SQUARE.contains(p(5, 5))).isTrue();
        assertThat(SQUARE.contains(p(10, 5))).as("the edge belongs to the area").isTrue();
        assertThat(SQUARE.contains(p(0, 0))).isTrue();
        assertThat(SQUARE.contains(p(10.001, 5))).isFalse();
        assertThat(SQUARE.contains(p(-1, 10))).as("level with a corner").isFalse();
        assertThat(U.contains(p(4.5, 6))).as("between the arms").isFalse();
        assertThat(U.contains(p(1, 6))).isTrue();
        assertThat(U.contains(p(7, 6))).isTrue();
    }

    @Test
    void polygonDistances() {
        assertThat(SQUARE.distanceM(p(5, 5))).isZero();
        assertThat(SQUARE.edgeDistanceM(p(5, 4))).isEqualTo(4);
        assertThat(SQUARE.distanceM(p(13, 14))).isEqualTo(5);
        assertThat(U.distanceM(p(4.5, 8))).isEqualTo(1.5);
        assertThat(SQUARE.areaM2()).isEqualTo(100);
        assertThat(U.areaM2()).isEqualTo(63);
    }

    @Test
    void turningDirectionDoesNotMatter() {
        var reversed = new Polygon(IntStream.range(0, 8).mapToObj(i -> U.corners().get(7 - i)).toList());
        for (double x = -1; x <= 10; x += 0.5) {
            for (double y = -1; y <= 10; y += 0.5) {
                assertThat(reversed.contains(p(x, y))).as("(%s, %s)", x, y).isEqualTo(U.contains(p(x, y)));
            }
        }
    }

    @Test
    void disc() {
        var disc = new Disc(p(0, 0), 5);
        assertThat(disc.edgeDistanceM(p(0, 2))).isEqualTo(3);
        assertThat(disc.edgeDistanceM(p(0, 9))).isEqualTo(4);
        assertThat(disc.contains(p(3, 4))).isTrue();
        assertThat(disc.distanceM(p(6, 8))).isCloseTo(5, within(1e-12));
        assertThat(disc.nearest(p(0, 9))).isEqualTo(p(0, 5));
        assertThat(new Disc(p(1, 1), 0).distanceM(p(4, 5))).isEqualTo(5);
    }

    @Test
    void crossingEdgesAreNamed() {
        assertThatThrownBy(() -> new Polygon(List.of(p(0, 0), p(10, 10), p(10, 0), p(0, 10))))
                .isInstanceOf(PhysicsInputException.class)
                .hasMessage("an area whose edges cross: edge (0 m, 0 m) to (10 m, 10 m) and edge (10 m, 0 m) to (0 m, 10 m);"
                        + " expected edges that meet only at their shared corner; put the corners in order around the area");
    }

    @Test
    void touchingFoldedAndEmptyAreasAreRefused() {
        assertThatThrownBy(() -> new Polygon(List.of(p(0, 0), p(10, 0), p(5, 5), p(5, 0), p(0, 5))))
                .as("a corner on another edge").hasMessageContaining("edges cross");
        assertThatThrownBy(() -> new Polygon(List.of(p(0, 0), p(10, 0), p(5, 0), p(5, 5))))
                .as("an edge that runs back").hasMessageContaining("edges cross");
        assertThatThrownBy(() -> new Polygon(List.of(p(0, 0), p(0, 0), p(5, 5), p(5, 0))))
                .as("the same corner twice").hasMessageContaining("edges cross");
        assertThatThrownBy(() -> new Polygon(List.of(p(0, 0), p(5, 0)))).hasMessageContaining("2 corners");
        assertThatThrownBy(() -> new Polygon(List.of(p(0, 0), p(5, 0), p(9, 0)))).isInstanceOf(PhysicsInputException.class);
    }

    @Test
    void aCornerInAStraightEdgeIsAllowed() {
        assertThat(new Polygon(List.of(p(0, 0), p(5, 0), p(10, 0), p(10, 10), p(0, 10))).areaM2()).isEqualTo(100);
    }

    @Test
    void nonsenseIsNamed() {
        assertThatThrownBy(() -> p(Double.NaN, 0)).hasMessageContaining("x of a place");
        assertThatThrownBy(() -> new Disc(p(0, 0), -1)).hasMessageContaining("radius is -1 m");
        assertThatThrownBy(() -> new Polyline(List.of())).hasMessageContaining("without points");
    }
}
