package org.girandole.sheets.print.values;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedSoundtrack;

/**
 * What is ticked off on the day. The steps are common practice without a source, save where one is named; law, authority and maker come
 * before them.
 *
 * @param phases in the order of the day
 */
public record Checklists(List<Phase> phases) {
	public Checklists {
		phases = List.copyOf(phases);
	}

	/** One part of the day and who answers for it. */
	public record Phase(String name, String who, List<String> steps) {
		public Phase {
			steps = List.copyOf(steps);
		}
	}

	/** The lists for a plan with this stamp. */
	public static Checklists of(Plan plan, String stamp) {
		return new Checklists(List.of(
				new Phase("Before leaving the store", "person in charge", List.of(
						"Permits, insurance and the approval of the authority having jurisdiction are on the vehicle.",
						"Every sheet in the folder says release " + stamp + ". Older sheets are destroyed.",
						"Everything on the pull list (sheet 6) is on the vehicle; what is short is struck out of the show in a new release.",
						"Transport papers agree with what is loaded (sheet 7); driver and vehicle may carry it.",
						"First aid, extinguishers, water, radios, head torches, spare batteries.")),
				new Phase("On the site, before anything is unpacked", "person in charge", List.of(
						"Distances to audience, roads, buildings and protected places measured again on the ground, and compared with law, maker and site plan.",
						"Area closed, guards placed, nobody under the fallout. No smoking, no open fire, telephones away.",
						"Wind measured: ________ m/s from ________. Limit agreed: ________ m/s. Who may stop the show: ________________",
						"Escape routes and the place to meet are known to all. Fire brigade, medical service and neighbours informed.")),
				new Phase("Loading", "each position's crew", List.of(
						"Racks and single tubes fixed so that they cannot fall or lean, even when a piece bursts inside.",
						"Each rack loaded from sheet 4 by one person, read back tube by tube by a second person.",
						"Empty tubes are empty. Lids or foil against rain and sparks where the maker allows.",
						"Nobody leans over a tube. Nobody forces a piece that does not slide down by itself.",
						"Positions done: " + String.join("   ", positions(plan)))),
				new Phase("Wiring and measuring", "each module's crew", List.of(
						"All modules off, keys out and in the pocket of the person in charge.",
						"Each igniter on the pin that sheet 5 names; leads clear of muzzles and feet.",
						"Everybody away from loaded pieces before any continuity test. Readings written on sheet 5, compared with the band.",
						"Bad readings mended with the module off, or the cue struck out. Never bridged.",
						"Modules done: " + String.join("   ", plan.script().modules().stream().map(module -> "□ " + module.name()).toList()))),
				new Phase("Before the show", "shooter and sound engineer", beforeTheShow(plan, stamp)),
				new Phase("Show", "shooter and show caller", List.of(
						"Area clear, all guards report, wind within the limit: the person in charge says “arm”.",
						"Hold-to-fire pressed only while cues are to fire. Let go at every LET GO of sheet 2 and at anything unforeseen.",
						"Cues that came due while released are written down: they are loaded tubes now.")),
				new Phase("After the show", "person in charge", List.of(
						"Modules off, keys out, controller disconnected.",
						"Waiting time agreed: ________ min; ended at ________. Nobody approaches before. (Published examples differ: Canada, Explosives"
								+ " Regulations 2013 s. 437: 30 min after electric firing; Oregon, OAR 837-012-0890: tubes 10 min, duds 15 min and"
								+ " 5 more after dousing. The longest that applies counts.)",
						"Person in charge and one more search the firing area and the fallout area, from upwind, with torches; sheet 11 filled in.",
						"What did not fire is handled as its maker and the law say, never hurried, never by the curious.",
						"Area given back only after a clean search; a second search at daylight."))));
	}

	private static List<String> beforeTheShow(Plan plan, String stamp) {
		List<String> steps = new ArrayList<>();
		steps.add("The controller shows release " + stamp + " or the tables loaded are those of this release: compare the counts below.");
		for (PlannedSoundtrack soundtrack : plan.soundtracks()) {
			List<PlannedCue> cues = plan.cues().stream().filter(cue -> cue.soundtrack().equals(soundtrack.name())).toList();
			steps.add("Slot " + soundtrack.slot() + " holds “" + soundtrack.script().label() + "”: "
					+ Quantities.count(cues.size(), "cue", "cues") + last(cues) + ", timecode starts at "
					+ soundtrack.line().map(line -> line.start().toString()).orElse(Quantities.NOT_STATED) + ".");
		}
		steps.add("With all modules off: timecode played, controller locks within seconds, shows the label on the desk's counter, holds lock.");
		steps.add("With all modules off: hold-to-fire pressed and released, the controller shows both.");
		steps.add("Timecode is not heard in the speakers. Radio check with every guard. Backup controller follows.");
		steps.add("Words for stop and for let go agreed: ________________");
		return steps;
	}

	private static String last(List<PlannedCue> cues) {
		return cues.stream().max(Comparator.comparing(cue -> cue.timing().fireUs()))
				.map(cue -> ", the last one is cue " + cue.number() + " at " + cue.timecode().map(Object::toString).orElse("before timecode"))
				.orElse("");
	}

	private static List<String> positions(Plan plan) {
		return plan.cues().stream().map(cue -> cue.position()).distinct().sorted().map(position -> "□ " + position).toList();
	}
}
