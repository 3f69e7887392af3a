package org.girandole.sheets.sound;

import java.io.IOException;
import java.nio.file.Path;
import org.girandole.music.audio.AudioFiles;
import org.girandole.music.audio.AudioSource;
import org.girandole.timecode.wav.SampleSource;

/** Music of any form that is read, as a timecode file takes it: the channels of each moment side by side. */
public final class MusicSource implements SampleSource {
    private static final int BLOCK_FRAMES = 8192;

    private final AudioSource music;
    private final float[][] block;

    private MusicSource(AudioSource music) {
        this.music = music;
        this.block = new float[music.channels()][BLOCK_FRAMES];
    }

    /**
     * Opens a sound file.
     *
     * @throws IOException if it cannot be read, or is not sound of a form that is read
     */
    public static MusicSource open(Path file) throws IOException {
        return new MusicSource(AudioFiles.open(file));
    }

    @Override
    public int sampleRate() {
        return music.sampleRate();
    }

    @Override
    public int channels() {
        return music.channels();
    }

    @Override
    public long frames() {
        return music.frames();
    }

    @Override
    public int read(float[] interleaved, int offset, int frames) throws IOException {
        int got = music.read(block, 0, Math.min(frames, BLOCK_FRAMES));
        for (int channel = 0; channel < block.length; channel++) {
            for (int i = 0; i < got; i++) {
                interleaved[offset + i * block.length + channel] = block[channel][i];
            }
        }
        return got;
    }

    @Override
    public void close() throws IOException {
        music.close();
    }
}
