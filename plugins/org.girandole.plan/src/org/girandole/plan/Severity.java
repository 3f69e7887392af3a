package org.girandole.plan;

/** How grave a finding is. An unwaived ERROR keeps a show from being called clean. */
public enum Severity {
    ERROR, WARNING, INFO;

    /** Lower-case word for output. */
    public String word() {
        return switch (this) {
            case ERROR -> "error";
            case WARNING -> "warning";
            case INFO -> "info";
        };
    }
}
