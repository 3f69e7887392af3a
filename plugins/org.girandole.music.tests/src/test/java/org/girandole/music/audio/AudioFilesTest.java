package org.girandole.music.audio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class AudioFilesTest {
    @TempDir
    Path folder;

    @ParameterizedTest
    @CsvSource({
        "stereo16.wav,   'WAV, 16-bit PCM',   22050, 2, 8820",
        "stereo24.wav,   'WAV, 24-bit PCM',   22050, 2, 8820",
        "float64.wav,    'WAV, 64-bit float', 22050, 2, 8820",
        "mono8k.wav,     'WAV, 16-bit PCM',   8000,  1, 3200",
        "surround71.wav, 'WAV, 16-bit PCM',   8000,  8, 3200",
        "stereo24.aiff,  'AIFF, 24-bit PCM',  22050, 2, 8820",
        "stereo24.flac,  'FLAC, 24-bit',      22050, 2, 8820",
        "stereo.ogg,     'Ogg Vorbis',        22050, 2, 8820",
        "stereo.mp3,     'MP3',               22050, 2, 8820" })
    void tellsTheFacts(String name, String format, int rate, int channels, long frames) throws IOException {
        AudioFacts facts = AudioFiles.facts(Fixtures.file(folder, name));
        assertThat(facts.format()).isEqualTo(format);
        assertThat(facts.sampleRate()).isEqualTo(rate);
        assertThat(facts.channels()).isEqualTo(channels);
        assertThat(facts.frames()).isEqualTo(frames);
        assertThat(facts.lengthUs()).isEqualTo(400_000);
        assertThat(facts.remarks()).isEmpty();
    }

    /** FIPS 180-2 appendix B.1: the digest of "abc". */
    @Test
    void hashesBytes() throws IOException {
        Path file = Files.writeString(folder.resolve("abc"), "abc", StandardCharsets.US_ASCII);
        assertThat(AudioFiles.sha256(file)).isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    }

    @Test
    void lengthRoundsHalfUp() {
        assertThat(AudioFiles.lengthUs(1, 44_100)).isEqualTo(23);
        assertThat(AudioFiles.lengthUs(44_100L * 10_800 + 22_050, 44_100)).isEqualTo(10_800_500_000L);
        assertThat(AudioFiles.lengthUs(1, 2_000_000)).isEqualTo(1);
    }

    /** The JDK's own readers as judge, sample by sample. */
    @ParameterizedTest
    @ValueSource(strings = { "stereo16.wav", "stereo24.wav", "stereo32.wav", "stereo8.wav", "surround71.wav", "stereo16.aiff", "stereo24.aiff" })
    void agreesWithTheJdkOnUncompressedFiles(String name) throws Exception {
        float[][] ours = Fixtures.samples(Fixtures.file(folder, name));
        try (AudioInputStream in = AudioSystem.getAudioInputStream(new ByteArrayInputStream(Fixtures.bytes(name)))) {
            var format = in.getFormat();
            byte[] bytes = in.readAllBytes();
            int width = format.getSampleSizeInBits() / 8;
            assertThat(ours[0]).hasSize(bytes.length / format.getFrameSize());
            for (int i = 0; i < ours[0].length; i++) {
                for (int c = 0; c < format.getChannels(); c++) {
                    long value = 0;
                    for (int b = 0; b < width; b++) {
                        int from = format.isBigEndian() ? b : width - 1 - b;
                        value = value << 8 | bytes[(i * format.getChannels() + c) * width + from] & 0xFF;
                    }
                    value = width == 1 ? value - 128 : value << 64 - 8 * width >> 64 - 8 * width;
                    assertThat(ours[c][i]).isEqualTo((float) (value / Math.pow(2, 8 * width - 1)));
                }
            }
        }
    }

    /** FFmpeg wrote these from stereo24.wav; lossless means equal to the last bit of the depth. */
    @ParameterizedTest
    @CsvSource({ "stereo24.flac, stereo24.wav", "stereo16.flac, stereo16.wav", "float32.wav, stereo24.wav",
        "float64.wav, stereo24.wav", "stereo32.wav, stereo24.wav" })
    void losslessFormsAreTheSameSound(String name, String reference) throws IOException {
        float[][] ours = Fixtures.samples(Fixtures.file(folder, name));
        float[][] expected = Fixtures.samples(Fixtures.file(folder, reference));
        assertThat(ours).isDeepEqualTo(expected);
    }

    /** FFmpeg's decoding of the same file, delay and padding taken off, within two steps of 20 bits. */
    @ParameterizedTest
    @ValueSource(strings = { "stereo.ogg", "stereo.mp3" })
    void agreesWithFfmpegOnLossyFiles(String name) throws IOException {
        float[][] ours = Fixtures.samples(Fixtures.file(folder, name));
        ByteBuffer expected = ByteBuffer.wrap(Fixtures.bytes(name + ".f32")).order(ByteOrder.LITTLE_ENDIAN);
        for (int i = 0; i < ours[0].length; i++) {
            assertThat(ours[0][i]).isCloseTo(expected.getFloat(8 * i), within(2e-6f));
            assertThat(ours[1][i]).isCloseTo(expected.getFloat(8 * i + 4), within(2e-6f));
        }
    }

    @Test
    void readsLittleEndianAiffC() throws IOException {
        byte[] aiff = Fixtures.bytes("stereo16.aiff");
        int ssnd = indexOf(aiff, "SSND");
        ByteBuffer aifc = ByteBuffer.allocate(12 + 8 + 24 + aiff.length - ssnd);
        aifc.put("FORM".getBytes(StandardCharsets.US_ASCII)).putInt(aifc.capacity() - 8);
        aifc.put("AIFCCOMM".getBytes(StandardCharsets.US_ASCII)).putInt(24);
        aifc.put(aiff, indexOf(aiff, "COMM") + 8, 18).put("sowt\0\0".getBytes(StandardCharsets.US_ASCII));
        aifc.put(aiff, ssnd, 16);
        for (int i = ssnd + 16; i + 1 < aiff.length; i += 2) {
            aifc.put(aiff[i + 1]).put(aiff[i]);
        }
        float[][] ours = Fixtures.samples(Files.write(folder.resolve("swapped.aifc"), aifc.array()));
        assertThat(ours).isDeepEqualTo(Fixtures.samples(Fixtures.file(folder, "stereo16.aiff")));
    }

    @Test
    void readsToTheEndWhenTheWriterNeverFilledInTheSize() throws IOException {
        byte[] wav = Fixtures.bytes("stereo16.wav");
        ByteBuffer.wrap(wav).order(ByteOrder.LITTLE_ENDIAN).putInt(indexOf(wav, "data") + 4, -1);
        AudioFacts facts = AudioFiles.facts(Files.write(folder.resolve("streamed.wav"), wav));
        assertThat(facts.frames()).isEqualTo(8820);
        assertThat(facts.remarks()).isEmpty();
    }

    /** RF64 carries its sizes in a 'ds64' chunk, EBU Tech 3306. */
    @Test
    void readsSixtyFourBitSizes() throws IOException {
        byte[] wav = Fixtures.bytes("stereo16.wav");
        int data = indexOf(wav, "data");
        ByteBuffer rf64 = ByteBuffer.allocate(wav.length + 36).order(ByteOrder.LITTLE_ENDIAN);
        rf64.put("RF64".getBytes(StandardCharsets.US_ASCII)).putInt(-1).put("WAVEds64".getBytes(StandardCharsets.US_ASCII));
        rf64.putInt(28).putLong(wav.length + 28L).putLong(wav.length - data - 8L).putLong(8820).putInt(0);
        rf64.put(wav, 12, wav.length - 12);
        rf64.putInt(indexOf(rf64.array(), "data") + 4, -1);
        assertThat(AudioFiles.facts(Files.write(folder.resolve("long.wav"), rf64.array())).frames()).isEqualTo(8820);
    }

    @ParameterizedTest
    @ValueSource(strings = { "stereo16.wav", "stereo24.aiff", "stereo24.flac" })
    void readsWhatIsLeftOfACutOffFileAndSaysSo(String name) throws IOException {
        byte[] whole = Fixtures.bytes(name);
        AudioFacts facts = AudioFiles.facts(Files.write(folder.resolve(name), Arrays.copyOf(whole, whole.length * 9 / 10)));
        assertThat(facts.frames()).isBetween(1L, 8819L);
        assertThat(facts.remarks()).anySatisfy(r -> assertThat(r).contains("cut off"));
    }

    @Test
    void aDamagedFlacBlockIsSilenceAndTheRestKeepsItsPlace() throws IOException {
        byte[] flac = Fixtures.bytes("stereo16.flac");
        flac[flac.length / 3] ^= 0x55;
        Path file = Files.write(folder.resolve("damaged.flac"), flac);
        float[][] ours = Fixtures.samples(file);
        float[][] whole = Fixtures.samples(Fixtures.file(folder, "stereo16.wav"));
        assertThat(AudioFiles.facts(file).remarks()).containsExactly("Some blocks are damaged; they are heard as silence");
        assertThat(ours[0]).hasSameSizeAs(whole[0]);
        int last = ours[0].length;
        assertThat(Arrays.copyOfRange(ours[0], last - 1000, last)).isEqualTo(Arrays.copyOfRange(whole[0], last - 1000, last));
    }

    @Test
    void saysWhatIsWrong() throws IOException {
        assertWrong(new byte[0], AudioException.Kind.EMPTY, "The file is empty");
        assertWrong("hello, this is text".getBytes(StandardCharsets.US_ASCII), AudioException.Kind.NOT_AUDIO,
                "begins with bytes 68 65 6c 6c; WAV, AIFF, FLAC, Ogg Vorbis and MP3 are read");
        assertWrong(Fixtures.bytes("adpcm.wav"), AudioException.Kind.UNSUPPORTED, "format tag 0x0002");
        assertWrong(Arrays.copyOf(Fixtures.bytes("stereo16.wav"), 20), AudioException.Kind.DAMAGED, "ends in the middle of its header");
        assertWrong(Arrays.copyOf(Fixtures.bytes("stereo16.wav"), 36), AudioException.Kind.DAMAGED, "the 'data' chunk is missing");
        assertWrong(Arrays.copyOf(Fixtures.bytes("stereo16.wav"), 44), AudioException.Kind.EMPTY, "holds no sound at all");
        assertWrong(Arrays.copyOf(Fixtures.bytes("stereo16.flac"), 30), AudioException.Kind.DAMAGED, "it ends in its header");
        assertWrong(Arrays.copyOf(Fixtures.bytes("stereo.ogg"), 100), AudioException.Kind.DAMAGED, "damaged in its header");
        byte[] likeMp3 = new byte[3000];
        likeMp3[0] = (byte) 0xFF;
        likeMp3[1] = (byte) 0xFB;
        assertWrong(likeMp3, AudioException.Kind.NOT_AUDIO, "holds no MPEG audio");
        assertWrong(withChannels(0), AudioException.Kind.DAMAGED, "it claims 0 channels");
        assertWrong(withChannels(3000), AudioException.Kind.DAMAGED, "it claims 3000 channels");
    }

    private static byte[] withChannels(int channels) throws IOException {
        byte[] wav = Fixtures.bytes("stereo16.wav");
        ByteBuffer.wrap(wav).order(ByteOrder.LITTLE_ENDIAN).putShort(22, (short) channels);
        return wav;
    }

    private void assertWrong(byte[] bytes, AudioException.Kind kind, String message) throws IOException {
        Path file = Files.write(folder.resolve("wrong"), bytes);
        assertThatThrownBy(() -> AudioFiles.facts(file)).isInstanceOf(AudioException.class).hasMessageContaining(message)
                .extracting(e -> ((AudioException) e).kind()).isEqualTo(kind);
    }

    private static int indexOf(byte[] bytes, String id) {
        return new String(bytes, StandardCharsets.ISO_8859_1).indexOf(id);
    }
}
