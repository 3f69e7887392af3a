package org.girandole.sheets.print.values;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Expectations are reckoned by hand. */
class QuantitiesTest {
	@ParameterizedTest
	@CsvSource(delimiter = '|', value = {
			"0|0:00.000", "12480000|0:12.480", "130000000|2:10.000", "499|0:00.000", "500|0:00.001", "59999500|1:00.000",
			"-60000000|−1:00.000", "-5250000|−0:05.250", "-499|0:00.000", "6000000000|100:00.000" })
	void showTimeIsMinutesSecondsAndMilliseconds(long us, String text) {
		assertThat(Quantities.showTime(us)).isEqualTo(text);
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|', value = { "500000|0.5 s", "13000000|13.0 s", "60000000|1:00 min", "125400000|2:05 min", "40000|0.0 s" })
	void waitingIsSecondsThenMinutes(long us, String text) {
		assertThat(Quantities.waiting(us)).isEqualTo(text);
	}

	@Test
	void quantitiesHaveTheirUnits() {
		assertThat(Quantities.millimetres(0.0762)).isEqualTo("76.2 mm");
		assertThat(Quantities.millimetres(0.075)).isEqualTo("75 mm");
		assertThat(Quantities.metres(12.45)).isEqualTo("12.5 m");
		assertThat(Quantities.kilograms(0.062)).isEqualTo("0.062 kg");
		assertThat(Quantities.ohm(4.1)).isEqualTo("4.10");
		assertThat(Quantities.degrees(-12.5)).isEqualTo("−12.5°");
		assertThat(Quantities.degrees(-0.04)).isEqualTo("0°");
	}

	@Test
	void runsAreDrawnTogether() {
		assertThat(Quantities.runs(List.of(3, 5, 6, 7, 9, 10))).isEqualTo("3, 5–7, 9, 10");
		assertThat(Quantities.runs(List.of())).isEmpty();
	}
}
