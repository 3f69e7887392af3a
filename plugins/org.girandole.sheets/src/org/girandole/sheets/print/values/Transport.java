package org.girandole.sheets.print.values;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.girandole.plan.Plan;
import org.girandole.plan.script.Effect;
import org.girandole.plan.script.Igniter;
import org.girandole.plan.stock.Charges;
import org.girandole.plan.stock.Charges.Hazard;
import org.girandole.plan.stock.Charges.Sum;
import org.girandole.plan.stock.IgniterCharges;

/**
 * What is carried on the road, by hazard class and UN number.
 *
 * @param classes one line a class and number
 * @param igniters one line a class and number of igniters; one igniter a firing, spare ones are not known
 * @param effects one line an effect, then one a type of igniter
 * @param total all of it
 * @param points sum of the points, or why there is none
 */
public record Transport(List<ClassLine> classes, List<ClassLine> igniters, List<EffectLine> effects, Total total, Points points) {
	private static final String IGNITERS = "Igniters";
	private static final double G_PER_KG = 1000;
	/** Proper shipping names of the UN numbers that fireworks travel under; UN Model Regulations, dangerous goods list. */
	private static final Map<String, String> NAMES = Map.ofEntries(Map.entry("0333", "Fireworks"), Map.entry("0334", "Fireworks"),
			Map.entry("0335", "Fireworks"), Map.entry("0336", "Fireworks"), Map.entry("0337", "Fireworks"), Map.entry("0428", "Articles, pyrotechnic"),
			Map.entry("0430", "Articles, pyrotechnic"), Map.entry("0431", "Articles, pyrotechnic"), Map.entry("0432", "Articles, pyrotechnic"),
			Map.entry("0121", IGNITERS), Map.entry("0314", IGNITERS), Map.entry("0315", IGNITERS), Map.entry("0325", IGNITERS), Map.entry("0454", IGNITERS));


	public Transport {
		classes = List.copyOf(classes);
		igniters = List.copyOf(igniters);
		effects = List.copyOf(effects);
	}

	/**
	 * One hazard class and UN number.
	 *
	 * @param charge net explosive content of the pieces whose charge is known; begins with “at least” when some is not
	 * @param withoutCharge pieces of unknown charge
	 * @param factor the factor, or that there is none
	 * @param points the points of this line; begins with “at least” when some charge is not known, “not known” when all are
	 */
	public record ClassLine(String hazardClass, String unNumber, String name, long pieces, String charge, long withoutCharge, String factor,
			String points) {
	}

	/** One effect. */
	public record EffectLine(String label, String hazardClass, String unNumber, long pieces, String each, String charge) {
	}

	/** The sum of everything. */
	public record Total(long pieces, String charge, long withoutCharge) {
	}

	/**
	 * The sum of the points.
	 *
	 * @param words the sum in words
	 * @param complete whether nothing is missing from it
	 * @param within whether it is complete and within the limit
	 */
	public record Points(String words, boolean complete, boolean within) {
	}

	/** The transport summary of a plan. */
	public static Transport of(Plan plan) {
		Charges charges = Charges.of(plan);
		List<ClassLine> classes = new ArrayList<>();
		charges.hazards().forEach((hazard, sum) -> classes.add(classLine(hazard, sum, "")));
		IgniterCharges carried = IgniterCharges.of(plan);
		List<ClassLine> igniters = new ArrayList<>();
		carried.hazards().forEach((hazard, sum) -> igniters.add(classLine(hazard, sum, IGNITERS)));
		List<EffectLine> effects = new ArrayList<>();
		for (Effect effect : plan.script().effects()) {
			Optional.ofNullable(charges.effects().get(effect.name())).ifPresent(sum -> effects.add(effectLine(effect, sum)));
		}
		for (Igniter igniter : plan.script().igniters()) {
			Optional.ofNullable(carried.types().get(igniter.name())).ifPresent(sum -> effects.add(igniterLine(igniter, sum)));
		}
		return new Transport(classes, igniters, effects,
				new Total(charges.total().pieces(), charge(charges.total()), charges.total().withoutCharge()), points(charges, carried));
	}

	private static ClassLine classLine(Hazard hazard, Sum sum, String name) {
		Optional<Integer> factor = hazard.hazardClass().flatMap(AdrPoints::factor);
		String un = hazard.unNumber().orElse("");
		return new ClassLine(hazard.hazardClass().orElse(Quantities.NOT_STATED), hazard.unNumber().orElse(Quantities.NOT_STATED),
				NAMES.getOrDefault(un.replaceAll("\\D", ""), name), sum.pieces(), charge(sum), sum.withoutCharge(),
				factor.map(String::valueOf).orElse("none"),
				points(factor, sum));
	}

	private static String points(Optional<Integer> factor, Sum sum) {
		if (factor.isEmpty() || sum.withoutCharge() == sum.pieces()) {
			return "not known";
		}
		return (sum.complete() ? "" : "at least ") + Quantities.plain(sum.kg() * factor.get(), 1);
	}

	private static EffectLine effectLine(Effect effect, Sum sum) {
		return new EffectLine(effect.label(), Quantities.orNotStated(effect.hazardClass()), Quantities.orNotStated(effect.unNumber()),
				sum.pieces(), Quantities.orNotStated(effect.chargeKg().map(Quantities::kilograms)),
				effect.chargeKg().isPresent() ? Quantities.kilograms(sum.kg()) : Quantities.NOT_STATED);
	}

	private static EffectLine igniterLine(Igniter igniter, Sum sum) {
		return new EffectLine("Igniter " + igniter.name(), Quantities.orNotStated(igniter.hazardClass()), Quantities.orNotStated(igniter.unNumber()),
				sum.pieces(), Quantities.orNotStated(igniter.chargeKg().map(kg -> Quantities.plain(kg * G_PER_KG, 3) + " g")),
				igniter.chargeKg().isPresent() ? Quantities.kilograms(sum.kg()) : Quantities.NOT_STATED);
	}

	private static String charge(Sum sum) {
		if (sum.withoutCharge() == sum.pieces()) {
			return Quantities.NOT_STATED;
		}
		return (sum.complete() ? "" : "at least ") + Quantities.kilograms(sum.kg());
	}

	private static Points points(Charges charges, IgniterCharges igniters) {
		double points = 0;
		boolean complete = true;
		for (Map.Entry<Hazard, Sum> entry : charges.hazards().entrySet()) {
			Optional<Integer> factor = entry.getKey().hazardClass().flatMap(AdrPoints::factor);
			complete &= factor.isPresent() && entry.getValue().complete();
			points += factor.orElse(0) * entry.getValue().kg();
		}
		for (Map.Entry<Hazard, Sum> entry : igniters.hazards().entrySet()) {
			Optional<Integer> factor = entry.getKey().hazardClass().flatMap(AdrPoints::factor);
			// What counts nothing needs no charge.
			complete &= factor.isPresent() && (factor.get() == 0 || entry.getValue().complete());
			points += factor.orElse(0) * entry.getValue().kg();
		}
		boolean within = complete && points <= AdrPoints.LIMIT;
		String sum = (complete ? "" : "at least ") + Quantities.plain(points, 1) + " of " + AdrPoints.LIMIT + " points";
		return new Points(complete ? sum : sum + "; it cannot be given, because data is missing or a class has no exemption", complete, within);
	}
}
