package org.girandole.music.analysis;

import java.util.Optional;
import org.girandole.music.BarBeat;

/**
 * A place worth a mark.
 *
 * @param name       free for the writer to change; letters and digits
 * @param timeUs     from the start of the track
 * @param barBeat    where it lies in the proposed tempo map, if it lies on a quarter of a beat within 25 ms
 * @param confidence 0 to 1
 * @param reason     why it is worth a mark, in words
 */
public record ProposedMark(String name, long timeUs, Optional<BarBeat> barBeat, double confidence, String reason) {
}
