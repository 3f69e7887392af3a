package org.girandole.sheets.print.values;

import static org.assertj.core.api.Assertions.assertThat;

import org.girandole.plan.PlannedCue.Aim;
import org.girandole.plan.script.ScoreItem;
import org.junit.jupiter.api.Test;

/**
 * A person behind the rack who faces the audience looks the other way than the audience does: what leans to the audience's right leans
 * to that person's left.
 */
class LeanTest {
	@Test
	void theAudiencesRightIsTheCrewsLeft() {
		Lean lean = Lean.of(new Aim(25, ScoreItem.Lean.SIDE, 90));

		assertThat(lean.words()).isEqualTo("25° to your LEFT");
		assertThat(lean.mark()).isEqualTo("◀ 25°");
		assertThat(lean.drawnDeg()).isEqualTo(-25);
	}

	@Test
	void theAudiencesLeftIsTheCrewsRight() {
		Lean lean = Lean.of(new Aim(-12.5, ScoreItem.Lean.SIDE, 270));

		assertThat(lean.words()).isEqualTo("12.5° to your RIGHT");
		assertThat(lean.mark()).isEqualTo("12.5° ▶");
		assertThat(lean.drawnDeg()).isEqualTo(12.5);
	}

	@Test
	void towardAndAwaySayTheAudience() {
		assertThat(Lean.of(new Aim(10, ScoreItem.Lean.AWAY_FROM_AUDIENCE, 0)).words()).isEqualTo("10° AWAY from the audience");
		assertThat(Lean.of(new Aim(-10, ScoreItem.Lean.AWAY_FROM_AUDIENCE, 0)).words()).isEqualTo("10° TOWARD the audience");
		assertThat(Lean.of(new Aim(5, ScoreItem.Lean.BEARING, 135)).words()).isEqualTo("5° toward bearing 135°");
		assertThat(Lean.of(new Aim(0, ScoreItem.Lean.SIDE, 0)).words()).isEqualTo("upright");
	}
}
