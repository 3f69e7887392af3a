package org.girandole.lang.ide.completion;

/**
 * A word, number, text or sign before the caret.
 *
 * @param first whether it is the first on its line
 */
record Word(String text, int offset, boolean first) {
    boolean is(String other) {
        return text.equals(other);
    }

    boolean isNumber() {
        return Character.isDigit(text.charAt(0)) && text.indexOf(':') < 0;
    }

    boolean isTime() {
        return Character.isDigit(text.charAt(0)) && text.indexOf(':') > 0;
    }

    boolean isName() {
        return Character.isLetter(text.charAt(0)) || text.charAt(0) == '_' || text.charAt(0) == '^';
    }

    /** A name without the sign that escapes it. */
    String name() {
        return text.startsWith("^") ? text.substring(1) : text;
    }
}
