package org.girandole.studio.views.site;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.girandole.protocol.FindingView;
import org.girandole.protocol.SiteView;
import org.girandole.protocol.WindView;
import org.girandole.studio.views.draw.Pen;
import org.girandole.studio.views.draw.Pen.Letters;

/** What the site view says: in the corner, beside the dial and at the foot. */
final class SiteWords {
    /** Lines of letters in the height of the view for each line of words in the corner. */
    private static final double LINES_TO_WORDS = 4;
    private static final int MOST_LINES = 9;
    /** Lines of words in the corner while they are folded. */
    private static final int FOLDED_LINES = 3;

    private static final String KEY = "Solid: inside it 99 of 100 unburst shells of each kind come down. Dotted: 99 of 100 pieces of debris. "
            + "Dashed circle: distance asked.";
    private static final String SHORT_KEY = "Inside: 99 of 100 unburst shells (solid), pieces of debris (dotted). Dashed circle: distance asked.";

    private final Pen pen;
    private final SiteState state;
    private final SiteView site;

    SiteWords(Pen pen, SiteState state) {
        this.pen = pen;
        this.state = state;
        this.site = state.site();
    }

    /** @param bad whether it is of something that is wrong */
    record Line(String text, Letters letters, boolean bad) {
    }

    private static boolean bad(String text) {
        return (text.contains("NOT ") || text.contains("ASSESSMENT")) && !text.contains("agreed to");
    }

    private List<Line> wrapped(String text, double room, Letters letters) {
        boolean bad = bad(text);
        return pen.wrapped(text, room, letters).stream().map(line -> new Line(line, letters, bad)).toList();
    }

    /**
     * The words in the corner, in lines no longer than the room. What is wrong comes first, and the first of it is always whole; what does not
     * fit is counted.
     *
     * @param high lines of letters in the height that they may have when all are asked for
     */
    List<Line> corner(double room, double high, SiteLayout.Fold fold) {
        boolean brief = fold != SiteLayout.Fold.USUAL;
        List<String> lines = state.selected().map(at -> ofPosition(at, brief)).orElseGet(this::ofSite);
        if (fold == SiteLayout.Fold.COUNTED && state.folded()) {
            long bad = lines.stream().filter(SiteWords::bad).count();
            return wrapped(bad > 0 ? "NOT CLEAN: " + bad + " (L)" : lines.size() + " more (L)", room, Letters.SMALL);
        }
        List<Line> shown = new ArrayList<>();
        if (!brief || state.selected().isPresent()) {
            shown.addAll(wrapped(lines.get(0), room, Letters.BOLD));
        }
        int most = (int) Math.max(brief ? 1 : FOLDED_LINES, state.folded() ? 0 : state.unfolded() ? high : Math.min(MOST_LINES, high / LINES_TO_WORDS));
        for (int i = 1; i < lines.size(); i++) {
            List<Line> next = wrapped(lines.get(i), room, Letters.SMALL);
            boolean first = i == 1 && !(brief && next.stream().noneMatch(Line::bad));
            if (!first && shown.size() + next.size() + (i + 1 < lines.size() ? 1 : 0) > most) {
                shown.add(new Line("and " + (lines.size() - i) + " more" + (state.unfolded() ? "" : " (L)"), Letters.SMALL, false));
                break;
            }
            shown.addAll(next);
        }
        return shown;
    }

    private List<String> ofPosition(SiteView.Position at, boolean brief) {
        List<String> lines = new ArrayList<>();
        lines.add(brief ? at.name() + ": " + standing(at) : "Position " + at.name() + ": " + at.cues() + (at.cues() == 1 ? " cue, " : " cues, ") + standing(at));
        site.distances().stream().filter(line -> line.position().equals(at.name())).sorted(Comparator.comparing(SiteView.Distance::met))
                .forEach(line -> lines.add(state.folded() && !line.met() ? gist(line) : whole(line)));
        site.findings().stream().filter(finding -> finding.positions().isEmpty() || finding.positions().contains(at.name()))
                .map(finding -> (finding.waived() ? "waived: " : "NOT CLEAN: ") + finding.message()).distinct().forEach(lines::add);
        return lines;
    }

    private List<String> ofSite() {
        List<String> lines = new ArrayList<>(List.of(site.name()));
        Map<String, List<String>> unmet = new LinkedHashMap<>();
        site.distances().stream().filter(line -> !line.met())
                .forEach(line -> unmet.computeIfAbsent(gist(line) + agreed(line), key -> new ArrayList<>()).add(line.position()));
        if (state.folded() && allAgreed()) {
            lines.add("only what was agreed to in writing");
        }
        unmet.forEach((words, positions) -> lines.add(String.join(", ", positions) + " " + words));
        site.findings().stream().filter(finding -> !finding.waived()).map(finding -> "NOT CLEAN: " + finding.message()).distinct().forEach(lines::add);
        long met = site.distances().stream().filter(SiteView.Distance::met).count();
        lines.add(met + " of " + site.distances().size() + " distances are met");
        lines.add("distances by " + site.table());
        return lines;
    }

