package org.girandole.studio.views.stage;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.girandole.protocol.CueView;
import org.girandole.protocol.PlanView;
import org.girandole.protocol.TrackView;
import org.girandole.studio.views.Shows;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class StageTest {
    private static final long S = 1_000_000;

    private final Stage stage = new Stage();

    @BeforeEach
    void show() {
        stage.show(Shows.small());
    }

    @Test
    void aCaretOnALineSelectsItsCue() {
        stage.selectLine(Shows.URI, 42);
        assertThat(stage.selected()).map(CueView::number).contains(3);
        stage.selectLine("file:///shows/other.show", 40);
        assertThat(stage.selected()).map(CueView::number).contains(3);
        stage.selectLine(Shows.URI, 7);
        assertThat(stage.selected()).map(CueView::number).contains(3);
    }

    @Test
    void aSelectionLastsOverAnEditAboveIt() {
        stage.select(3);
        CueView before = Shows.cue(1, "B", "mine", S, 0, 30);
        List<CueView> cues = new ArrayList<>(List.of(before));
        for (CueView cue : Shows.small().cues()) {
            cues.add(new CueView(cue.number() + 1, cue.key(), cue.name(), cue.slot(), cue.section(), cue.position(), cue.what(), cue.label(), cue.kind(),
                    cue.colour(), cue.pieces(), cue.seenUs(), cue.burstUs(), cue.fireUs(), cue.heard(), cue.estimated(), cue.lastsUs(), cue.toleranceUs(),
                    cue.timecode(), cue.module(), cue.pin(), cue.rack(), cue.tube(), cue.tiltDeg(), cue.bearingDeg(), cue.from(), cue.burst(), cue.apexM(),
                    cue.spreadM(), cue.shots(), cue.shotGapUs(), cue.items(), cue.source()));
        }
        cues.set(0, new CueView(1, "new", null, 0, "Whole", "B", "Emine", "Some mine", "mine", "red", 1, S, S, S, false, false, S, 0, null, null, null, null,
                null, 0, 0, null, null, null, null, null, null, List.of(), Shows.line(30)));
        stage.show(Shows.of(cues, List.of()));
        assertThat(stage.selected()).map(CueView::key).contains("key3");
        assertThat(stage.selected()).map(CueView::number).contains(4);
    }

    @Test
    void soundtracksComeInTurn() {
        assertThat(stage.track()).map(TrackView::name).contains("Tune");
        stage.nextTrack();
        assertThat(stage.track()).map(TrackView::name).contains("Encore");
        stage.select(1);
        assertThat(stage.track()).map(TrackView::name).contains("Tune");
        assertThat(stage.selected()).map(CueView::number).contains(1);
    }

    @Test
    void thePlayheadFollowsTheClockWhereThereIsNoSound() {
        long[] ns = {0};
        int[] started = {0};
        Playback playback = new Playback(stage, () -> ns[0], () -> started[0]++, false);
        playback.seek(5 * S);
        playback.toggle();
        assertThat(started[0]).isEqualTo(1);
        ns[0] = 2_500_000_000L;
        playback.tick();
        assertThat(stage.playheadUs()).isEqualTo(7_500_000);
        playback.seek(30 * S);
        ns[0] += 1_000_000_000L;
        playback.tick();
        assertThat(stage.playheadUs()).isEqualTo(31 * S);
        playback.toggle();
        ns[0] += 1_000_000_000L;
        playback.tick();
        assertThat(stage.playheadUs()).isEqualTo(31 * S);
    }

    /** The file is not there: nothing can be heard, and the clock leads all the same. */
    @Test
    void soundThatCannotBePlayedIsDoneWithout() {
        TrackView track = Shows.small().tracks().get(0);
        TrackView heard = new TrackView(track.name(), track.label(), 0, track.lengthUs(), track.prerollUs(), track.rate(), track.start(),
                "file:///no/such/tune.wav", null, null, track.bars(), track.marks(), track.sections(), track.holds(), track.source());
        PlanView plan = Shows.small();
        stage.show(new PlanView(plan.uri(), null, plan.show(), plan.label(), plan.stamp(), true, 0, 0, 0, plan.files(), List.of(heard), plan.lanes(),
                plan.cues(), plan.findings()));
        long[] ns = {0};
        Playback playback = new Playback(stage, () -> ns[0], () -> { });
        playback.toggle();
        ns[0] = 3_000_000_000L;
        playback.tick();
        assertThat(stage.playheadUs()).isEqualTo(3 * S);
        playback.stop();
        assertThat(stage.playing()).isFalse();
    }

    @Test
    void itStopsAtTheEnd() {
        long[] ns = {0};
        Playback playback = new Playback(stage, () -> ns[0], () -> { }, false);
        playback.toggle();
        ns[0] = 61_000_000_000L;
        playback.tick();
        assertThat(stage.playing()).isFalse();
        assertThat(stage.playheadUs()).isEqualTo(60 * S);
    }

    @Test
    void wordsOfTimes() {
        assertThat(Words.clock(62_345_000)).isEqualTo("1:02.345");
        assertThat(Words.clock(-500_000)).isEqualTo("-0:00.500");
        assertThat(Words.minutes(-1)).isEqualTo("-0:01");
        assertThat(Words.cue(Shows.small().cues().get(0))).contains("cue 1", "seen 0:10.000", "fired 0:08.000", "small.show:40");
    }
}
