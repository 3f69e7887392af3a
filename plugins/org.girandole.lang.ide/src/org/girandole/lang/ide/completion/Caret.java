package org.girandole.lang.ide.completion;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Set;

/**
 * Where the caret stands.
 *
 * @param blocks words before the brace of each open block, outermost first
 * @param statement words since the beginning of the line of the block that the caret is in, without the word being written
 * @param prefix what is written of the word at the caret
 * @param fresh whether nothing but space stands before the caret's word on its line
 * @param inText whether the caret is in a text or comment, where nothing is proposed
 */
record Caret(List<List<Word>> blocks, List<Word> statement, String prefix, boolean fresh, boolean inText) {
    private static final Set<String> STARTS = Set.of("use", "show", "soundtrack", "shell", "salute", "mine", "comet", "candle", "cake", "fountain",
            "wheel", "flare", "rocket", "lot", "chain", "site", "igniter", "wire", "module", "rack", "firing", "figure", "score", "section",
            "repeat", "distances", "table", "release", "rehearse", "waive", "rule", "tempo", "hold", "cue", "play", "at", "position", "group", "audience",
            "boundary", "protect", "mark", "marks", "column", "keep", "assess", "then");

    /** Reads the text up to the caret. */
    static Caret at(String text, int offset) {
        Deque<List<Word>> open = new ArrayDeque<>();
        List<Word> words = new ArrayList<>();
        boolean first = true;
        int i = 0;
        while (i < offset) {
            char c = text.charAt(i);
            if (c == '\n') {
                first = true;
                i++;
            } else if (Character.isWhitespace(c)) {
                i++;
            } else if (text.startsWith("//", i)) {
                int end = text.indexOf('\n', i);
                if (end < 0 || end >= offset) {
                    return new Caret(List.of(), List.of(), "", false, true);
                }
                i = end;
            } else if (text.startsWith("/*", i)) {
                int end = text.indexOf("*/", i + 2);
                if (end < 0 || end + 2 > offset) {
                    return new Caret(List.of(), List.of(), "", false, true);
                }
                i = end + 2;
            } else if (c == '"') {
                int end = closing(text, i, offset);
                if (end < 0) {
                    return new Caret(List.of(), List.of(), "", false, true);
                }
                words.add(new Word(text.substring(i, end), i, first));
                first = false;
                i = end;
            } else if (isWord(c)) {
                int end = wordEnd(text, i, offset);
                if (end == offset) {
                    return new Caret(blocks(open), statement(words), text.substring(i, offset), first, false);
                }
                words.add(new Word(text.substring(i, end), i, first));
                first = false;
                i = end;
            } else if (c == '{') {
                open.push(statement(words));
                words = new ArrayList<>();
                i++;
            } else if (c == '}') {
                if (!open.isEmpty()) {
                    open.pop();
                }
                words = new ArrayList<>();
                i++;
            } else {
                String sign = text.startsWith("..", i) ? ".." : text.startsWith("+-", i) ? "+-" : String.valueOf(c);
                words.add(new Word(sign, i, first));
                first = false;
                i += sign.length();
            }
        }
        return new Caret(blocks(open), statement(words), "", first, false);
    }

    private static int closing(String text, int from, int offset) {
        for (int i = from + 1; i < offset; i++) {
            char c = text.charAt(i);
            if (c == '\\') {
                i++;
            } else if (c == '"') {
                return i + 1;
            } else if (c == '\n') {
                // A text without its end ends with its line, as for the parser.
                return i;
            }
        }
        return -1;
    }

    private static boolean isWord(char c) {
        return Character.isLetterOrDigit(c) || c == '_' || c == '^' || c == '°' || c == '²' || c == 'µ';
    }

    private static int wordEnd(String text, int from, int offset) {
        int i = from;
        boolean number = Character.isDigit(text.charAt(from));
        while (i < offset && (isWord(text.charAt(i)) || number && i + 1 < text.length() && (text.charAt(i) == ':' || text.charAt(i) == '.'
                || text.charAt(i) == ';') && Character.isDigit(text.charAt(i + 1)))) {
            i++;
        }
        return i;
    }

    private static List<List<Word>> blocks(Deque<List<Word>> open) {
        List<List<Word>> blocks = new ArrayList<>(open);
        java.util.Collections.reverse(blocks);
        return blocks;
    }

    /** From the last line on that begins with a word that can begin something. */
    private static List<Word> statement(List<Word> words) {
        for (int i = words.size() - 1; i >= 0; i--) {
            if (words.get(i).first() && STARTS.contains(words.get(i).text())) {
                return List.copyOf(words.subList(i, words.size()));
            }
        }
        return List.copyOf(words);
    }

    /** The word with which the innermost block begins; empty at the top. */
    String block() {
        List<Word> head = blocks.isEmpty() ? List.of() : blocks.get(blocks.size() - 1);
        if (head.isEmpty()) {
            return "";
        }
        String word = head.get(0).text();
        return word.equals("module") && head.size() > 1 && head.get(1).is("type") ? "module type" : word;
    }

    /** The head of the nearest open block that begins with a word, or an empty list. */
    List<Word> head(String word) {
        for (int i = blocks.size() - 1; i >= 0; i--) {
            if (!blocks.get(i).isEmpty() && blocks.get(i).get(0).is(word)) {
                return blocks.get(i);
            }
        }
        return List.of();
    }

    /** The last word before the caret, or an empty one. */
    Word last() {
        return statement.isEmpty() ? new Word(" ", 0, true) : statement.get(statement.size() - 1);
    }

    /** Whether something new may begin here. */
    boolean begins() {
        return statement.isEmpty() || fresh;
    }
}
