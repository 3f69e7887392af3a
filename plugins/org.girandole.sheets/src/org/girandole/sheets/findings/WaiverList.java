package org.girandole.sheets.findings;

import java.io.IOException;
import java.io.Writer;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Finding;
import org.girandole.plan.script.SourceRef;
import org.girandole.plan.script.Waiver;
import org.girandole.sheets.json.FindingJson;
import org.girandole.sheets.json.JsonText;

/**
 * Every risk that somebody lives with in writing, and what became of it.
 *
 * @param show the show's own title
 * @param day what the script says of the show's day
 * @param entries in the order of the script
 */
public record WaiverList(String show, String day, List<Entry> entries) {
    private static final String EXPIRED_RULE = "waiver-expired";
    private static final String UNUSED_RULE = "waiver-unused";

    public WaiverList {
        entries = List.copyOf(entries);
    }

    /** One waiver with the messages of the findings that it waives. */
    public record Entry(Waiver waiver, State state, List<String> waived) {
        public Entry {
            waived = List.copyOf(waived);
        }
    }

    /** What became of a waiver. */
    public enum State {
        /** It waives what is listed with it. */
        HOLDS("holds"),
        /** It does not reach to the day of the show: nobody agrees to the risk. */
        EXPIRED("expired"),
        /** It fits nothing that was found. */
        UNUSED("unused"),
        /** It fits, but another waiver that stands before it holds already for the same findings. */
        DOUBLED("doubled");

        private final String word;

        State(String word) {
            this.word = word;
        }

        /** For a person and for {@code state} in JSON. */
        public String word() {
            return word;
        }
    }

    /** The waivers of a checked show. */
    public static WaiverList of(CheckedPlan checked) {
        Set<SourceRef> expired = places(checked, EXPIRED_RULE);
        Set<SourceRef> unused = places(checked, UNUSED_RULE);
        List<Entry> entries = checked.plan().script().waivers().stream().map(waiver -> {
            List<String> waived = checked.findings().stream().filter(f -> f.waiver().filter(waiver::equals).isPresent())
                    .map(Finding::message).toList();
            State state = expired.contains(waiver.source()) ? State.EXPIRED
                    : unused.contains(waiver.source()) ? State.UNUSED : waived.isEmpty() ? State.DOUBLED : State.HOLDS;
            return new Entry(waiver, state, waived);
        }).toList();
        return new WaiverList(checked.plan().script().show().label(),
                checked.plan().script().show().date().map(Object::toString).orElse("a day that the script does not state"), entries);
    }

    /** How many are in this state. */
    public long count(State state) {
        return entries.stream().filter(entry -> entry.state() == state).count();
    }

    /** Writes the list for a person. */
    public void writeText(UnaryOperator<String> path, Writer out) throws IOException {
        for (Entry entry : entries) {
            Waiver waiver = entry.waiver();
            out.write(waiver.rule() + waiver.subject().map(name -> " for " + name).orElse("")
                    + waiver.position().map(name -> " at " + name).orElse("") + ": " + entry.state().word() + "\n");
            out.write("    because: " + waiver.because() + "\n");
            out.write("    by:      " + waiver.by() + waiver.until().map(day -> ", until " + day).orElse(", without a last day") + "\n");
            out.write("    waives:  " + (entry.waived().isEmpty() ? "nothing" : Integer.toString(entry.waived().size())
                    + (entry.waived().size() == 1 ? " finding" : " findings")) + "\n");
            out.write("    stands:  " + path.apply(waiver.source().file()) + ":" + waiver.source().line() + "\n");
        }
        out.write(entries.size() + (entries.size() == 1 ? " waiver" : " waivers") + " of '" + show + "' on " + day
                + Arrays.stream(State.values()).map(state -> count(state) + " " + state.word())
                        .collect(Collectors.joining(", ", ": ", ".\n")));
    }

    /** Writes the list for programs. */
    public void writeJson(UnaryOperator<String> path, Writer out) throws IOException {
        JsonText json = new JsonText(out);
        json.object().field("schema", 1).field("show", show).field("day", day).object("counts");
        for (State state : State.values()) {
            json.field(state.word(), count(state));
        }
        json.endObject().array("waivers");
        for (Entry entry : entries) {
            json.object();
            FindingJson.waiver(entry.waiver(), path, json);
            json.field("state", entry.state().word()).array("waives");
            for (String message : entry.waived()) {
                json.item(message);
            }
            json.endArray().endObject();
        }
        json.endArray().endObject().end(out);
    }

    private static Set<SourceRef> places(CheckedPlan checked, String rule) {
        return checked.findings().stream().filter(f -> f.rule().equals(rule)).map(Finding::source).collect(Collectors.toSet());
    }
}
