package org.girandole.timecode.reader;

import java.util.Optional;

/**
 * A channel of a recording.
 *
 * @param channel  counted from 1, as on the desk
 * @param audio    what it holds as audio
 * @param timecode the timecode on it, if any
 */
public record ChannelReport(int channel, ChannelAudio audio, Optional<TimecodeReading> timecode) {
}
