package org.girandole.plan.rehearse;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.ReleaseStamp;
import org.girandole.plan.Times;
import org.girandole.timecode.FrameRate;
import org.girandole.timecode.Timecode;
import org.girandole.timecode.TimecodeLine;
import org.girandole.timecode.ltc.ReleaseMark;
import org.girandole.timecode.reader.ChannelReport;
import org.girandole.timecode.reader.FrameTrack;
import org.girandole.timecode.reader.LineReport;
import org.girandole.timecode.reader.LtcFrame;
import org.girandole.timecode.reader.TimecodeReading;

/**
 * A recorded line as a controller would hear it. The recorder's clock counts as true time, and the music is taken to run with the first
 * frame that was read.
 *
 * @param signal in show time of the soundtrack
 * @param notes what was found that a person must know, in words
 * @param doubts what makes the rehearsal say less than it seems to, in words; empty when there is nothing of the kind
 */
public record RecordedNight(Signal signal, List<String> notes, List<String> doubts) {
    /** Between the sound cards of two devices; beyond it, it is another rate or a stretched file. Common practice, no source. */
    private static final double MOST_PPM = 400;
    /** Less than this is printed as nought. */
    private static final double LEAST_PPM = 0.05;
    /** A run is told anew when the code has drifted this far against the recorder's clock. */
    private static final long DRIFT_US = 1000;
    /** Behind the music a line may go on. */
    private static final long AFTER_US = 600_000_000;
    private static final double MILLION = 1e6;

    public RecordedNight {
        notes = List.copyOf(notes);
        doubts = List.copyOf(doubts);
    }

    /**
     * The signal of a recording.
     *
     * @param lastCueUs when the last cue of the soundtrack is fired, show time
     * @throws RehearsalException if there is no timecode in it, or that of another rate, slot or show
     */
    public static RecordedNight of(LineReport report, PlannedSoundtrack track, ReleaseStamp stamp, long lastCueUs) {
        ChannelReport channel = report.timecodeChannel().orElseThrow(() -> new RehearsalException(
                "There is no timecode in the recording. 'girandole timecode read' tells what is on its channels"));
        TimecodeReading reading = channel.timecode().orElseThrow();
        TimecodeLine line = track.line().orElseThrow(() -> new RehearsalException("Soundtrack " + track.name() + " has no usable timecode; "
                + "give it a timecode line and a pre-roll"));
        rateFits(reading, line.rate());
        List<String> notes = new ArrayList<>(report.warnings());
        List<String> doubts = new ArrayList<>();
        markFits(reading.userBits().mark(), track, stamp, notes, doubts);
        Listener listener = new Listener(line, report.sampleRate());
        listener.hear(reading.frames());
        long lengthUs = track.lengthUs().orElse(lastCueUs);
        labelsFit(listener, reading, track, line, lengthUs);
        long beginUs = listener.runs.get(0).fromUs();
        long endUs = listener.runs.get(listener.runs.size() - 1).toUs();
        notes.add("Channel " + channel.channel() + " from " + reading.first().digits() + " to " + reading.last().digits() + ", "
                + reading.goodFrames() + " good frames, " + reading.lostFrames() + " lost in " + reading.gaps().size() + " gaps, speed "
                + ppm(reading.speedPpmAgainst(line.rate())));
        if (listener.unread > 0) {
            notes.add(listener.unread + " frames run backwards or cannot be read: to the controller they are silence");
        }
        if (beginUs > -line.prerollUs() + line.rate().startOf(1).ceilUs()) {
            notes.add("The recording begins at " + Times.clock(beginUs) + ", after the beginning of the pre-roll at " + Times.clock(-line.prerollUs()));
        }
        if (endUs < lastCueUs) {
            doubts.add("The recording ends at " + Times.clock(endUs) + ", before the last cue at " + Times.clock(lastCueUs)
                    + ": nobody knows whether there was code after that; it is rehearsed as lost from there on");
        }
        return new RecordedNight(new Signal(line.rate(), -line.prerollUs(), listener.runs), notes, doubts);
    }

