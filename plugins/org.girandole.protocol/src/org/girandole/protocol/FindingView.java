package org.girandole.protocol;

import java.util.List;

/**
 * Something wrong or doubtful.
 *
 * @param severity error, warning or info
 * @param waived whether somebody agreed to it in writing
 * @param cues numbers of the cues that it stands at; empty when it stands at none
 * @param positions that it is about; empty when it is about no position, or about all
 */
public record FindingView(String rule, String severity, String message, String found, String allowed, String basis, String remedy,
        boolean waived, List<Integer> cues, List<String> positions, SourcePlace source) {
}
