package org.girandole.physics.flight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.girandole.physics.PhysicsInputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EstimatesTest {
    private static final double SUN_MM = 30.303;

    // hanabi.co.jp, size page: burst height, flower diameter, mass; bore of n sun
    @ParameterizedTest
    @CsvSource({"2.5, 80, 90, 50, 60, 0.12", "3, 120, 130, 60, 70, 0.23", "4, 160, 170, 110, 120, 0.55",
            "5, 190, 200, 150, 160, 1.1", "6, 220, 220, 180, 200, 1.9", "8, 280, 280, 250, 260, 4.3",
            "10, 330, 330, 280, 300, 8.5"})
    void insideThePublishedRanges(double size, double apexFrom, double apexTo, double spreadFrom, double spreadTo, double kg) {
        double calibre = size * SUN_MM;
        assertThat(Estimates.apexM(calibre).value()).isBetween(apexFrom - 1e-9, apexTo + 1e-9);
        assertThat(Estimates.spreadM(calibre).value()).isBetween(spreadFrom, spreadTo);
        assertThat(Estimates.massKg(calibre).value()).isCloseTo(kg, within(1e-9));
    }

    // A second trade table, hanavigate.com: mass, height, flower; the range must take it in
    @ParameterizedTest
    @CsvSource({"2.5, 0.1, 80, 50", "3, 0.2, 120, 60", "4, 0.5, 160, 130", "5, 1.3, 190, 170", "7, 3.0, 250, 240",
            "8, 4.8, 280, 280", "10, 8.5, 330, 320", "20, 70, 500, 480"})
    void rangesTakeInTheOtherTable(double size, double kg, double apexM, double spreadM) {
        double calibre = size * SUN_MM;
        var mass = Estimates.massKg(calibre);
        assertThat(kg).isBetween(mass.least(), mass.most());
        assertThat(apexM).isBetween(Estimates.apexM(calibre).least(), Estimates.apexM(calibre).most());
        assertThat(spreadM).isBetween(Estimates.spreadM(calibre).least(), Estimates.spreadM(calibre).most());
    }

    // Usual rise times of the trade: common practice, no source
    @ParameterizedTest
    @CsvSource({"76.2, 3.0", "101.6, 3.5", "127, 4.0", "203.2, 5.75", "304.8, 7.0"})
    void riseOfTheTrade(double calibreMm, double seconds) {
        assertThat(Estimates.riseUs(calibreMm).value()).isEqualTo(Math.rint(seconds * 1e6));
    }

    @Test
    void everythingGrowsWithCalibre() {
        for (double mm = 40; mm < 600; mm += 5) {
            double next = mm + 5;
            assertThat(Estimates.apexM(next).value()).isGreaterThan(Estimates.apexM(mm).value());
            assertThat(Estimates.spreadM(next).value()).isGreaterThan(Estimates.spreadM(mm).value());
            assertThat(Estimates.massKg(next).value()).isGreaterThan(Estimates.massKg(mm).value());
            assertThat(Estimates.shellDiameterMm(next).value()).isGreaterThan(Estimates.shellDiameterMm(mm).value());
            assertThat(Estimates.riseUs(next).value()).isGreaterThan(Estimates.riseUs(mm).value());
            assertThat(Estimates.shellDiameterMm(mm).value()).isBetween(0.8 * mm, mm);
        }
    }

    @Test
    void anEstimateSaysThatItIsOne() {
        assertThat(Estimates.apexM(75).step("h").text()).contains("estimated (").contains("hanabi.co.jp");
    }

    @Test
    void calibresBeyondTheTablesAreRefused() {
        assertThatThrownBy(() -> Estimates.apexM(20)).isInstanceOf(PhysicsInputException.class)
                .hasMessageContaining("20 mm").hasMessageContaining("give rise, apex and spread");
        assertThatThrownBy(() -> Estimates.massKg(900)).hasMessageContaining("40 mm to 610 mm");
        assertThatThrownBy(() -> Estimates.riseUs(-75)).hasMessageContaining("calibre is -75 mm");
    }
}
