package org.girandole.studio.views.stage;

import java.net.URI;
import java.nio.file.FileSystemNotFoundException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.LongSupplier;
import org.girandole.protocol.TrackView;

/**
 * Moves the playhead: by the sound where there is sound to hear, by the clock where there is none. Somebody must call {@link #tick} many
 * times a second while it plays.
 */
public final class Playback implements Transport {
    private static final long NS_PER_US = 1_000;

    private final Stage stage;
    private final LongSupplier nanos;
    private final Player player = new Player();
    private final boolean sound;
    private final Runnable started;
    private long startedUs;
    private long startedNs;

    /**
     * @param nanos a clock that only goes forward, such as {@link System#nanoTime}
     * @param started is run when playing begins: whoever ticks begins to tick
     */
    public Playback(Stage stage, LongSupplier nanos, Runnable started) {
        this(stage, nanos, started, true);
    }

    /** @param sound whether sound is to be played at all */
    Playback(Stage stage, LongSupplier nanos, Runnable started, boolean sound) {
        this.stage = stage;
        this.nanos = nanos;
        this.started = started;
        this.sound = sound;
    }

    @Override
    public void toggle() {
        if (stage.playing()) {
            stop();
        } else {
            begin(stage.playheadUs());
            stage.playing(true);
            started.run();
        }
    }

    @Override
    public void seek(long us) {
        stage.playhead(us);
        if (stage.playing()) {
            begin(us);
        }
    }

    /** Stops playing. */
    public void stop() {
        player.stop();
        stage.playing(false);
    }

    private void begin(long us) {
        startedUs = us;
        startedNs = nanos.getAsLong();
        player.stop();
        Optional<Path> audio = stage.track().map(TrackView::audio).flatMap(Playback::path);
        if (sound && audio.isPresent() && us >= 0) {
            player.play(audio.get(), us);
        }
    }

    /** Brings the playhead up to date; stops at the end of the soundtrack. */
    public void tick() {
        if (!stage.playing()) {
            return;
        }
        long heardUs = player.positionUs();
        long us = heardUs >= 0 ? heardUs : startedUs + (nanos.getAsLong() - startedNs) / NS_PER_US;
        long endUs = stage.track().map(TrackView::lengthUs).orElse(Long.MAX_VALUE);
        stage.playhead(Math.min(us, endUs));
        if (us >= endUs) {
            stop();
        }
    }

    private static Optional<Path> path(String uri) {
        try {
            return Optional.of(Path.of(URI.create(uri)));
        } catch (IllegalArgumentException | FileSystemNotFoundException e) {
            return Optional.empty();
        }
    }
}
