package org.girandole.plan.script;

import java.util.List;
import java.util.Optional;

/**
 * What a release contains.
 *
 * @param sheetFormats of {@code pdf} and {@code html}
 * @param tables names of layouts; {@code standard} is the built-in one
 * @param paper {@code A4} or {@code Letter}
 * @param labels the label paper for tube labels; empty for the sheets' own grid on plain paper
 * @param timecodeWavHz sample rates of the timecode recordings, empty for none
 * @param marks of {@code midi}, {@code labels} and {@code cues}
 */
public record ReleaseSpec(List<String> sheetFormats, List<String> tables, String paper, Optional<LabelGrid> labels,
        List<Integer> timecodeWavHz, List<String> marks, SourceRef source) {
    public ReleaseSpec {
        sheetFormats = List.copyOf(sheetFormats);
        tables = List.copyOf(tables);
        timecodeWavHz = List.copyOf(timecodeWavHz);
        marks = List.copyOf(marks);
    }
}
