package org.girandole.physics.wind;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;

import org.girandole.physics.PhysicsInputException;
import org.girandole.physics.flight.DebrisFall;
import org.girandole.physics.flight.UniformAir;
import org.girandole.physics.flight.UniformWind;
import org.girandole.physics.geometry.Point2;
import org.girandole.physics.geometry.Point3;
import org.girandole.physics.geometry.Polyline;
import org.girandole.physics.separation.ArticleKind;
import org.girandole.physics.separation.FiringCase;
import org.girandole.physics.separation.Quantity;
import org.girandole.physics.separation.SeparationCheck;
import org.girandole.physics.separation.ShippedTables;
import org.junit.jupiter.api.Test;

class CriticalWindTest {
    private static final Polyline AUDIENCE = new Polyline(List.of(new Point2(-200, -150), new Point2(200, -150)));

    private static WindCheck germanShell(double audienceMetresAway) {
        var table = ShippedTables.named("GermanTable").orElseThrow();
        var shell = FiringCase.of(ArticleKind.SHELL).with(Quantity.CALIBRE, 0.1).with(Quantity.HEIGHT, 120).tilted(0, 0);
        var from = new Point2(0, audienceMetresAway - 150);
        return (fromDeg, mps) -> SeparationCheck.of(table, shell.inWind(fromDeg, mps), from, AUDIENCE).holds() ? List.of()
                : List.of("separation");
    }

    @Test
    void stepsOfATable() {
        // 1. SprengV Annex 6 no. 3.4.4: 96 m up to 9 m/s, 192 m up to 13 m/s, 288 m above, downwind
        assertThat(CriticalWind.find(0, 20, germanShell(150)).text()).isEqualTo("clean up to 9 m/s from 0°");
        assertThat(CriticalWind.find(0, 20, germanShell(200)).text()).isEqualTo("clean up to 13 m/s from 0°");
        assertThat(CriticalWind.find(0, 20, germanShell(300)).text()).isEqualTo("clean up to 20 m/s from 0°, the strongest wind tried");
        assertThat(CriticalWind.find(180, 20, germanShell(150)).limitReached()).as("wind off the audience").isTrue();
        assertThat(CriticalWind.find(0, 20, germanShell(90)).text()).isEqualTo("not clean even without wind");
    }

    @Test
    void aDriftThatGrowsWithTheWind() {
        // Debris from 120 m at 8 m/s sinks 15 s and may drift 100 m: 6.67 m/s by hand, rounded down to tenths
        WindCheck check = (fromDeg, mps) -> {
            var place = DebrisFall.from(new Point3(0, 0, 120), 8, new UniformAir(1.225, 340), new UniformWind(fromDeg, mps)).place();
            return place.distanceM(new Point2(0, 0)) <= 100 ? List.of() : List.of("fallout");
        };
        var critical = CriticalWind.find(240, 20, check);
        assertThat(critical.text()).isEqualTo("clean up to 6.6 m/s from 240°");
        assertThat(critical.brokenBy()).containsExactly("fallout");
        assertThat(critical.limitReached()).isFalse();
    }

    @Test
    void tenthsAroundTheCoarseSteps() {
        for (int tenths = 1; tenths < 40; tenths++) {
            double breaksAbove = tenths / 10.0;
            WindCheck check = (fromDeg, mps) -> mps > breaksAbove ? List.of("x") : List.of();
            assertThat(CriticalWind.find(0, 10, check).cleanUpToMps()).hasValue(breaksAbove);
        }
    }

    @Test
    void nonsenseIsNamed() {
        assertThatThrownBy(() -> CriticalWind.find(Double.NaN, 20, (d, s) -> List.of()))
                .isInstanceOf(PhysicsInputException.class).hasMessageContaining("direction of the wind");
        assertThatThrownBy(() -> CriticalWind.find(0, 0, (d, s) -> List.of())).hasMessageContaining("strongest wind");
    }
}
