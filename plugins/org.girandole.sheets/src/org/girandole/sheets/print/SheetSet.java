package org.girandole.sheets.print;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.script.Module;
import org.girandole.plan.script.Rack;
import org.girandole.plan.script.ReleaseSpec;
import org.girandole.plan.script.Site;
import org.girandole.sheets.diff.Since;
import org.girandole.sheets.print.html.AfterShowSheet;
import org.girandole.sheets.print.html.ChangeSheet;
import org.girandole.sheets.print.html.ChecklistSheet;
import org.girandole.sheets.print.html.FiringSheet;
import org.girandole.sheets.print.html.LabelSheet;
import org.girandole.sheets.print.html.Page;
import org.girandole.sheets.print.html.PositionSheet;
import org.girandole.sheets.print.html.PullSheet;
import org.girandole.sheets.print.html.RunningSheet;
import org.girandole.sheets.print.html.ShooterSheet;
import org.girandole.sheets.print.html.SiteSheet;
import org.girandole.sheets.print.html.SoundSheet;
import org.girandole.sheets.print.html.SummarySheet;
import org.girandole.sheets.print.html.TransportSheet;
import org.girandole.sheets.print.html.WiringSheet;
import org.girandole.sheets.print.values.AfterShow;
import org.girandole.sheets.print.values.Checklists;
import org.girandole.sheets.print.values.FiringRows;
import org.girandole.sheets.print.values.Head;
import org.girandole.sheets.print.values.LabelPages;
import org.girandole.sheets.print.values.PositionLoad;
import org.girandole.sheets.print.values.PullList;
import org.girandole.sheets.print.values.RunningRows;
import org.girandole.sheets.print.values.ShooterRows;
import org.girandole.sheets.print.values.SiteMap;
import org.girandole.sheets.print.values.SoundDesk;
import org.girandole.sheets.print.values.Summary;
import org.girandole.sheets.print.values.Transport;
import org.girandole.sheets.print.values.TubeLabels;
import org.girandole.sheets.print.values.WiringRows;

/** All sheets of a release. */
public final class SheetSet {
	private final CheckedPlan checked;
	private final Optional<Since> since;
	private final PaperSize paper;
	private final Head head;
	private final List<Sheet> sheets = new ArrayList<>();
	private final Set<String> fileNames = new HashSet<>();

	private SheetSet(CheckedPlan checked, Optional<Since> since, PaperSize paper, String toolVersion) {
		this.checked = checked;
		this.since = since;
		this.paper = paper;
		this.head = Head.of(checked, toolVersion);
	}

	/** The sheets of a plan, the summary first, then by number and in the order of the script. */
	public static List<Sheet> of(CheckedPlan checked, PaperSize paper, String toolVersion) {
		return of(checked, Optional.empty(), paper, toolVersion);
	}

	/** The sheets of a plan that names its predecessor: with one more, which tells what changed. */
	public static List<Sheet> of(CheckedPlan checked, Optional<Since> since, PaperSize paper, String toolVersion) {
		return new SheetSet(checked, since, paper, toolVersion).make();
	}

	private List<Sheet> make() {
		Plan plan = checked.plan();
		boolean severalSlots = plan.soundtracks().size() > 1;
		Page page = new Page(head, paper);
		for (PlannedSoundtrack soundtrack : plan.soundtracks()) {
			String name = soundtrack.script().label();
			add("2 " + soundtrack.slot(), "02-running-slot-" + soundtrack.slot(), "Running sheet, slot " + soundtrack.slot() + ": " + name,
					new RunningSheet(new Page(head.inSlot(soundtrack.slot()), paper)).html(RunningRows.of(plan, soundtrack)));
		}
		add("3", "03-firing-table", "Firing table", new FiringSheet(page).html(FiringRows.of(plan)));
		for (String position : positions(plan)) {
			add("4 " + position, "04-position-" + position, "Position " + position,
					new PositionSheet(page, severalSlots).html(PositionLoad.of(checked, position)));
		}
		for (Module module : plan.script().modules()) {
			add("5 " + module.name(), "05-wiring-" + module.name(), "Wiring of module " + module.name(),
					new WiringSheet(page, severalSlots).html(WiringRows.of(checked, module)));
		}
		add("6", "06-pull-list", "Pull list", new PullSheet(page).html(PullList.of(plan, positions(plan))));
		add("7", "07-transport", "Transport summary", new TransportSheet(page).html(Transport.of(plan)));
		SiteMap.of(checked).ifPresent(map -> add("8", "08-site-plan", "Site plan", new SiteSheet(page).html(map)));
		add("9", "09-sound-desk", "Sound desk", new SoundSheet(page).html(SoundDesk.of(plan)));
		add("10", "10-checklists", "Crew checklists", new ChecklistSheet(page).html(Checklists.of(plan, head.stamp())));
		add("11", "11-after-show", "Misfires and after the show",
				new AfterShowSheet(page, severalSlots).html(AfterShow.of(plan, positions(plan))));
		add("12", "12-tube-labels", "Tube labels", new LabelSheet(page).html(LabelPages.of(TubeLabels.of(positions(plan).stream()
				.map(position -> PositionLoad.of(checked, position)).toList(), head.stamp()), plan.script().release().flatMap(ReleaseSpec::labels))));
		for (PlannedSoundtrack soundtrack : plan.soundtracks()) {
			add("13 " + soundtrack.slot(), "13-timecode-fails-slot-" + soundtrack.slot(), "When timecode fails, slot " + soundtrack.slot() + ": "
					+ soundtrack.script().label(), new ShooterSheet(new Page(head.inSlot(soundtrack.slot()), paper)).html(ShooterRows.of(plan, soundtrack)));
		}
		since.ifPresent(earlier -> add("14", "14-changes", "What changed since stamp " + earlier.stampPrinted(), new ChangeSheet(page).html(earlier)));
		List<String> contents = sheets.stream().map(sheet -> "Sheet " + sheet.id() + ": " + sheet.title()).toList();
		List<Sheet> all = new ArrayList<>();
		all.add(new Sheet("1", fileName("01-summary"), "Summary and checks", new SummarySheet(page, head).html(Summary.of(checked), contents)));
		all.addAll(sheets);
		return List.copyOf(all);
	}

	/** Positions with something on them, in the order of the site, then those that the site does not know. */
	private static List<String> positions(Plan plan) {
		List<String> used = new ArrayList<>(plan.cues().stream().map(PlannedCue::position).toList());
		plan.script().racks().stream().map(Rack::position).forEach(used::add);
		List<String> ordered = new ArrayList<>(plan.script().site().map(Site::positions).orElse(List.of()).stream()
				.map(Site.Position::name).filter(used::contains).toList());
		used.stream().distinct().filter(name -> !ordered.contains(name)).sorted().forEach(ordered::add);
		return ordered;
	}

	private void add(String id, String fileName, String title, String html) {
		sheets.add(new Sheet(id, fileName(fileName), title, html));
	}

	/** Lower case, letters and digits of ASCII and hyphens only; a number is added when two names become the same. */
	private String fileName(String wanted) {
		String safe = wanted.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("-+$", "");
		String name = safe;
		for (int i = 2; !fileNames.add(name); i++) {
			name = safe + "-" + i;
		}
		return name;
	}
}
