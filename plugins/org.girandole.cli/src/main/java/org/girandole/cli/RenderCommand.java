package org.girandole.cli;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.girandole.music.audio.AudioException;
import org.girandole.music.synth.PieceRenderer;
import org.girandole.plan.Times;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Makes a soundtrack to work with from a MIDI file. */
@Command(name = "render", mixinStandardHelpOptions = true, header = "Plays a MIDI file into a WAV file.",
        description = {"", "A soundtrack to work with until there is a recording, played with plain instruments and without a sound device. Every"
                + " machine gives the same samples. Pedals, pitch bends and panning are left out.", ""},
        footer = {"", "Example:", "  girandole render music/tides.mid -o music/tides.wav"})
final class RenderCommand implements Callable<Integer> {
    private static final long MOST_BYTES = 64L << 20;

    @Spec
    private CommandSpec spec;
    @Parameters(paramLabel = "PIECE", description = "A Standard MIDI File.")
    private Path piece;
    @Option(names = {"-o", "--into"}, required = true, paramLabel = "FILE", description = "The WAV file to write; an older one is replaced.")
    private Path into;

    @Override
    public Integer call() {
        if (!into.toString().toLowerCase(Locale.ROOT).endsWith(".wav")) {
            throw new UserException(ExitCode.USAGE, "'" + into + "' is no name for a WAV file; it must end in .wav.");
        }
        byte[] midi = read();
        long[] lengthUs = new long[1];
        try {
            OutputFile.write(into, out -> {
                BufferedOutputStream buffered = new BufferedOutputStream(out);
                try {
                    lengthUs[0] = PieceRenderer.writeWav(midi, buffered);
                } catch (AudioException e) {
                    throw new UserException(ExitCode.USAGE, "'" + piece + "' cannot be played: " + e.getMessage() + ".");
                }
                buffered.flush();
            });
        } catch (OutOfMemoryError e) {
            throw new UserException(ExitCode.USAGE, "'" + piece + "' is too long for the memory at hand. Give more, for example: java -Xmx2g -jar"
                    + " girandole.jar render.");
        }
        PrintWriter out = spec.commandLine().getOut();
        out.println("Written: " + into + ", " + Times.clock(lengthUs[0]) + ", 44100 Hz, stereo, 16 bit");
        out.flush();
        return ExitCode.OK;
    }

    private byte[] read() {
        if (!Files.isRegularFile(piece)) {
            throw new UserException(ExitCode.USAGE, "there is no file '" + piece + "'. Check the name and the folder.");
        }
        try {
            if (Files.size(piece) > MOST_BYTES) {
                throw new UserException(ExitCode.USAGE, "'" + piece + "' is too large for a MIDI file.");
            }
            return Files.readAllBytes(piece);
        } catch (IOException e) {
            throw new UserException(ExitCode.USAGE, "'" + piece + "' may not be read. Check its permissions.");
        }
    }
}
