package org.girandole.sheets.findings;

import java.util.Comparator;
import org.girandole.plan.Finding;
import org.girandole.plan.Severity;
import org.girandole.plan.script.Waiver;

/** Findings as text that can be read aloud and clicked in a terminal. */
public final class FindingText {
    private FindingText() {
    }

    /** All findings, those that somebody agreed to last, and a line that sums them up. */
    public static String of(FindingReport report) {
        StringBuilder text = new StringBuilder();
        for (Finding finding : report.findings().stream().sorted(Comparator.comparing(Finding::waived)).toList()) {
            text.append(headline(finding, report)).append('\n').append(details(finding, "    "));
        }
        return text.append(summary(report)).append('\n').toString();
    }

    /** {@code file:line:column: error rule: message}. */
    public static String headline(Finding finding, FindingReport report) {
        String place = report.path().apply(finding.source().file()) + ":" + finding.source().line() + ":" + finding.source().column();
        String word = finding.waived() ? "waived" : finding.severity().word();
        return printable("%s: %s %s: %s".formatted(place, word, finding.rule(), finding.message()));
    }

    /** The lines below the headline, each indented and ended: what was found, what is allowed, says who, and what helps. */
    public static String details(Finding finding, String indent) {
        StringBuilder text = new StringBuilder();
        line(text, indent, "found", finding.found());
        line(text, indent, "allowed", finding.allowed());
        line(text, indent, "basis", finding.basis());
        line(text, indent, "remedy", finding.remedy());
        finding.waiver().ifPresent(waiver -> line(text, indent, "waived", waiver(waiver)));
        return text.toString();
    }

    /** One line, such as {@code 2 errors, 1 warning, no notes; 1 waived. 3 scripts checked.} */
    public static String summary(FindingReport report) {
        StringBuilder text = new StringBuilder();
        text.append(count(report.open(Severity.ERROR), "error")).append(", ")
                .append(count(report.open(Severity.WARNING), "warning")).append(", ")
                .append(count(report.open(Severity.INFO), "note"));
        if (report.waived() > 0) {
            text.append("; ").append(report.waived()).append(" waived");
        }
        return text.append(". ").append(count(report.scripts(), "script")).append(" checked.").toString();
    }

    private static String waiver(Waiver waiver) {
        return "because \"%s\", by \"%s\"%s (%s)".formatted(waiver.because(), waiver.by(),
                waiver.until().map(date -> ", until " + date).orElse(""), waiver.source());
    }

    private static void line(StringBuilder text, String indent, String name, String value) {
        if (!value.isEmpty()) {
            text.append(indent).append(name).append(": ").append(" ".repeat(7 - name.length())).append(printable(value)).append('\n');
        }
    }

    private static String count(long number, String noun) {
        return (number == 0 ? "no" : Long.toString(number)) + " " + noun + (number == 1 ? "" : "s");
    }

    /** Text from a script may hold characters that drive a terminal; they are shown as a replacement character. */
    private static String printable(String text) {
        return text.replaceAll("\\p{Cntrl}", "\uFFFD");
    }
}
