package org.girandole.plan.table;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.girandole.plan.script.TableLayout;

/** Looks for what would keep a table layout from being written. */
public final class LayoutCheck {
    /** Files that a release writes by itself, in lower case. */
    private static final Set<String> TAKEN = Set.of("release.json", "plan.json", "standard.csv", "tables.xlsx", "sheets", "timecode",
            "marks");
    /** One plain name: it must be a file inside the release folder on every system. */
    private static final Pattern FILE_NAME = Pattern.compile("[\\p{L}\\p{N}_][\\p{L}\\p{N} ._-]*(?<![. ])");
    /** Names that Windows keeps for devices. */
    private static final Pattern DEVICE = Pattern.compile("(con|prn|aux|nul|com[0-9]|lpt[0-9])(\\..*)?");

    private LayoutCheck() {
    }

    /** Every problem of every layout, in the order of the script. */
    public static List<LayoutProblem> problems(List<TableLayout> layouts) {
        List<LayoutProblem> problems = new ArrayList<>();
        Map<String, String> files = new HashMap<>();
        for (TableLayout layout : layouts) {
            problems.addAll(problems(layout));
            String other = files.putIfAbsent(layout.file().toLowerCase(Locale.ROOT), layout.name());
            if (other != null) {
                problems.add(new LayoutProblem(layout.name(), "Tables '%s' and '%s' would both be written to '%s'"
                        .formatted(other, layout.name(), layout.file()), layout.file(), "a file of its own for each table",
                        "give one of them another file name", layout.source()));
            }
        }
        return List.copyOf(problems);
    }

    /** The problems of one layout, without comparing it to others. */
    public static List<LayoutProblem> problems(TableLayout layout) {
        List<LayoutProblem> problems = new ArrayList<>();
        file(layout, problems);
        if (layout.separator().length() != 1 || "\"\r\n".contains(layout.separator())) {
            problems.add(new LayoutProblem(layout.name(), "Table '%s' needs one character between its columns".formatted(layout.name()),
                    quoted(layout.separator()), "one character, such as \",\" or \";\" or a tab; not a quotation mark or a line end",
                    "write separator \",\"", layout.source()));
        }
        if (layout.columns().isEmpty()) {
            problems.add(new LayoutProblem(layout.name(), "Table '%s' has no columns".formatted(layout.name()), "no column", "at least one column",
                    "add a line such as: column \"cue\" = number", layout.source()));
        }
        layout.columns().forEach(column -> column(layout, column, problems));
        return problems;
    }

    private static void file(TableLayout layout, List<LayoutProblem> problems) {
        String lower = layout.file().toLowerCase(Locale.ROOT);
        if (!FILE_NAME.matcher(layout.file()).matches() || DEVICE.matcher(lower).matches()) {
            problems.add(new LayoutProblem(layout.name(), "Table '%s' cannot be written to '%s'".formatted(layout.name(), layout.file()),
                    quoted(layout.file()), "one file name without folders: letters, digits, spaces and . _ -",
                    "write a name such as \"controller.csv\"; it is put into the release folder", layout.source()));
        } else if (TAKEN.contains(lower) && !(lower.equals("standard.csv") && layout.name().equals(Tables.STANDARD))) {
            problems.add(new LayoutProblem(layout.name(), "Table '%s' would overwrite '%s' of the release".formatted(layout.name(), layout.file()),
                    layout.file(), "a name that the release does not use itself", "choose another file name", layout.source()));
        }
    }

    private static void column(TableLayout layout, TableLayout.Column column, List<LayoutProblem> problems) {
        TableField field = TableField.find(column.field()).orElse(null);
        if (field == null) {
            problems.add(new LayoutProblem(layout.name(), "Column '%s' of table '%s' asks for '%s', which is nothing that a table can hold"
                    .formatted(column.title(), layout.name(), column.field()), column.field(),
                    "one of " + Arrays.stream(TableField.values()).map(TableField::id).collect(Collectors.joining(", ")),
                    "write one of these fields after the equals sign", column.source()));
        } else if (field.formats().isEmpty() && !column.format().isEmpty()) {
            problems.add(new LayoutProblem(layout.name(), "Column '%s' of table '%s' asks for '%s as %s', but there is only one way to write it"
                    .formatted(column.title(), layout.name(), field.id(), column.format()), "as " + column.format(),
                    "'" + field.id() + "' alone", "leave out 'as %s'".formatted(column.format()), column.source()));
        } else if (field.format(column.format()).isEmpty()) {
            problems.add(new LayoutProblem(layout.name(), "Column '%s' of table '%s' asks for '%s as %s', which cannot be written"
                    .formatted(column.title(), layout.name(), field.id(), column.format()), "as " + column.format(),
                    "as " + field.formats().stream().map(TableFormat::id).collect(Collectors.joining(", as ")),
                    "use one of these formats", column.source()));
        }
    }

    private static String quoted(String text) {
        return "\"" + text + "\"";
    }
}
