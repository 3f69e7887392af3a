package org.girandole.sheets.print;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Finding;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedCue.Aim;
import org.girandole.plan.PlannedCue.Burst;
import org.girandole.plan.PlannedCue.Circuit;
import org.girandole.plan.PlannedCue.Item;
import org.girandole.plan.PlannedCue.Pin;
import org.girandole.plan.PlannedCue.Tube;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.ReleaseStamp;
import org.girandole.plan.Severity;
import org.girandole.plan.Subject;
import org.girandole.plan.Timing;
import org.girandole.plan.script.Chain;
import org.girandole.plan.script.Effect;
import org.girandole.plan.script.EffectKind;
import org.girandole.plan.script.FiringSystem;
import org.girandole.plan.script.Igniter;
import org.girandole.plan.script.InputFile;
import org.girandole.plan.script.Lot;
import org.girandole.plan.script.Measured;
import org.girandole.plan.script.Module;
import org.girandole.plan.script.ModuleType;
import org.girandole.plan.script.Point;
import org.girandole.plan.script.LabelGrid;
import org.girandole.plan.script.Rack;
import org.girandole.plan.script.ReleaseSpec;
import org.girandole.plan.script.ScoreItem;
import org.girandole.plan.script.ShowHeader;
import org.girandole.plan.script.ShowScript;
import org.girandole.plan.script.Site;
import org.girandole.plan.script.SourceRef;
import org.girandole.plan.script.Soundtrack;
import org.girandole.plan.script.TiltRange;
import org.girandole.plan.script.TimeExpr;
import org.girandole.plan.script.Waiver;
import org.girandole.timecode.FrameRate;
import org.girandole.timecode.Timecode;
import org.girandole.timecode.TimecodeLine;

/** A small invented show, planned by hand, so that what stands on a sheet can be counted without the planner. */
final class HandMadeShow {
	static final SourceRef HERE = new SourceRef("quay.show", 1, 1, 1);
	private static final TimeExpr ORIGIN = new TimeExpr(new TimeExpr.Origin(), List.of(), HERE);

	String label = "Night on the Quay (invented)";
	Optional<LocalDate> date = Optional.of(LocalDate.of(2027, 6, 19));
	Optional<Site> site = Optional.of(new Site("Quay", "The old quay",
			List.of(position("A", -30), position("B", 0), position("C", 30)), List.of(),
			List.of(new Site.Area("Promenade", List.of(new Point(-100, -150), new Point(100, -150)), HERE)), Optional.empty(), List.of(),
			Optional.empty(), Optional.of(18.0), Optional.empty(), Optional.empty(), HERE));
	Optional<ReleaseSpec> release = Optional.empty();
	Optional<String> separation = Optional.of("UsTable");
	final List<Effect> effects = new ArrayList<>();
	final List<Lot> lots = new ArrayList<>();
	final List<Rack> racks = new ArrayList<>();
	final List<Module> modules = new ArrayList<>();
	final List<PlannedSoundtrack> soundtracks = new ArrayList<>();
	final List<PlannedCue> cues = new ArrayList<>();
	final List<Finding> findings = new ArrayList<>();
	private final TimecodeLine line = new TimecodeLine(FrameRate.FPS_25, Timecode.parse("10:00:00:00", FrameRate.FPS_25), 60_000_000L);

	/** Asks for labels on this label paper. */
	HandMadeShow labels(LabelGrid grid) {
		release = Optional.of(new ReleaseSpec(List.of(), List.of(), "A4", Optional.of(grid), List.of(), List.of(), HERE));
		return this;
	}

	/** An effect with everything known. */
	static Effect effect(String name, String label, EffectKind kind, double calibreM, double chargeKg, String hazardClass, String un) {
		return new Effect(name, label, kind, Optional.of(calibreM), Optional.of(new Measured(2_400_000, 150_000)), Optional.of(105.0),
				Optional.of(70.0), Optional.of(1_600_000L), Optional.of(chargeKg), Optional.of(hazardClass), Optional.of(un),
				Optional.of("red"), Optional.of("Standard"), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
				Optional.empty(), kind == EffectKind.SALUTE, Optional.empty(), HERE);
	}

