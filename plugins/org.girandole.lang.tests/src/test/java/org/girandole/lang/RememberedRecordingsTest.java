package org.girandole.lang;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.util.List;
import java.util.Optional;
import org.girandole.lang.files.DiskFile;
import org.girandole.lang.files.Listening;
import org.girandole.lang.files.RememberedRecordings;
import org.girandole.music.audio.AudioFacts;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RememberedRecordingsTest {
    private static final FileTime LONG_AGO = FileTime.fromMillis(1_000_000_000_000L);

    @TempDir
    private Path folder;
    private Path audio;
    private int read;
    private RememberedRecordings recordings;

    @BeforeEach
    void aRecording() throws IOException {
        audio = folder.resolve("tides.wav");
        recordings = new RememberedRecordings(file -> {
            read++;
            return new Listening(new AudioFacts("WAV", 48_000, 2, 48_000, 1_000_000, DiskFile.sha256(file), List.of()), Optional.empty());
        });
        write("first take");
    }

    @Test
    void anUnchangedRecordingIsReadOnce() throws IOException {
        String hash = hash();
        assertThat(hash()).isEqualTo(hash);
        assertThat(read).isEqualTo(1);
    }

    @Test
    void anotherSizeOrAnotherTimeOfChangeIsAnotherRecording() throws IOException {
        String first = hash();
        write("second take, longer");
        assertThat(hash()).isNotEqualTo(first).isEqualTo(DiskFile.sha256(audio));
        // As long as the first, so that its time alone tells it apart.
        write("third take, longer?");
        Files.setLastModifiedTime(audio, FileTime.fromMillis(LONG_AGO.toMillis() + 1));
        assertThat(hash()).isEqualTo(DiskFile.sha256(audio));
        assertThat(read).isEqualTo(3);
    }

    @Test
    void aRecordingThatCameInItsPlaceIsReadThoughSizeAndTimeAreTheSame() throws IOException {
        hash();
        Path other = Files.writeString(folder.resolve("other.wav"), "other take");
        Files.setLastModifiedTime(other, LONG_AGO);
        Files.move(other, audio, StandardCopyOption.REPLACE_EXISTING);
        assertThat(hash()).isEqualTo(DiskFile.sha256(audio));
    }

    @Test
    void aRecordingThatIsGoneIsGone() throws IOException {
        hash();
        Files.delete(audio);
        assertThatThrownBy(this::hash).isInstanceOf(IOException.class);
    }

    private String hash() throws IOException {
        return recordings.listening(audio).facts().sha256();
    }

    private void write(String sound) throws IOException {
        Files.writeString(audio, sound);
        Files.setLastModifiedTime(audio, LONG_AGO);
    }
}
