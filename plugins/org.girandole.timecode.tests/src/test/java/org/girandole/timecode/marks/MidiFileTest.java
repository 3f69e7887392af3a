package org.girandole.timecode.marks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.Track;

import org.girandole.timecode.TimecodeException;
import org.girandole.timecode.Tool;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MidiFileTest {
	@TempDir
	Path folder;

	/** 480 ticks a quarter note, 120 quarter notes a minute, from tick 1920 on 150; a marker there and a cue four quarter notes later. */
	private static MidiMap worked() {
		return new MidiMap(480, List.of(new TempoChange(0, 500_000), new TempoChange(1920, 400_000)), List.of(new MeterChange(0, 4, 4)),
				List.of(new Mark(2_000_000, "Verse"), new Mark(3_600_000, "Hit!")));
	}

	// 4 * 0.5 s = 2 s; and 4 * 0.4 s more = 3.6 s: arithmetic of Standard MIDI Files 1.0.
	@Test
	void knowsTheWayBetweenTicksAndTime() {
		MidiMap map = worked();
		assertThat(map.timeOf(1920)).isEqualTo(2_000_000);
		assertThat(map.timeOf(3840)).isEqualTo(3_600_000);
		assertThat(map.tickAt(2_000_000)).isEqualTo(1920);
		assertThat(map.tickAt(3_600_000)).isEqualTo(3840);
		assertThat(new MidiMap(480, List.of(), List.of(), List.of()).timeOf(480)).as("120 a minute before any tempo").isEqualTo(500_000);
		assertThat(new MidiMap(3, List.of(new TempoChange(0, 1_000_000)), List.of(), List.of()).timeOf(1)).isEqualTo(333_333);
		assertThat(new MidiMap(3, List.of(new TempoChange(0, 1_000_000)), List.of(), List.of()).timeOf(2)).isEqualTo(666_667);
	}

	@Test
	void everythingSurvivesARoundTrip() throws Exception {
		assertThat(MidiFile.read(MidiFile.write(worked()))).isEqualTo(worked());
		Random random = new Random(3);
		MidiMap.Builder builder = MidiMap.beginningAfter(2_000_001);
		for (int bar = 0; bar < 60; bar++) {
			builder.tempo(4L * bar, 1, 300_000 + random.nextInt(900_000)).meter(4L * bar, 1, 1 + random.nextInt(13), 1 << random.nextInt(5));
			builder.mark(new Mark(random.nextInt(100_000_000), "Glut " + bar + " 花火 Böller")).mark(new Mark(77_777_777, "same place " + bar));
		}
		MidiMap map = builder.build();
		assertThat(MidiFile.read(MidiFile.write(map))).isEqualTo(map);
		assertThat(MidiFile.write(map)).isEqualTo(MidiFile.write(map));
	}

	@Test
	void theFirstBarBeginsOnItsMicrosecondAfterAnyLeadIn() {
		for (long leadIn : new long[] { 0, 1, 480_000, 999_999, 1_000_000, 1_999_999, 2_000_000, 60_000_001, 3_600_000_000L }) {
			MidiMap map = MidiMap.beginningAfter(leadIn).tempo(0, 1, 833_333).meter(0, 1, 4, 4).build();
			long tick = map.meters().get(0).tick();
			assertThat(map.timeOf(tick)).isEqualTo(leadIn);
			assertThat(map.timeOf(tick + 4 * 960)).isEqualTo(leadIn + 4 * 833_333);
		}
	}

	// midicsv 1.1 reads our file event by event.
	@Test
	void midicsvReadsOurFile() throws Exception {
		Tool.require("midicsv");
		Path file = folder.resolve("marks.mid");
		Files.write(file, MidiFile.write(worked()));
		assertThat(Tool.run(folder, "midicsv", file).lines().map(line -> line.replaceAll("\\s*,\\s*", ",")).toList()).contains("0,0,Header,0,1,480",
				"1,0,Tempo,500000", "1,0,Time_signature,4,2,24,8", "1,1920,Tempo,400000", "1,1920,Marker_t,\"Verse\"", "1,3840,Marker_t,\"Hit!\"");
	}

	// csvmidi, of the same maker, writes a file that we read; the cue point counts as a mark, notes do not.
	@Test
	void weReadWhatCsvmidiWrites() throws Exception {
		Tool.require("csvmidi");
		Path csv = folder.resolve("marks.csv");
		Files.writeString(csv, """
				0, 0, Header, 1, 2, 480
				1, 0, Start_track
				1, 0, Tempo, 500000
				1, 0, Time_signature, 6, 3, 36, 8
				1, 1920, Tempo, 400000
				1, 1920, Marker_t, "Verse"
				1, 3840, End_track
				2, 0, Start_track
				2, 960, Note_on_c, 0, 60, 100
				2, 3840, Cue_point_t, "Hit!"
				2, 3840, End_track
				0, 0, End_of_file
				""");
		Path file = folder.resolve("theirs.mid");
		Tool.run(folder, "csvmidi", csv, file);
		MidiMap map = MidiFile.read(Files.readAllBytes(file));
		assertThat(map.marks()).isEqualTo(worked().marks());
		assertThat(map.tempos()).isEqualTo(worked().tempos());
		assertThat(map.meters()).containsExactly(new MeterChange(0, 6, 8));
	}

	@Test
	void aMarkerThatWasMovedIsBelieved() throws Exception {
		MidiMap map = MidiMap.beginningAfter(0).tempo(0, 1, 500_000).mark(new Mark(1_000_123, "Swell")).build();
		Sequence sequence = MidiSystem.getSequence(new ByteArrayInputStream(MidiFile.write(map)));
		for (Track track : sequence.getTracks()) {
			for (int i = 0; i < track.size(); i++) {
				if (track.get(i).getMessage() instanceof MetaMessage meta && (meta.getType() == 6 || meta.getType() == 0x7F)) {
					track.get(i).setTick(3840);
				}
			}
		}
		ByteArrayOutputStream out = new ByteArrayOutputStream();
		MidiSystem.write(sequence, 0, out);
		assertThat(MidiFile.read(out.toByteArray()).marks()).containsExactly(new Mark(2_000_000, "Swell"));
	}

	// Standard MIDI Files 1.0: with a negative division ticks are parts of a frame; 25 frames with 40 ticks each are milliseconds.
	@Test
	void readsFilesThatCountFrames() throws Exception {
		Sequence sequence = new Sequence(Sequence.SMPTE_25, 40);
		sequence.createTrack().add(new MidiEvent(new MetaMessage(6, new byte[] { 'A' }, 1), 12_345));
		ByteArrayOutputStream out = new ByteArrayOutputStream();
		MidiSystem.write(sequence, 0, out);
		assertThat(MidiFile.read(out.toByteArray()).marks()).containsExactly(new Mark(12_345_000, "A"));

		Sequence drop = new Sequence(Sequence.SMPTE_30DROP, 80);
		drop.createTrack().add(new MidiEvent(new MetaMessage(6, new byte[] { 'B' }, 1), 80L * 30_000));
		ByteArrayOutputStream dropOut = new ByteArrayOutputStream();
		MidiSystem.write(drop, 0, dropOut);
		assertThat(MidiFile.read(dropOut.toByteArray()).marks()).containsExactly(new Mark(1_001_000_000, "B"));
	}

	@Test
	void refusesWhatIsNoMidiFile() {
		for (byte[] bytes : new byte[][] { {}, { 1, 2, 3 }, "RIFF....WAVEfmt ".getBytes(StandardCharsets.US_ASCII) }) {
			assertThatThrownBy(() -> MidiFile.read(bytes)).isInstanceOf(MarksException.class).hasMessageContaining("no Standard MIDI File");
		}
		assertThatThrownBy(() -> new TempoChange(0, 16_777_216)).isInstanceOf(TimecodeException.class);
		assertThatThrownBy(() -> new MeterChange(0, 4, 3)).isInstanceOf(TimecodeException.class);
		assertThatThrownBy(() -> new MidiMap(0, List.of(), List.of(), List.of())).isInstanceOf(TimecodeException.class);
		assertThatThrownBy(() -> new Mark(-1, "Early")).isInstanceOf(TimecodeException.class).hasMessageContaining("Early");
	}

	@Test
	void noMutatedFileDoesHarm() {
		byte[] good = MidiFile.write(worked());
		Random random = new Random(8);
		int read = 0;
		for (int i = 0; i < 5_000; i++) {
			byte[] bytes = good.clone();
			for (int j = 0; j < 1 + random.nextInt(4); j++) {
				// The header's length may claim gigabytes; everything behind it is changed at will.
				bytes[8 + random.nextInt(bytes.length - 8)] = (byte) random.nextInt(128);
			}
			try {
				assertThat(MidiFile.read(Arrays.copyOf(bytes, bytes.length - random.nextInt(8)))).isNotNull();
				read++;
			} catch (MarksException expected) {
				assertThat(expected).hasMessageContaining("MIDI");
			}
		}
		assertThat(read).as("some are still readable").isPositive();
	}
}
