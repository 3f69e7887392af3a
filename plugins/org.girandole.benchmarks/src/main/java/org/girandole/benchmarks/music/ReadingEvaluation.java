package org.girandole.benchmarks.music;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.girandole.benchmarks.music.GeneratedPieces.Known;
import org.girandole.music.analysis.TrackAnalyser;
import org.girandole.music.audio.AudioFiles;
import org.girandole.music.audio.AudioSource;

/** Decoders against those of FFmpeg, sample by sample, and loudness against its ebur128 filter. */
final class ReadingEvaluation {
    private static final Pattern INTEGRATED = Pattern.compile("I:\\s+(-?[0-9.]+|-inf) LUFS");

    private final Path folder;
    private final PrintStream out;

    ReadingEvaluation(Path folder, PrintStream out) throws IOException {
        this.folder = Files.createDirectories(folder.resolve("reading"));
        this.out = out;
    }

    private void line(String pattern, Object... values) {
        out.println(String.format(Locale.ROOT, pattern, values));
    }

    void decoders(Known known) throws IOException {
        Path wav = folder.resolve("source.wav");
        PlatformSynthesizer.writeWav(known.piece(), wav);
        line("| file | frames ours / FFmpeg | greatest difference, of full scale |");
        line("| --- | --- | --- |");
        compare("a.wav", "ffmpeg", "-i", wav.toString(), "-c:a", "pcm_s16le");
        compare("24.wav", "ffmpeg", "-i", wav.toString(), "-af", "volume=0.7", "-c:a", "pcm_s24le");
        compare("f32.wav", "ffmpeg", "-i", wav.toString(), "-af", "volume=0.7", "-c:a", "pcm_f32le");
        compare("96k.wav", "ffmpeg", "-i", wav.toString(), "-ar", "96000", "-c:a", "pcm_s24le");
        compare("a.aiff", "ffmpeg", "-i", wav.toString(), "-c:a", "pcm_s16be");
        compare("24.aiff", "ffmpeg", "-i", wav.toString(), "-af", "volume=0.7", "-c:a", "pcm_s24be");
        compare("5.flac", "ffmpeg", "-i", wav.toString(), "-c:a", "flac", "-compression_level", "5");
        compare("12.flac", "ffmpeg", "-i", wav.toString(), "-c:a", "flac", "-compression_level", "12");
        compare("24.flac", "ffmpeg", "-i", folder.resolve("24.wav").toString(), "-c:a", "flac", "-sample_fmt", "s32");
        compare("surround.flac", "ffmpeg", "-i", wav.toString(), "-ac", "6", "-c:a", "flac");
        compare("sox.flac", "sox", wav.toString());
        compare("q2.ogg", "ffmpeg", "-i", wav.toString(), "-c:a", "libvorbis", "-q:a", "2");
        compare("q8.ogg", "ffmpeg", "-i", wav.toString(), "-c:a", "libvorbis", "-q:a", "8");
        compare("128.mp3", "ffmpeg", "-i", wav.toString(), "-c:a", "libmp3lame", "-b:a", "128k");
        compare("v2.mp3", "ffmpeg", "-i", wav.toString(), "-c:a", "libmp3lame", "-q:a", "2");
        compare("22k.mp3", "ffmpeg", "-i", wav.toString(), "-ar", "22050", "-ac", "1", "-c:a", "libmp3lame", "-b:a", "48k");
    }

    private void compare(String name, String... encoder) throws IOException {
        Path file = folder.resolve(name);
        List<String> command = new ArrayList<>(List.of(encoder));
        if (encoder[0].equals("ffmpeg")) {
            command.addAll(1, List.of("-v", "error", "-y"));
        }
        command.add(file.toString());
        Tools.run(command);
        Path raw = folder.resolve("reference.f32");
        Tools.run("ffmpeg", "-v", "error", "-y", "-i", file.toString(), "-f", "f32le", "-c:a", "pcm_f32le", raw.toString());
        ByteBuffer reference = ByteBuffer.wrap(Files.readAllBytes(raw)).order(ByteOrder.LITTLE_ENDIAN);
        try (AudioSource source = AudioFiles.open(file)) {
            int channels = source.channels();
            float[][] block = new float[channels][8192];
            long frames = 0;
            double worst = 0;
            for (int n = source.read(block, 0, 8192); n >= 0; n = source.read(block, 0, 8192)) {
                for (int i = 0; i < n; i++) {
                    for (int c = 0; c < channels; c++) {
                        long at = 4 * ((frames + i) * channels + c);
                        if (at + 4 <= reference.capacity()) {
                            worst = Math.max(worst, Math.abs(block[c][i] - reference.getFloat((int) at)));
                        }
                    }
                }
                frames += n;
            }
            line("| %s, %s | %d / %d | %.1e |", name, source.format(), frames, reference.capacity() / 4 / channels, worst);
        }
    }

    void loudness(List<Known> pieces) throws IOException {
        double worst = 0;
        line("| track | ours LUFS | ebur128 LUFS |");
        line("| --- | --- | --- |");
        for (Known known : pieces) {
            Path wav = folder.resolve("loud.wav");
            PlatformSynthesizer.writeWav(known.piece(), wav);
            worst = Math.max(worst, compareLoudness(known.texture(), wav));
        }
        Path quiet = folder.resolve("quiet.wav");
        Tools.run("ffmpeg", "-v", "error", "-y", "-i", folder.resolve("loud.wav").toString(), "-af", "volume=-25dB", "-ar", "48000", "-c:a", "pcm_s24le", quiet.toString());
        worst = Math.max(worst, compareLoudness("25 dB quieter, 48 kHz", quiet));
        Path surround = folder.resolve("surround.wav");
        Tools.run("ffmpeg", "-v", "error", "-y", "-i", folder.resolve("loud.wav").toString(), "-af", "pan=5.1|c0=c0|c1=c1|c2=0.5*c0+0.5*c1|c3=c0|c4=0.7*c0|c5=0.7*c1", "-c:a", "pcm_s16le", surround.toString());
        worst = Math.max(worst, compareLoudness("5.1", surround));
        line("");
        line("Greatest difference: %.2f LU.", worst);
    }

    private double compareLoudness(String name, Path file) throws IOException {
        String report = Tools.run("ffmpeg", "-nostats", "-i", file.toString(), "-filter_complex", "ebur128=framelog=verbose", "-f", "null", "-");
        Matcher m = INTEGRATED.matcher(report);
        String last = null;
        while (m.find()) {
            last = m.group(1);
        }
        double ours = TrackAnalyser.analyse(file).loudness().integratedLufs();
        double theirs = Double.parseDouble(last);
        line("| %s | %.2f | %.1f |", name, ours, theirs);
        return Math.abs(ours - theirs);
    }
}
