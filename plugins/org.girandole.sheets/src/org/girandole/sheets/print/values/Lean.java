package org.girandole.sheets.print.values;

import org.girandole.plan.PlannedCue.Aim;
import org.girandole.plan.script.ScoreItem;

/**
 * How a tube is to be set, for a person who stands behind the rack and faces the audience. To that person left and right are the
 * other way round than to the audience, whose right is positive in a script.
 *
 * @param words what to do, such as {@code 15° left}
 * @param mark the same, short enough for a drawing
 * @param drawnDeg angle in the drawing seen from behind, positive to the reader's right; 0 when the lean does not show from behind
 */
public record Lean(String words, String mark, double drawnDeg) {
	private static final double UPRIGHT_BELOW_DEG = 0.05;

	/** Turns an aim round to the crew's side. */
	public static Lean of(Aim aim) {
		double tiltDeg = aim.tiltDeg();
		if (Math.abs(tiltDeg) < UPRIGHT_BELOW_DEG) {
			return new Lean("upright", "upright", 0);
		}
		String angle = Quantities.degrees(Math.abs(tiltDeg));
		ScoreItem.Lean lean = tiltDeg < 0 ? opposite(aim.lean()) : aim.lean();
		return switch (lean) {
			case SIDE -> tiltDeg > 0
					? new Lean(angle + " to your LEFT", "◀ " + angle, -tiltDeg)
					: new Lean(angle + " to your RIGHT", angle + " ▶", -tiltDeg);
			case TOWARD_AUDIENCE -> new Lean(angle + " TOWARD the audience", "▲ " + angle + " to audience", 0);
			case AWAY_FROM_AUDIENCE -> new Lean(angle + " AWAY from the audience", "▼ " + angle + " from audience", 0);
			case BEARING -> new Lean(angle + " toward bearing " + Quantities.degrees(aim.bearingDeg()),
					angle + " to " + Quantities.degrees(aim.bearingDeg()), 0);
		};
	}

	private static ScoreItem.Lean opposite(ScoreItem.Lean lean) {
		return switch (lean) {
			case TOWARD_AUDIENCE -> ScoreItem.Lean.AWAY_FROM_AUDIENCE;
			case AWAY_FROM_AUDIENCE -> ScoreItem.Lean.TOWARD_AUDIENCE;
			case SIDE, BEARING -> lean;
		};
	}
}
