package org.girandole.studio.tests;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.girandole.studio.views.stage.Stage;
import org.girandole.studio.views.swt.TimelineCanvas;
import org.girandole.studio.views.workbench.RecordingJob;
import org.girandole.studio.views.workbench.ShowHub;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** A recording that is missing is played from the piece beside it: when somebody wants it, never over another. */
class RecordingTest {
    private static final Path MUSIC = Path.of(System.getProperty("girandole.examples"), "harbour-night", "music").normalize();

    @RegisterExtension
    final ShowProject shows = new ShowProject();

    private Path folder;

    @BeforeEach
    void name() throws Exception {
        shows.edit("length   1:00.000", "audio \"song.wav\"\n  length 1:00.000");
        folder = Path.of(shows.project().getLocationURI());
    }

    private void piece(String name) throws Exception {
        Files.copy(MUSIC.resolve(name), folder.resolve("song.mid"));
        shows.project().refreshLocal(1, null);
    }

    private static void done() {
        Ui.until("nothing is being played", () -> Job.getJobManager().find(RecordingJob.class).length == 0);
    }

    @Test
    void aKeyPlaysItAndTheWaveformIsThere() throws Exception {
        piece("encore.mid");
        Ui.page().showView("org.girandole.studio.views.timeline");
        Ui.open(shows.show());
        Stage stage = ShowHub.get(Display.getCurrent()).stage();
        Ui.until("the piece is offered", () -> stage.plan().uri().contains(shows.project().getName())
                && stage.track().map(track -> track.piece() != null).orElse(false));
        Ui.marker(shows.show(), "audio-missing");
        Event key = new Event();
        key.character = 'm';
        Screen.find(TimelineCanvas.class).notifyListeners(org.eclipse.swt.SWT.KeyDown, key);
        Ui.until("the waveform", () -> stage.wave().columns() > 0);
        assertThat(stage.track()).get().satisfies(track -> {
            assertThat(track.audio()).isEqualTo(folder.resolve("song.wav").toUri().toString());
            assertThat(track.piece()).isNull();
        });
        Ui.until("the finding goes", () -> !Ui.hasMarker(shows.show(), "audio-missing"));
        assertThat(shows.project().getFile("song.wav").exists()).as("the workspace has it").isTrue();
        assertThat(left()).isEmpty();
    }

    @Test
    void whoStopsItFindsNothingHalfDone() throws Exception {
        piece("tides.mid");
        RecordingJob.start(folder.resolve("song.mid"));
        RecordingJob.start(folder.resolve("song.mid"));
        Job[] jobs = Job.getJobManager().find(RecordingJob.class);
        assertThat(jobs).as("once at a time").hasSize(1);
        jobs[0].cancel();
        done();
        assertThat(folder.resolve("song.wav")).doesNotExist();
        assertThat(left()).isEmpty();
    }

    @Test
    void aRecordingThatIsThereStays() throws Exception {
        piece("encore.mid");
        Files.writeString(folder.resolve("song.wav"), "mine");
        String said = Ui.answering("OK", () -> RecordingJob.start(folder.resolve("song.mid")));
        assertThat(said).contains("'song.wav' is there already and stays as it is").doesNotContain("Exception");
        done();
        assertThat(Files.readString(folder.resolve("song.wav"))).isEqualTo("mine");
    }

    @Test
    void whatIsNoPieceSaysSo() throws Exception {
        Files.writeString(folder.resolve("song.mid"), "no music");
        String said = Ui.answering("OK", () -> RecordingJob.start(folder.resolve("song.mid")));
        assertThat(said).contains("'song.mid' cannot be played").doesNotContain("Exception");
        done();
        assertThat(folder.resolve("song.wav")).doesNotExist();
        assertThat(left()).isEmpty();
    }

    private Stream<String> left() throws Exception {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(path -> path.getFileName().toString()).filter(name -> name.endsWith(".part")).toList().stream();
        }
    }
}
