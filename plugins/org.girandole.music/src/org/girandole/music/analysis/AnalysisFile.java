package org.girandole.music.analysis;

import java.io.BufferedOutputStream;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.zip.CRC32;
import org.girandole.music.Meter;
import org.girandole.music.RampLaw;
import org.girandole.music.Rational;
import org.girandole.music.TempoEvent;
import org.girandole.music.TempoMap;
import org.girandole.music.audio.AudioFacts;

/** A {@link TrackAnalysis} as bytes, with a check sum: what was kept comes back as it was, or not at all. */
final class AnalysisFile {
    /** Grows by one whenever a finder hears differently or the form changes: what an older version heard is then heard again. */
    private static final int VERSION = 1;
    private static final int MAGIC = 0x47414E41;
    private static final int MOST = 50_000_000;

    private AnalysisFile() {
    }

    static void write(TrackAnalysis track, OutputStream out) throws IOException {
        ByteArrayOutputStream body = new ByteArrayOutputStream();
        DataOutputStream data = new DataOutputStream(body);
        facts(track.facts(), data);
        data.writeDouble(track.loudness().integratedLufs());
        floats(track.loudness().shortTerm(), data);
        floats(track.loudness().momentary(), data);
        data.writeInt(track.onsets().size());
        for (Onset onset : track.onsets()) {
            data.writeLong(onset.timeUs());
            data.writeDouble(onset.strength());
            data.writeByte(onset.band().ordinal());
        }
        data.writeInt(track.beats().size());
        for (Beat beat : track.beats()) {
            data.writeLong(beat.timeUs());
            data.writeInt(beat.inBar());
            data.writeDouble(beat.evidence());
        }
        data.writeDouble(track.beatConfidence());
        data.writeInt(track.beatsPerBar());
        data.writeDouble(track.barConfidence());
        tempo(track.tempo().map(TempoMap::events).orElse(List.of()), data);
        data.writeInt(track.sections().size());
        for (Section section : track.sections()) {
            data.writeLong(section.startUs());
            data.writeLong(section.endUs());
            data.writeUTF(section.label());
            data.writeDouble(section.change());
        }
        data.writeInt(track.silences().size());
        for (Silence silence : track.silences()) {
            data.writeLong(silence.startUs());
            data.writeLong(silence.endUs());
        }
        track.peaks().write(data);
        data.flush();
        CRC32 sum = new CRC32();
        sum.update(body.toByteArray());
        DataOutputStream file = new DataOutputStream(new BufferedOutputStream(out));
        file.writeInt(MAGIC);
        file.writeInt(VERSION);
        file.writeLong(sum.getValue());
        body.writeTo(file);
        file.flush();
    }

    /** @throws IOException for other bytes than were written by this version */
    static TrackAnalysis read(byte[] bytes) throws IOException {
        DataInputStream data = new DataInputStream(new ByteArrayInputStream(bytes));
        if (data.readInt() != MAGIC || data.readInt() != VERSION) {
            throw new IOException("not an analysis of this version");
        }
        CRC32 sum = new CRC32();
        long expected = data.readLong();
        int head = bytes.length - data.available();
        sum.update(bytes, head, data.available());
        if (sum.getValue() != expected) {
            throw new IOException("a damaged analysis");
        }
        try {
            return read(data);
        } catch (IllegalArgumentException | ArithmeticException | IndexOutOfBoundsException e) {
            throw new IOException("an analysis that makes no sense", e);
        }
    }

    private static TrackAnalysis read(DataInputStream data) throws IOException {
        AudioFacts facts = facts(data);
        Loudness loudness = new Loudness(data.readDouble(), floats(data), floats(data));
        List<Onset> onsets = new ArrayList<>();
        for (int left = count(data); left > 0; left--) {
            onsets.add(new Onset(data.readLong(), data.readDouble(), Band.values()[data.readByte()]));
        }
        List<Beat> beats = new ArrayList<>();
        for (int left = count(data); left > 0; left--) {
            beats.add(new Beat(data.readLong(), data.readInt(), data.readDouble()));
        }
        double beatConfidence = data.readDouble();
        int beatsPerBar = data.readInt();
        double barConfidence = data.readDouble();
        Optional<TempoMap> tempo = tempo(data);
        List<Section> sections = new ArrayList<>();
        for (int left = count(data); left > 0; left--) {
            sections.add(new Section(data.readLong(), data.readLong(), data.readUTF(), data.readDouble()));
        }
        List<Silence> silences = new ArrayList<>();
        for (int left = count(data); left > 0; left--) {
            silences.add(new Silence(data.readLong(), data.readLong()));
        }
        return new TrackAnalysis(facts, loudness, Peaks.read(data), onsets, beats, beatConfidence, beatsPerBar, barConfidence, tempo,
                sections, silences);
    }