    private static String standing(SiteView.Position position) {
        return switch (position.state()) {
            case "clean" -> "nothing found in this wind";
            case "waived" -> "only what was agreed to";
            case "unchecked" -> "NOT CHECKED";
            default -> "NOT CLEAN in this wind";
        };
    }

    /** Whether something was found, all of it was agreed to in writing, and nothing is unknown. */
    private boolean allAgreed() {
        return site.falloutUnknown().isEmpty() && site.positions().stream().allMatch(at -> at.state().equals("clean") || at.state().equals("waived"))
                && site.positions().stream().anyMatch(at -> at.state().equals("waived")) && site.findings().stream().allMatch(FindingView::waived);
    }

    /** Whether all that was found at the position was agreed to in writing. */
    private String agreed(SiteView.Distance line) {
        return site.positions().stream().filter(at -> at.name().equals(line.position())).anyMatch(at -> at.state().equals("waived"))
                ? " (agreed to in writing)" : "";
    }

    private String gist(SiteView.Distance line) {
        String assessment = ": ASSESSMENT needed" + (state.folded() ? "" : ", " + line.assessment());
        return "to " + line.place() + (line.askedM() == null ? assessment : ": " + metres(line.askedM()) + " asked, NOT MET");
    }

    private static String whole(SiteView.Distance line) {
        String found = "to " + line.place() + ": " + metres(line.foundM()) + " there, ";
        if (line.askedM() == null) {
            return found + "ASSESSMENT needed: " + line.assessment();
        }
        return found + (line.estimated() ? "\u2248 " : "") + metres(line.askedM()) + " asked" + (line.met() ? ", met" : ", NOT MET");
    }

    /** What a line beside the dial is about: the wind that is drawn, that it is tried, that of the script, that the script has none. */
    enum About {
        WIND, TRIED, SCRIPT, MISSING
    }

    /** A line beside the dial. */
    record Wind(String text, About kind) {
    }

    /** The words about the wind, for beside the dial; in short lines where there is little room. */
    List<Wind> wind(boolean brief) {
        List<Wind> lines = new ArrayList<>();
        boolean few = state.small();
        if (few) {
            lines.add(new Wind((brief ? "" : "wind from ") + degrees(state.wind()), About.WIND));
            lines.add(new Wind((brief ? "" : "at ") + speed(state.wind()), About.WIND));
        } else {
            lines.add(new Wind("wind " + words(state.wind()), About.WIND));
        }
        WindView script = site.scriptWind();
        if (state.trying()) {
            lines.add(new Wind(!few ? "TRIED, not in the script" : state.settled() ? "TRIED" : "TRIED\u2026", About.TRIED));
            if (!few || script == null && !brief) {
                lines.add(new Wind(script == null ? "script: none" : "script " + words(script), About.SCRIPT));
            }
            if (!few && !state.settled()) {
                lines.add(new Wind("computing\u2026", About.TRIED));
            }
        } else if (script == null) {
            lines.add(new Wind(few ? "script: none" : "the script says none", About.MISSING));
        }
        return lines;
    }

    /** The words at the foot; while words are folded, only what is never folded. */
    List<Line> foot(double room) {
        List<Line> lines = new ArrayList<>();
        if (!state.folded()) {
            lines.addAll(wrapped(pen.width(KEY, Letters.SMALL) <= room ? KEY : SHORT_KEY, room, Letters.SMALL));
        }
        String caution = site.falloutUnknown().isEmpty() ? "A computed distance is a floor to start from, not permission."
                : "FALLOUT NOT KNOWN: " + String.join("; ", site.falloutUnknown());
        lines.addAll(wrapped(caution, room, Letters.SMALL));
        return lines;
    }

    /** All of the view in a sentence, for those who hear it. */
    static String description(SiteState state) {
        SiteView site = state.site();
        if (site.nothing() != null) {
            return site.nothing();
        }
        long unmet = site.distances().stream().filter(line -> !line.met()).count();
        return site.name() + ", wind " + words(state.wind()) + (state.trying() ? " tried" : "") + "; " + unmet + " distances not met"
                + state.selected().map(at -> "; position " + at.name() + site.distances().stream().filter(line -> line.position().equals(at.name()))
                        .map(line -> ", " + whole(line)).reduce("", String::concat)).orElse("");
    }

    private static String words(WindView wind) {
        return "from " + degrees(wind) + " at " + speed(wind);
    }

    private static String degrees(WindView wind) {
        return String.format(Locale.ROOT, "%.0f\u00b0", wind.fromDeg());
    }

    private static String speed(WindView wind) {
        return String.format(Locale.ROOT, "%.1f m/s", wind.speedMps());
    }

    static String metres(double m) {
        return String.format(Locale.ROOT, m == Math.rint(m) ? "%.0f m" : "%.1f m", m);
    }
}
