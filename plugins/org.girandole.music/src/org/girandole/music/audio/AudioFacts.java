package org.girandole.music.audio;

import java.util.List;

/**
 * What a script needs to know of a sound file. All of it was counted, not believed.
 *
 * @param format     for a person: {@code WAV, 24-bit PCM}
 * @param sampleRate samples a second
 * @param channels   number of channels
 * @param frames     samples in each channel that can really be decoded
 * @param lengthUs   {@code frames / sampleRate}, rounded half up
 * @param sha256     of the bytes of the file, 64 lower-case hexadecimal digits
 * @param remarks    what was wrong but could be lived with
 */
public record AudioFacts(String format, int sampleRate, int channels, long frames, long lengthUs, String sha256,
        List<String> remarks) {
    public AudioFacts {
        remarks = List.copyOf(remarks);
    }
}