    private static void rateFits(TimecodeReading reading, FrameRate rate) {
        double ppm = reading.speedPpmAgainst(rate);
        boolean counting = reading.rate().nominal() == rate.nominal() && reading.rate().dropFrame() == rate.dropFrame();
        if (!counting || Math.abs(ppm) > MOST_PPM) {
            throw new RehearsalException("The recording runs at " + reading.rate() + ", " + ppm(reading.speedPpm()) + "; the show's timecode is "
                    + rate + ". Record the show's own timecode, without changing its speed");
        }
    }

    private static void markFits(Optional<ReleaseMark> mark, PlannedSoundtrack track, ReleaseStamp stamp, List<String> notes, List<String> doubts) {
        if (mark.isEmpty()) {
            notes.add("The recording carries no slot and no stamp: whether it is this version's timecode is not known");
        } else if (mark.get().slot() != track.slot()) {
            throw new RehearsalException("The recording is timecode of slot " + mark.get().slot() + ", not of slot " + track.slot() + " of "
                    + track.name() + ". Name the soundtrack that was recorded");
        } else if (!mark.get().printed().equals(stamp.printed())) {
            doubts.add("The recording carries the stamp " + mark.get().printed() + "; this script's is " + stamp.printed()
                    + ": it is timecode of another version, or of another show");
        }
    }

    private static void labelsFit(Listener listener, TimecodeReading reading, PlannedSoundtrack track, TimecodeLine line, long lengthUs) {
        long lastUs = lengthUs + AFTER_US;
        long inside = listener.runs.stream().filter(run -> run.fromUs() + run.offsetUs() <= lastUs).mapToLong(run -> run.toUs() - run.fromUs()).sum();
        long all = listener.runs.stream().mapToLong(run -> run.toUs() - run.fromUs()).sum();
        if (2 * inside <= all) {
            throw new RehearsalException("The recording's labels begin with " + reading.first().digits() + "; soundtrack " + track.name()
                    + " runs from " + line.start() + " to " + line.labelAt(lengthUs) + ". It is the timecode of another soundtrack or show");
        }
    }

    private static String ppm(double ppm) {
        return String.format(Locale.ROOT, "%+.1f ppm", Math.abs(ppm) < LEAST_PPM ? 0 : ppm);
    }

    /** Turns frames into runs. */
    private static final class Listener {
        private final TimecodeLine line;
        private final int sampleRate;
        private final List<Signal.Run> runs = new ArrayList<>();
        private int unread;
        private boolean begun;
        private long shiftUs;
        private long firstFrame;
        private long lastFrame;
        private long offsetUs;
        private boolean open;

        Listener(TimecodeLine line, int sampleRate) {
            this.line = line;
            this.sampleRate = sampleRate;
        }

        void hear(FrameTrack frames) {
            for (LtcFrame frame : frames) {
                Optional<Timecode> label = frame.quality().isGood() && !frame.reverse() ? frame.word().label(line.rate()) : Optional.empty();
                if (label.isPresent()) {
                    hear(frame, label.get().framesAfter(line.start()));
                } else {
                    unread++;
                    close();
                }
            }
            close();
            if (runs.isEmpty()) {
                throw new RehearsalException("No frame of the recording can be read forwards at " + line.rate()
                        + ". 'girandole timecode read' tells what is on it");
            }
        }

        private void hear(LtcFrame frame, long number) {
            long readsUs = line.startOfFrame(number).ceilUs();
            long recordedUs = Math.round(frame.begin() / sampleRate * MILLION);
            if (!begun) {
                begun = true;
                shiftUs = readsUs - recordedUs;
            }
            long aheadUs = readsUs - recordedUs - shiftUs;
            if (!open || number != lastFrame + 1 || Math.abs(aheadUs - offsetUs) > DRIFT_US) {
                close();
                open = true;
                firstFrame = number;
                offsetUs = aheadUs;
            }
            lastFrame = number;
        }

        private void close() {
            if (!open) {
                return;
            }
            open = false;
            long fromUs = line.startOfFrame(firstFrame).ceilUs() - offsetUs;
            long toUs = line.startOfFrame(lastFrame + 1).ceilUs() - offsetUs;
            if (!runs.isEmpty()) {
                fromUs = Math.max(fromUs, runs.get(runs.size() - 1).toUs());
            }
            if (toUs > fromUs) {
                runs.add(new Signal.Run(fromUs, toUs, offsetUs));
            }
        }
    }
}
