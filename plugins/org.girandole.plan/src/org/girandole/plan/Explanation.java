package org.girandole.plan;

import java.util.List;

/**
 * How a result came about, so that a person can follow it with a pocket calculator.
 *
 * @param title what is explained
 * @param steps in the order of computation
 */
public record Explanation(String title, List<Step> steps) {
    public Explanation {
        steps = List.copyOf(steps);
    }

    /**
     * One step.
     *
     * @param name the value, as later steps call it
     * @param formula the formula in names; empty for a value that was given
     * @param numbers the formula with numbers and units; empty where there is nothing to put in
     * @param result the value with its unit
     * @param source the place in the script, the document or the practice that the value or formula comes from; may be empty
     */
    public record Step(String name, String formula, String numbers, String result, String source) {
        /** The step on one line: {@code fire = seen - rise - latency = 30 s - 2.4 s - 0.005 s = 27.595 s  [harbour.show:41:5]}. */
        public String text() {
            StringBuilder line = new StringBuilder(name);
            for (String part : List.of(formula, numbers, result)) {
                if (!part.isEmpty()) {
                    line.append(" = ").append(part);
                }
            }
            return source.isEmpty() ? line.toString() : line.append("  [").append(source).append(']').toString();
        }
    }

    /** Title and steps, a line each, the steps indented; ends with a line break. The same in every locale. */
    public String text() {
        StringBuilder text = new StringBuilder(title).append('\n');
        steps.forEach(step -> text.append("  ").append(step.text()).append('\n'));
        return text.toString();
    }
}
