package org.girandole.plan.table;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.script.ReleaseSpec;
import org.girandole.plan.script.SourceRef;
import org.girandole.plan.script.TableLayout;

/** Fills firing tables. */
public final class Tables {
    /** The name under which a script asks for the built-in table. */
    public static final String STANDARD = "standard";

    private static final SourceRef NOWHERE = new SourceRef("", 1, 1, 1);
    private static final TableLayout STANDARD_LAYOUT = new TableLayout(STANDARD, "standard.csv", ",", true, true, List.of(
            column("Slot", "slot", ""), column("Cue", "number", ""), column("Fire", "fire", "timecode"),
            column("Into frame (ms)", "remainder", ""), column("Fire from first note (s)", "fire", "seconds"),
            column("Module", "module", ""), column("Address", "address", ""), column("Pin", "pin", ""),
            column("Position", "position", ""), column("Rack", "rack", ""), column("Tube", "tube", ""),
            column("Tilt (deg)", "tilt", ""), column("What", "effect label", ""), column("Calibre (mm)", "calibre", ""),
            column("Pieces", "pieces", ""), column("Seen", "seen", "clock"), column("Seen or heard", "mode", ""),
            column("Rise (s)", "rise", ""), column("Rise from", "rise source", ""), column("Tolerance (ms)", "tolerance", "milliseconds"),
            column("Reading (ohm)", "ohms", ""), column("Section", "section", ""), column("Name", "name", ""),
            column("Note", "note", ""), column("Soundtrack", "soundtrack", ""), column("Key", "key", ""),
            column("Stamp", "stamp", "")), NOWHERE);

    private Tables() {
    }

    /** The built-in table, or the script's own table of that name. */
    public static Table standard(Plan plan) {
        return plan.script().tables().stream().filter(layout -> layout.name().equals(STANDARD)).findFirst()
                .map(layout -> fill(layout, plan))
                .orElseGet(() -> cells(STANDARD_LAYOUT, plan));
    }

    /**
     * The tables that the show's release asks for; without a {@code release} block the built-in one and every layout of the script.
     *
     * @throws TableException when a layout cannot be filled or is asked for and not there
     */
    public static List<Table> released(Plan plan) {
        Map<String, TableLayout> layouts = new HashMap<>();
        plan.script().tables().forEach(layout -> layouts.put(layout.name(), layout));
        List<Table> tables = new ArrayList<>();
        tables.add(standard(plan));
        Optional<ReleaseSpec> spec = plan.script().release();
        List<String> names = spec.map(ReleaseSpec::tables)
                .orElseGet(() -> plan.script().tables().stream().map(TableLayout::name).toList());
        for (String name : names.stream().distinct().filter(n -> !n.equals(STANDARD)).toList()) {
            TableLayout layout = layouts.get(name);
            if (layout == null) {
                throw new TableException("The release asks for table '%s', but no table has that name. Write a block: table %s { … }"
                        .formatted(name, name));
            }
            tables.add(fill(layout, plan));
        }
        return List.copyOf(tables);
    }

    /**
     * One table.
     *
     * @throws TableException when the layout has a problem; {@link LayoutCheck} tells them all
     */
    public static Table fill(TableLayout layout, Plan plan) {
        LayoutCheck.problems(layout).stream().findFirst().ifPresent(problem -> {
            throw new TableException("%s: %s. Found: %s. Allowed: %s. Remedy: %s.".formatted(problem.source(), problem.message(), problem.found(),
                    problem.allowed(), problem.remedy()));
        });
        return cells(layout, plan);
    }

    private static Table cells(TableLayout layout, Plan plan) {
        List<TableField> fields = layout.columns().stream().map(c -> TableField.find(c.field()).orElseThrow()).toList();
        List<TableFormat> formats = layout.columns().stream()
                .map(c -> TableField.find(c.field()).orElseThrow().format(c.format()).orElseThrow()).toList();
        Map<String, Optional<PlannedSoundtrack>> soundtracks = new HashMap<>();
        List<List<Cell>> rows = plan.cues().stream()
                .map(cue -> new Row(plan, cue, soundtracks.computeIfAbsent(cue.soundtrack(), plan::soundtrack)))
                .map(row -> cells(row, fields, formats))
                .toList();
        return new Table(layout, rows);
    }

    private static List<Cell> cells(Row row, List<TableField> fields, List<TableFormat> formats) {
        List<Cell> cells = new ArrayList<>(fields.size());
        for (int i = 0; i < fields.size(); i++) {
            cells.add(fields.get(i).cell(row, formats.get(i)));
        }
        return cells;
    }

    private static TableLayout.Column column(String title, String field, String format) {
        return new TableLayout.Column(title, field, format, NOWHERE);
    }
}
