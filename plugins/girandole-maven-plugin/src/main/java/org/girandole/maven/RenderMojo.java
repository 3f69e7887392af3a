package org.girandole.maven;

import java.io.BufferedOutputStream;
import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.apache.maven.plugin.AbstractMojo;
import org.apache.maven.plugin.MojoExecutionException;
import org.apache.maven.plugins.annotations.LifecyclePhase;
import org.apache.maven.plugins.annotations.Mojo;
import org.apache.maven.plugins.annotations.Parameter;
import org.girandole.music.audio.AudioException;
import org.girandole.music.synth.PieceRenderer;

/**
 * Plays Standard MIDI Files into WAV files of the same name beside them, with plain instruments of the program's own: a soundtrack to work
 * with until there is a recording. No sound device is needed, and every machine gives the same samples.
 */
@Mojo(name = "render", defaultPhase = LifecyclePhase.INITIALIZE, threadSafe = true)
public final class RenderMojo extends AbstractMojo {
    /** The MIDI files. */
    @Parameter(property = "girandole.pieces", required = true)
    private File[] pieces;

    @Override
    public void execute() throws MojoExecutionException {
        for (File piece : pieces) {
            render(piece.toPath());
        }
    }

    private void render(Path midi) throws MojoExecutionException {
        String name = midi.getFileName().toString();
        Path wav = midi.resolveSibling(name.replaceFirst("\\.[^.]*$", "") + ".wav");
        Path part = midi.resolveSibling(wav.getFileName() + ".unfinished");
        try {
            if (wav.equals(midi)) {
                throw new MojoExecutionException("'" + midi + "' is named as a WAV file; name Standard MIDI Files in <pieces>.");
            }
            long lengthUs;
            try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(part))) {
                lengthUs = PieceRenderer.writeWav(Files.readAllBytes(midi), out);
            }
            Files.move(part, wav, StandardCopyOption.REPLACE_EXISTING);
            getLog().info("Played " + name + " into " + wav + ", " + lengthUs / 1_000_000 + " s");
        } catch (AudioException e) {
            throw new MojoExecutionException("'" + midi + "' cannot be played: " + e.getMessage() + ".", e);
        } catch (IOException e) {
            throw new MojoExecutionException("'" + midi + "' could not be played into '" + wav + "': " + e.getMessage() + ".", e);
        } finally {
            part.toFile().delete();
        }
    }
}
