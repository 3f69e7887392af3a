package org.girandole.lang.ide.server;

/** What has to be replaced to turn one text into another. */
record Stretch(int offset, int length, String text) {
    static Stretch between(String before, String after) {
        int shorter = Math.min(before.length(), after.length());
        int same = 0;
        while (same < shorter && before.charAt(same) == after.charAt(same)) {
            same++;
        }
        int tail = 0;
        while (tail < shorter - same && before.charAt(before.length() - 1 - tail) == after.charAt(after.length() - 1 - tail)) {
            tail++;
        }
        return new Stretch(same, before.length() - same - tail, after.substring(same, after.length() - tail));
    }
}