    private static void facts(AudioFacts facts, DataOutputStream data) throws IOException {
        data.writeUTF(facts.format());
        data.writeInt(facts.sampleRate());
        data.writeInt(facts.channels());
        data.writeLong(facts.frames());
        data.writeLong(facts.lengthUs());
        data.writeUTF(facts.sha256());
        data.writeInt(facts.remarks().size());
        for (String remark : facts.remarks()) {
            data.writeUTF(remark);
        }
    }

    private static AudioFacts facts(DataInputStream data) throws IOException {
        String format = data.readUTF();
        int sampleRate = data.readInt();
        int channels = data.readInt();
        long frames = data.readLong();
        long lengthUs = data.readLong();
        String sha256 = data.readUTF();
        List<String> remarks = new ArrayList<>();
        for (int left = count(data); left > 0; left--) {
            remarks.add(data.readUTF());
        }
        return new AudioFacts(format, sampleRate, channels, frames, lengthUs, sha256, remarks);
    }

    private static void floats(float[] values, DataOutputStream data) throws IOException {
        data.writeInt(values.length);
        for (float value : values) {
            data.writeFloat(value);
        }
    }

    private static float[] floats(DataInputStream data) throws IOException {
        float[] values = new float[count(data)];
        for (int i = 0; i < values.length; i++) {
            values[i] = data.readFloat();
        }
        return values;
    }

    private static void tempo(List<TempoEvent> events, DataOutputStream data) throws IOException {
        data.writeInt(events.size());
        for (TempoEvent event : events) {
            if (event instanceof TempoEvent.Start start) {
                data.writeByte(0);
                data.writeLong(start.timeUs());
                data.writeUTF(start.bpm().toString());
                meter(start.meter(), data);
            } else if (event instanceof TempoEvent.Step step) {
                data.writeByte(1);
                data.writeInt(step.bar());
                data.writeUTF(step.bpm() == null ? "" : step.bpm().toString());
                meter(step.meter(), data);
            } else if (event instanceof TempoEvent.Ramp ramp) {
                data.writeByte(2);
                data.writeInt(ramp.fromBar());
                data.writeUTF(ramp.toBpm().toString());
                data.writeInt(ramp.toBar());
                data.writeByte(ramp.law().ordinal());
            }
        }
    }

    private static Optional<TempoMap> tempo(DataInputStream data) throws IOException {
        List<TempoEvent> events = new ArrayList<>();
        for (int left = count(data); left > 0; left--) {
            events.add(switch (data.readByte()) {
                case 0 -> new TempoEvent.Start(data.readLong(), Rational.parse(data.readUTF()), meter(data));
                case 1 -> new TempoEvent.Step(data.readInt(), optional(data.readUTF()), meter(data));
                default -> new TempoEvent.Ramp(data.readInt(), Rational.parse(data.readUTF()), data.readInt(), RampLaw.values()[data.readByte()]);
            });
        }
        return events.isEmpty() ? Optional.empty() : Optional.of(TempoMap.of(events));
    }

    private static Rational optional(String bpm) {
        return bpm.isEmpty() ? null : Rational.parse(bpm);
    }

    private static void meter(Meter meter, DataOutputStream data) throws IOException {
        data.writeInt(meter == null ? 0 : meter.beatsPerBar());
        data.writeInt(meter == null ? 0 : meter.beatUnit());
    }

    private static Meter meter(DataInputStream data) throws IOException {
        int beats = data.readInt();
        int unit = data.readInt();
        return beats == 0 ? null : new Meter(beats, unit);
    }

    private static int count(DataInputStream data) throws IOException {
        int count = data.readInt();
        if (count < 0 || count > MOST) {
            throw new IOException("an impossible count");
        }
        return count;
    }
}
