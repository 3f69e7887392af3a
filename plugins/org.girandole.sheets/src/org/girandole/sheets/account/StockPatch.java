package org.girandole.sheets.account;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.girandole.plan.account.Account;
import org.girandole.plan.script.Lot;

/**
 * The counts of lots after a show, as a unified text difference that {@code git apply} and {@code patch} take.
 *
 * @param text empty when no count changes
 * @param leftOut lots whose new count could not be written, with the reason
 */
public record StockPatch(String text, List<String> leftOut) {
    private static final Pattern TOKEN = Pattern.compile("//[^\\n]*|/\\*.*?\\*/|\"(?:\\\\.|[^\"\\\\])*\"|[\\w^]+|\\s+|.", Pattern.DOTALL);
    private static final int CONTEXT = 3;

    public StockPatch {
        leftOut = List.copyOf(leftOut);
    }

    /** @param textOf the text of a script by its path in the project; empty when it is not at hand */
    public static StockPatch of(Account account, Function<String, Optional<String>> textOf) {
        Map<String, String> before = new TreeMap<>();
        Map<String, String> after = new TreeMap<>();
        List<String> leftOut = new ArrayList<>();
        for (Account.LotCount count : account.lots()) {
            Lot lot = count.lot();
            if (count.after() == lot.count()) {
                continue;
            }
            String file = lot.source().file();
            Optional<String> now = Optional.ofNullable(after.get(file)).or(() -> textOf.apply(file));
            if (count.after() < 0) {
                leftOut.add("lot " + lot.name() + ": the show drew more than the script says there were");
            } else if (now.isEmpty()) {
                leftOut.add("lot " + lot.name() + ": its script '" + file + "' is not at hand");
            } else {
                before.putIfAbsent(file, now.get());
                Optional<String> changed = replaced(now.get(), lot, count.after());
                changed.ifPresentOrElse(text -> after.put(file, text), () -> leftOut.add("lot " + lot.name() + ": its count was not found"));
            }
        }
        StringBuilder patch = new StringBuilder();
        after.forEach((file, text) -> patch.append(difference(file, before.get(file), text)));
        return new StockPatch(patch.toString(), leftOut);
    }

    /** The script with another count; nothing but the digits changes. */
    private static Optional<String> replaced(String text, Lot lot, long count) {
        Matcher token = TOKEN.matcher(text);
        int at = lineStart(text, lot.source().line());
        boolean inLot = false;
        String last = "";
        while (token.find(at)) {
            at = token.end();
            String word = token.group();
            if (word.isBlank() || word.startsWith("//") || word.startsWith("/*")) {
                continue;
            }
            if (!inLot) {
                inLot = last.equals("lot") && word.equals(lot.name());
            } else if (last.equals("count") && word.equals(Integer.toString(lot.count()))) {
                return Optional.of(text.substring(0, token.start()) + count + text.substring(token.end()));
            } else if (word.equals("}")) {
                return Optional.empty();
            }
            last = word;
            if (at == text.length()) {
                break;
            }
        }
        return Optional.empty();
    }

    private static int lineStart(String text, int line) {
        int at = 0;
        for (int i = 1; i < line; i++) {
            at = text.indexOf('\n', at) + 1;
        }
        return at;
    }

    /** Lines are only ever changed, never added or taken out, so both sides have the same numbers. */
    private static String difference(String file, String before, String after) {
        String[] old = before.split("(?<=\n)");
        String[] now = after.split("(?<=\n)");
        StringBuilder patch = new StringBuilder("--- a/" + file + "\n+++ b/" + file + "\n");
        int line = 0;
        while (line < old.length) {
            if (old[line].equals(now[line])) {
                line++;
                continue;
            }
            int from = Math.max(0, line - CONTEXT);
            int lastChanged = line;
            for (int i = line; i < old.length && i <= lastChanged + 2 * CONTEXT; i++) {
                lastChanged = old[i].equals(now[i]) ? lastChanged : i;
            }
            int to = Math.min(old.length, lastChanged + CONTEXT + 1);
            patch.append("@@ -").append(from + 1).append(',').append(to - from).append(" +").append(from + 1).append(',').append(to - from)
                    .append(" @@\n");
            hunk(old, now, from, to, patch);
            line = to;
        }
        return patch.toString();
    }

    private static void hunk(String[] old, String[] now, int from, int to, StringBuilder patch) {
        int line = from;
        while (line < to) {
            if (old[line].equals(now[line])) {
                patch.append(' ').append(ended(old[line]));
                line++;
                continue;
            }
            int end = line;
            while (end < to && !old[end].equals(now[end])) {
                end++;
            }
            for (int i = line; i < end; i++) {
                patch.append('-').append(ended(old[i]));
            }
            for (int i = line; i < end; i++) {
                patch.append('+').append(ended(now[i]));
            }
            line = end;
        }
    }

    private static String ended(String line) {
        return line.endsWith("\n") ? line : line + "\n\\ No newline at end of file\n";
    }
}
