package org.girandole.studio.editor;

/** The little Markdown that the server writes, as the little HTML that the platform's hovers show. */
final class Markdown {
    private Markdown() {
    }

    static String html(String markdown) {
        StringBuilder html = new StringBuilder();
        boolean code = false;
        for (String line : markdown.split("\n", -1)) {
            if (line.startsWith("```")) {
                html.append(code ? "</pre>" : "<pre>");
                code = !code;
            } else if (code) {
                html.append(escape(line)).append('\n');
            } else {
                html.append(line(line));
            }
        }
        return html.append(code ? "</pre>" : "").toString();
    }

    private static String line(String line) {
        if (line.isBlank()) {
            return "<p>";
        }
        if (line.matches("\\|?\\s*:?-{3,}.*")) {
            return "";
        }
        if (line.startsWith("#")) {
            return "<b>" + inline(line.replaceFirst("#+\\s*", "")) + "</b><br>";
        }
        if (line.matches("\\s*[-*] .*")) {
            return "<li>" + inline(line.replaceFirst("\\s*[-*] ", "")) + "</li>";
        }
        if (line.startsWith("|")) {
            return inline(line.replaceAll("^\\||\\|$", "").replace("|", " \u00b7 ")) + "<br>";
        }
        return inline(line) + "<br>";
    }

    private static String inline(String text) {
        return escape(text).replaceAll("\\*\\*(.+?)\\*\\*", "<b>$1</b>").replaceAll("`([^`]+)`", "$1")
                .replaceAll("\\[([^\\]]+)]\\([^)]*\\)", "$1").replaceAll("(?<![\\w*])\\*([^*]+)\\*(?!\\w)", "<i>$1</i>");
    }

    private static String escape(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }
}