	/** An effect of which nothing is known but its name. */
	static Effect bareEffect(String name, String label, EffectKind kind) {
		return new Effect(name, label, kind, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
				Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
				Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), false, Optional.empty(), HERE);
	}

	Effect add(Effect effect) {
		effects.add(effect);
		return effect;
	}

	void rack(String name, String position, double spacingM, Rack.TubeRun... runs) {
		racks.add(new Rack(name, position, List.of(runs), Optional.of(spacingM), new TiltRange(-30, 30), false, Optional.empty(), HERE));
	}

	static Rack.TubeRun tubes(int count, double calibreM) {
		return new Rack.TubeRun(count, calibreM, Optional.empty(), HERE);
	}

	void module(String name, String address, String... positions) {
		modules.add(new Module(name, address, "Field16", List.of(positions), HERE));
	}

	PlannedSoundtrack soundtrack(String name, String label, int slot, Optional<TimecodeLine> timecode, PlannedSoundtrack.Hold... holds) {
		Soundtrack script = new Soundtrack(name, label, Optional.empty(), Optional.of(250_000_000L), timecode.map(TimecodeLine::rate),
				timecode.map(TimecodeLine::start), timecode.map(TimecodeLine::prerollUs), List.of(), List.of(), HERE);
		PlannedSoundtrack planned = new PlannedSoundtrack(script, slot, Optional.empty(), timecode, Optional.of(250_000_000L), Map.of(),
				List.of(new PlannedSoundtrack.Section("Opening", "Opening", 0, 120_000_000, HERE)), List.of(holds));
		soundtracks.add(planned);
		return planned;
	}

	TimecodeLine line() {
		return line;
	}

	/** A cue that fires at this moment; the rest is filled in with the chain of calls. */
	CueDraft cue(PlannedSoundtrack soundtrack, long fireUs, String position, Effect effect) {
		return new CueDraft(soundtrack, fireUs, position, effect);
	}

	void finding(String rule, Severity severity, String message, Subject subject, Optional<Waiver> waiver) {
		findings.add(new Finding(rule, severity, message, "12 m", "20 m", "common practice, no source", "move it", HERE, subject, Map.of(), waiver));
	}

	CheckedPlan checked() {
		ModuleType type = new ModuleType("Field16", 16, Optional.of(24.0), Optional.of(1.2), Optional.empty(), Optional.of(2), Optional.of(8),
				Optional.of(20_000L), Optional.of(0.005), Optional.of(50.0), 1, HERE);
		FiringSystem system = new FiringSystem("Field", Optional.of(10_000L), Optional.of(5_000L), Optional.of(25.0), Optional.empty(), 1, 0,
				Optional.of(18.0), FiringSystem.Join.SERIES, 1.5, HERE);
		ShowScript script = new ShowScript(
				new ShowHeader("Quay", label, date, Optional.of(LocalTime.of(22, 30)), Optional.of(ZoneId.of("Europe/Lisbon")),
						Optional.of("Quay"), Optional.of("Field"), Optional.of(100_000L), separation, HERE),
				soundtracks.stream().map(PlannedSoundtrack::script).toList(), effects, lots, List.of(), site,
				List.of(new Igniter("Standard", Optional.of(1.6), Optional.of(0.2), Optional.of(0.5), Optional.of(0.2), Optional.of(0.00003),
						Optional.of("1.4S"), Optional.of("UN0454"), HERE)), List.of(),
				List.of(type), modules, racks, Optional.of(system), List.of(), List.of(), List.of(), List.of(), List.of(), release,
				List.of());
		List<PlannedCue> ordered = new ArrayList<>(cues);
		ordered.sort(Comparator.comparingInt(PlannedCue::slot).thenComparingLong(cue -> cue.timing().fireUs()));
		List<PlannedCue> numbered = new ArrayList<>();
		for (PlannedCue cue : ordered) {
			numbered.add(new PlannedCue(cue.key(), numbered.size() + 1, cue.soundtrack(), cue.slot(), cue.section(), cue.cueName(), cue.shot(),
					cue.effect(), cue.chain(), cue.lot(), cue.position(), cue.timing(), cue.timecode(), cue.aim(), cue.pin(), cue.tube(),
					cue.circuit(), cue.burst(), cue.items(), cue.script(), cue.source()));
		}
		return new CheckedPlan(new Plan(script, ReleaseStamp.of(List.of(new InputFile("quay.show", "00"))), soundtracks, numbered, List.of()),
				findings);
	}

	private static Site.Position position(String name, double xM) {
		return new Site.Position(name, new Point(xM, 0), HERE);
	}

	/** A cue being made. */
	final class CueDraft {
		private final PlannedSoundtrack soundtrack;
		private final long fireUs;
		private final String position;
		private final Effect effect;
		private Aim aim = new Aim(0, ScoreItem.Lean.SIDE, 0);
		private Optional<Pin> pin = Optional.empty();
		private Optional<Tube> tube = Optional.empty();
		private Optional<Circuit> circuit = Optional.empty();
		private Optional<Chain> chain = Optional.empty();
		private Optional<String> name = Optional.empty();
		private Optional<String> note = Optional.empty();
		private Optional<String> lot = Optional.empty();
		private Timing.RiseSource rise = Timing.RiseSource.CATALOGUE;
		private boolean heard;

		private CueDraft(PlannedSoundtrack soundtrack, long fireUs, String position, Effect effect) {
			this.soundtrack = soundtrack;
			this.fireUs = fireUs;
			this.position = position;
			this.effect = effect;
		}

		CueDraft pin(String module, int number, double ohm) {
			pin = Optional.of(new Pin(module, number, false));
			circuit = Optional.of(new Circuit(1, 12.5, ohm, ohm - 0.25, ohm + 0.25, 4.1, 3.8));
			return this;
		}

		CueDraft tube(String rack, int number) {
			tube = Optional.of(new Tube(rack, number, false));
			return this;
		}

		CueDraft tilt(double deg, ScoreItem.Lean lean) {
			aim = new Aim(deg, lean, deg >= 0 ? 90 : 270);
			return this;
		}

		CueDraft chain(String chainLabel, int items) {
			chain = Optional.of(new Chain("Run", chainLabel, effect.name(), items, new Measured(250_000, 20_000), 100_000, HERE));
			return this;
		}

		CueDraft named(String cueName, String cueNote) {
			name = Optional.of(cueName);
			note = Optional.of(cueNote);
			return this;
		}

		CueDraft lot(String lotName) {
			lot = Optional.of(lotName);
			return this;
		}

		CueDraft estimated() {
			rise = Timing.RiseSource.ESTIMATED;
			return this;
		}

		CueDraft heard() {
			heard = true;
			return this;
		}

		void add() {
			long riseUs = effect.kind().rises() ? 2_400_000 : 0;
			List<Item> items = new ArrayList<>();
			for (int k = 0; k < chain.map(Chain::items).orElse(0); k++) {
				items.add(new Item(k, fireUs + 100_000 + k * 250_000L, fireUs + 100_000 + k * 250_000L + riseUs, 150_000 + k * 20_000L, 150_000));
			}
			Timing timing = new Timing(heard ? Timing.SeenMode.HEARD : Timing.SeenMode.SEEN, fireUs + riseUs + 5_000, riseUs, rise, 0, 5_000, 0,
					0, 0, fireUs, 150_000, 5_000, 0, 0);
			ScoreItem.Cue script = new ScoreItem.Cue(name, ORIGIN, List.of(position), ScoreItem.Distribution.TOGETHER, 1, effect.name(), lot,
					Optional.empty(), Optional.empty(), heard, List.of(), List.of(), note, HERE);
			cues.add(new PlannedCue("key-" + cues.size(), 0, soundtrack.name(), soundtrack.slot(), "Opening", name, 0, effect, chain, lot,
					position, timing, soundtrack.line().flatMap(each -> each.momentAt(fireUs)).map(TimecodeLine.Moment::label), aim, pin, tube,
					circuit, effect.kind().rises() ? Optional.of(new Burst(new Point(0, 0, 105), rise == Timing.RiseSource.ESTIMATED))
							: Optional.empty(),
					items, script, HERE));
		}
	}

	/** A show with a bit of everything, for looking at and for whole-set tests. */
	static HandMadeShow full() {
		HandMadeShow show = new HandMadeShow();
		Effect peony = show.add(effect("RedPeony75", "Red peony", EffectKind.SHELL, 0.075, 0.062, "1.3G", "UN0335"));
		Effect willow = show.add(effect("Willow100", "Gold willow with silver tips and a very long name that has to wrap", EffectKind.SHELL, 0.1,
				0.15, "1.3G", "UN0335"));
		Effect comet = show.add(effect("Comet", "Green comet", EffectKind.COMET, 0.05, 0.03, "1.3G", "UN0335"));
		Effect salute = show.add(effect("Salute75", "Salute", EffectKind.SALUTE, 0.075, 0.07, "1.1G", "UN0333"));
		Effect cake = show.add(effect("Fan", "Silver fan, 25 shots", EffectKind.CAKE, 0.03, 0.4, "1.3G", "UN0335"));
		Effect fountain = show.add(effect("Jet", "White fountain", EffectKind.FOUNTAIN, 0.03, 0.2, "1.4G", "UN0336"));
		Effect mystery = show.add(bareEffect("Mystery", "Unlabelled shell from the back shelf", EffectKind.SHELL));
		show.lots.add(new Lot("L118", "RedPeony75", 12, Optional.of(new Measured(2_520_000, 100_000)), HERE));
		show.lots.add(new Lot("L119", "Comet", 4, Optional.empty(), HERE));
		show.rack("R1", "A", 0.14, tubes(10, 0.075));
		show.rack("R2", "A", 0.2, tubes(3, 0.05), tubes(2, 0.1));
		show.rack("R3", "B", 0.14, tubes(15, 0.075));
		show.rack("R4", "B", 0.14, tubes(5, 0.075));
		show.rack("R5", "C", 0.2, tubes(6, 0.1));
		show.module("M1", "1", "A");
		show.module("M2", "2", "B", "C");
		PlannedSoundtrack tides = show.soundtrack("Tides", "Tides", 0, Optional.of(show.line()),
				new PlannedSoundtrack.Hold(30_000_000, 36_000_000, "ferry crosses", HERE));
		PlannedSoundtrack encore = show.soundtrack("Encore", "Encore", 1, Optional.of(new TimecodeLine(FrameRate.FPS_29_97_DROP,
				Timecode.parse("01:00:00;00", FrameRate.FPS_29_97_DROP), 30_000_000L)));
		for (int i = 0; i < 6; i++) {
			show.cue(tides, 5_000_000 + i * 500_000L, "A", peony).tube("R1", i + 1).pin("M1", i + 1, 4.1 + i * 0.05)
					.tilt(-25 + 10 * i, ScoreItem.Lean.SIDE).lot("L118").add();
		}
		show.cue(tides, 10_000_000, "A", comet).tube("R2", 1).pin("M1", 7, 3.95).tilt(-20, ScoreItem.Lean.SIDE).lot("L119").add();
		show.cue(tides, 10_000_000, "A", comet).tube("R2", 3).pin("M1", 8, 3.97).tilt(20, ScoreItem.Lean.SIDE).lot("L119").add();
		show.cue(tides, 12_000_000, "A", willow).tube("R2", 4).pin("M1", 9, 4.4).tilt(10, ScoreItem.Lean.AWAY_FROM_AUDIENCE)
				.named("Hero", "the one they remember").add();
		show.cue(tides, 13_000_000, "A", cake).pin("M1", 10, 5.2).add();
		show.cue(tides, 26_000_000, "B", peony).tube("R3", 2).pin("M2", 1, 4.2).chain("Peony run", 8).add();
		show.cue(tides, 33_000_000, "B", salute).tube("R3", 12).pin("M2", 2, 4.3).heard().add();
		show.cue(tides, 52_000_000, "B", fountain).pin("M2", 3, 4.0).add();
		show.cue(tides, 52_000_000, "C", fountain).pin("M2", 4, 6.3).add();
		show.cue(tides, 52_000_000, "C", fountain).pin("M2", 4, 6.3).add();
		show.cue(tides, 60_000_000, "C", mystery).estimated().add();
		for (int i = 0; i < 5; i++) {
			show.cue(encore, 3_000_000 + i * 10_500_000L, "C", willow).tube("R5", i + 1).pin("M2", 5 + i, 6.6).add();
		}
		Waiver waiver = new Waiver("separation", Optional.of("Willow100"), Optional.of("A"), "barge 60 m out, agreed on site",
				"A. Inspector", Optional.of(LocalDate.of(2027, 6, 20)), HERE);
		show.finding("separation", Severity.ERROR, "Gold willow at A stands 60 m from the audience.", new Subject(List.of("Willow100"),
				List.of("A")), Optional.of(waiver));
		show.finding("no-tube", Severity.ERROR, "Cue 15 at C has no tube.", new Subject(List.of("Mystery"), List.of("C")), Optional.empty());
		show.finding("estimated-value", Severity.WARNING, "The rise of Mystery is estimated.", new Subject(List.of("Mystery"), List.of("C")),
				Optional.empty());
		return show;
	}
}
