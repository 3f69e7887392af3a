package org.girandole.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.girandole.lang.check.ShowPipeline;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.rehearse.CueOutcome;
import org.girandole.plan.rehearse.CueOutcome.End;
import org.girandole.plan.rehearse.RehearsalLog;
import org.girandole.plan.rehearse.Rehearsals;
import org.girandole.plan.rehearse.Sweep;
import org.girandole.plan.script.Rehearsal;
import org.girandole.plan.script.SourceRef;
import org.girandole.plan.script.TimeExpr;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Nights that go wrong, as they are asked for on the command line. */
class RehearseCommandTest {
    private static final Path HARBOUR = Path.of("../../examples/harbour-night/harbour.show").toAbsolutePath().normalize();
    private static final String LOST = "Lost code and a released control";
    private static final SourceRef NOWHERE = new SourceRef("brute.show", 1, 1, 1);
    private static final int HEADER_BYTES = 44;
    private static final int RATE_AT = 24;
    private static final int BYTES_PER_SECOND = 2 * 48_000;

    @TempDir
    private Path temp;

    private Cli.Run rehearse(String... options) throws Exception {
        List<String> args = new ArrayList<>(List.of("rehearse", HARBOUR.toString()));
        args.addAll(Arrays.asList(options));
        return Cli.in(temp).run(args.toArray(String[]::new));
    }

    @Test
    void lossDriftAndReleaseCanBeCheckedByHand() throws Exception {
        String out = rehearse("--scenario", LOST, "--svg", "n.svg", "--html", "n.html", "--pdf", "n.pdf").exits(0).out();

        // The last frame ends at 2:10; code is back at 2:35, and 50 frames at 25 fps later it locks: 27 s x 30 ppm = 0.81 ms.
        assertThat(out).contains("387 fired, 12 suppressed, 0 skipped", "27.000 s × −30 ppm = −0.81 ms", "expected, met: fired Hero",
                "    214  3:02.090  10:04:02:02  Gold comet at A  suppressed", "    225  3:04.090", "A2 · 3: Gold comet, cue 214");
        // 2:26.710 is 16.710 s after the loss: 16.710 s x 30 ppm = 0.501 ms.
        assertThat(out).contains("due at 2:26.710 (10:03:26:17), fired at 2:26.710501: 0.501 ms late");
        assertThat(out.lines().filter(line -> line.contains("  suppressed: ")).count()).isEqualTo(12);
        assertThat(Files.readString(temp.resolve("n.svg"))).startsWith("<svg").contains("holdover", "suppressed");
        assertThat(Files.readString(temp.resolve("n.html"))).contains("Local law, the authority having jurisdiction", "for the misfire form");
        assertThat(new String(Files.readAllBytes(temp.resolve("n.pdf")), 0, 5, StandardCharsets.US_ASCII)).isEqualTo("%PDF-");
    }

    @Test
    void theWrongSlotShowsWithinTheFirstCue() throws Exception {
        assertThat(rehearse("--scenario", "The slot of the encore is loaded").exits(0).out()).contains(
                "WRONG SLOT: the controller is in slot 1, Tides is in slot 0. It shows at 0:02.000 (10:01:02:00), when cue 1 (Red flare at A) is due",
                "What would have flown: nothing.", "fires on from 60:", "None of the 399 cues of Tides is loaded");
    }

    @Test
    void everySecondOfTheSweepIsConfirmedByRehearsingIt() throws Exception {
        Plan plan = new ShowPipeline().check(HARBOUR, HARBOUR.getParent()).plan().orElseThrow().plan();
        PlannedSoundtrack tides = plan.soundtracks().get(0);
        Sweep sweep = Sweep.of(plan, tides);

        assertThat(sweep.disagreements()).isEmpty();
        assertThat(sweep.holdover()).isNotEmpty().allMatch(Sweep.Holdover::agree);
        for (long lengthUs : Sweep.LENGTHS_US) {
            Sweep.Scenario worst = sweep.worst(lengthUs).orElseThrow();
            long mostNotFired = 0;
            long mostUs = -1;
            long atUs = 0;
            for (long fromUs = -60_000_000; fromUs + lengthUs <= tides.lengthUs().orElseThrow(); fromUs += 1_000_000) {
                for (RehearsalLog log : logs(plan, fromUs, lengthUs)) {
                    long notFired = log.cues().stream().filter(cue -> cue.end() != End.FIRED).count();
                    long offUs = log.worst().map(CueOutcome::lateUs).map(late -> Math.abs(late.getAsLong())).orElse(0L);
                    if (notFired > mostNotFired || notFired == mostNotFired && offUs > mostUs) {
                        mostNotFired = notFired;
                        mostUs = offUs;
                        atUs = fromUs;
                    }
                }
            }
            assertThat(List.of(worst.fromUs(), (long) worst.notFired(), Math.abs(worst.worstUs()))).as("lost for %d us", lengthUs)
                    .isEqualTo(List.of(atUs, mostNotFired, mostUs));
        }
    }

