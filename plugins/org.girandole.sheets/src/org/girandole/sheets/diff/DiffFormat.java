package org.girandole.sheets.diff;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import org.girandole.plan.diff.DiffReport;
import org.girandole.sheets.json.JsonText;
import org.girandole.sheets.print.html.Html;

/** The forms in which a difference can be written. */
public enum DiffFormat {
    /** For a terminal: indented plain text. */
    TEXT {
        @Override
        public void write(DiffReport report, Writer out) throws IOException {
            line(out, "Before: " + report.before());
            line(out, "Now:    " + report.after());
            line(out, "");
            line(out, report.headline());
            for (DiffReport.Part part : report.parts()) {
                line(out, "");
                line(out, part.title());
                for (DiffReport.Entry entry : part.entries()) {
                    line(out, "  - " + entry.text());
                    for (String detail : shown(entry)) {
                        line(out, "      " + detail);
                    }
                }
            }
        }
    },
    /** For a review on a web page: long lists are folded. */
    MARKDOWN {
        @Override
        public void write(DiffReport report, Writer out) throws IOException {
            line(out, "**" + markdown(report.headline()) + "**");
            line(out, "");
            line(out, markdown(report.before()) + " → " + markdown(report.after()));
            for (DiffReport.Part part : report.parts()) {
                line(out, "");
                line(out, "### " + part.title());
                line(out, "");
                for (DiffReport.Entry entry : part.entries()) {
                    line(out, "- " + markdown(entry.text()));
                    for (String detail : entry.details()) {
                        line(out, "  - " + markdown(detail));
                    }
                }
            }
        }
    },
    /** To print: black on white, nothing that needs a screen. */
    HTML {
        @Override
        public void write(DiffReport report, Writer out) throws IOException {
            line(out, "<!DOCTYPE html>");
            line(out, "<html lang=\"en\"><head><meta charset=\"UTF-8\"/><title>What changed</title>");
            line(out, "<style>body{font-family:sans-serif;max-width:50em;margin:2em auto;line-height:1.4}h1,h2{line-height:1.2}"
                    + "li{margin:.4em 0;break-inside:avoid}li li{margin:.1em 0;font-size:90%}</style></head><body>");
            line(out, "<h1>What changed</h1>");
            line(out, "<p>Before: " + Html.text(report.before()) + "<br/>Now: " + Html.text(report.after()) + "</p>");
            line(out, "<p><strong>" + Html.text(report.headline()) + "</strong></p>");
            for (DiffReport.Part part : report.parts()) {
                line(out, "<h2>" + Html.text(part.title()) + "</h2>");
                line(out, "<ul>");
                for (DiffReport.Entry entry : part.entries()) {
                    out.write("<li>" + Html.text(entry.text()));
                    if (!entry.details().isEmpty()) {
                        line(out, "<ul>");
                        for (String detail : entry.details()) {
                            line(out, "<li>" + Html.text(detail) + "</li>");
                        }
                        out.write("</ul>");
                    }
                    line(out, "</li>");
                }
                line(out, "</ul>");
            }
            line(out, "</body></html>");
        }
    },
    /** For programs. */
    JSON {
        @Override
        public void write(DiffReport report, Writer out) throws IOException {
            JsonText json = new JsonText(out);
            json.object().field("schema", 1).field("before", report.before()).field("after", report.after())
                    .field("headline", report.headline());
            json.array("parts");
            for (DiffReport.Part part : report.parts()) {
                json.object().field("title", part.title()).array("entries");
                for (DiffReport.Entry entry : part.entries()) {
                    json.object().field("text", entry.text()).array("details");
                    for (String detail : entry.details()) {
                        json.item(detail);
                    }
                    json.endArray().endObject();
                }
                json.endArray().endObject();
            }
            json.endArray().endObject().end(out);
        }
    };

    /** A terminal shows this many cues of one paragraph; the other forms show all. */
    private static final int TERMINAL_DETAILS = 8;

    /** Writes the report; the writer stays open. */
    public abstract void write(DiffReport report, Writer out) throws IOException;

    private static void line(Writer out, String text) throws IOException {
        out.write(text);
        out.write('\n');
    }

    private static List<String> shown(DiffReport.Entry entry) {
        int all = entry.details().size();
        if (all <= TERMINAL_DETAILS) {
            return entry.details();
        }
        List<String> few = new ArrayList<>(entry.details().subList(0, TERMINAL_DETAILS - 1));
        few.add("and " + (all - few.size()) + " more");
        return few;
    }

    private static String markdown(String text) {
        return text.replaceAll("([\\\\`*_{}\\[\\]<>#|])", "\\\\$1");
    }
}