    /** A loss as a script would have it, with the clock slow and fast. */
    private static List<RehearsalLog> logs(Plan plan, long fromUs, long lengthUs) throws Exception {
        Rehearsal.Stretch lost = new Rehearsal.Stretch(at(fromUs), at(fromUs + lengthUs), NOWHERE);
        Rehearsal night = new Rehearsal("brute", "Tides", List.of(lost), List.of(), Optional.empty(), 0, List.of(), Optional.empty(), Optional.empty(),
                List.of(), NOWHERE);
        return Rehearsals.of(plan, night).passes().stream().map(pass -> pass.log()).toList();
    }

    private static TimeExpr at(long us) {
        return new TimeExpr(new TimeExpr.AtClock(us), List.of(), NOWHERE);
    }

    @Test
    void recordingsAreHeldAgainstTheShow() throws Exception {
        Cli.in(temp).run("timecode", "write", HARBOUR.toString(), "-o", "t.wav").exits(0);
        Cli.in(temp).run("timecode", "write", HARBOUR.toString(), "--soundtrack", "Encore", "-o", "e.wav").exits(0);
        byte[] wav = Files.readAllBytes(temp.resolve("t.wav"));
        byte[] hole = wav.clone();
        Arrays.fill(hole, HEADER_BYTES + 190 * BYTES_PER_SECOND, HEADER_BYTES + 215 * BYTES_PER_SECOND, (byte) 0);
        Files.write(temp.resolve("hole.wav"), hole);
        byte[] fast = wav.clone();
        ByteBuffer.wrap(fast).order(ByteOrder.LITTLE_ENDIAN).putInt(RATE_AT, 50_000);
        Files.write(temp.resolve("fast.wav"), fast);
        Files.write(temp.resolve("early.wav"), Arrays.copyOf(wav, HEADER_BYTES + 200 * BYTES_PER_SECOND));

        assertThat(rehearse("--recording", "t.wav").exits(0).out()).contains("399 fired, 0 suppressed, 0 skipped", "Largest clock error: none");
        // 27 s x 25 ppm = 0.675 ms, as with the same loss in a script.
        assertThat(rehearse("--recording", "hole.wav").exits(0).out()).contains("625 lost in 1 gaps", "−0.675 ms", "2:10.480");
        assertThat(rehearse("--recording", "early.wav").exits(1).out()).contains("The recording ends at 2:20.000, before the last cue at 3:58.090");
        assertThat(rehearse("--recording", "fast.wav").exits(2).err()).contains("without changing its speed");
        assertThat(rehearse("--recording", "e.wav", "--soundtrack", "Tides").exits(2).err()).contains("timecode of slot 1, not of slot 0");
        assertThat(rehearse("--recording", "nope.wav").exits(2).err()).contains("there is no file 'nope.wav'");
    }

    @Test
    void aRecordingThatIsNotOfThisShowIsNamed() throws Exception {
        Recording.silence(20).write(temp.resolve("silent.wav"));
        assertThat(rehearse("--recording", "silent.wav").exits(2).err()).contains("There is no timecode in the recording").doesNotContain("--soundtrack");
        Example.copyTo(temp);
        Path script = temp.resolve("harbour.show");
        String text = Files.readString(script);
        assertThat(text).contains("timecode 25 fps from 11:00:00:00");
        Files.writeString(script, text.replace("timecode 25 fps from 11:00:00:00", "timecode 25 fps from 21:00:00:00"));
        Cli.in(temp).run("timecode", "write", "harbour.show", "--soundtrack", "Encore", "-o", "hour.wav").exits(0);
        assertThat(rehearse("--recording", "hour.wav").exits(2).err()).contains("The recording's labels begin with 21:00:00:00; soundtrack Encore runs from "
                + "11:00:00:00", "It is the timecode of another soundtrack or show");
        Files.writeString(script, text.replace("timecode 25 fps from 11:00:00:00", "timecode 30 fps from 11:00:00:00"));
        Cli.in(temp).run("timecode", "write", "harbour.show", "--soundtrack", "Encore", "-o", "rate.wav").exits(0);
        assertThat(rehearse("--recording", "rate.wav").exits(2).err()).contains("The recording runs at 30 fps", "the show's timecode is 25 fps");
    }

    @Test
    void whatCannotBeRehearsedIsNamed() throws Exception {
        assertThat(rehearse("--scenario", "Nothing").exits(2).err()).contains("no rehearsal 'Nothing'", "'" + LOST + "'");
        assertThat(rehearse("--scenario", LOST, "--recording", "a.wav").exits(2).err()).contains("exclude each other");
        assertThat(rehearse("--svg", "n.svg").exits(2).err()).contains("4 nights");
        assertThat(changed("timecode lost from 2:20 to 2:40")).contains("timecode is lost twice at once");
        assertThat(changed("released from 4:00 to 5:00")).contains("a moment outside of Tides", "5:00.000", "-1:00.000 to 4:10.000");
        assertThat(changed("expect suppressed Hero")).contains("expects Hero to end in two ways");
        assertThat(Cli.in(temp).run("rehearse", "harbour.show", "--scenario", LOST).exits(1).out()).doesNotContain("387 fired");
    }

    private String changed(String line) throws Exception {
        Example.copyTo(temp);
        Path script = temp.resolve("harbour.show");
        String start = "rehearse \"" + LOST + "\" of Tides {";
        Files.writeString(script, Files.readString(script).replace(start, start + "\n" + line));
        return Cli.in(temp).run("rehearse", "harbour.show", "--scenario", LOST).exits(1).err();
    }
}
