package org.girandole.studio.views.stage;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import org.girandole.protocol.CueView;
import org.girandole.protocol.PlanView;
import org.girandole.protocol.RehearsalView;
import org.girandole.protocol.SourcePlace;
import org.girandole.protocol.TrackView;
import org.girandole.protocol.WaveView;

/**
 * What the views of a window have in common: the show, which of its soundtracks, where the playhead is and which cue is selected. Used on
 * one thread alone, that of the display.
 */
public final class Stage {
    private static final String NOTHING = "Open the script of a show to see it here.";

    /** What has changed. */
    public enum Change {
        SHOW, WAVE, TRACK, PLAYHEAD, SELECTION, PLAYING, NIGHT
    }

    /** Hears of changes. */
    public interface Listener {
        void changed(Change change);
    }

    private final List<Listener> listeners = new CopyOnWriteArrayList<>();
    private PlanView plan = PlanView.nothing("", NOTHING);
    private WaveView wave = WaveView.nothing("");
    private RehearsalView night = RehearsalView.nothing(List.of(), "");
    private String rehearsed = "";
    private int track;
    private long playheadUs;
    private int selected;
    private boolean playing;

    public void listen(Listener listener) {
        listeners.add(listener);
    }

    public void unlisten(Listener listener) {
        listeners.remove(listener);
    }

    public PlanView plan() {
        return plan;
    }

    /** Shows another plan. Soundtrack, playhead and selection stay where the new plan has them too. */
    public void show(PlanView shown) {
        String trackName = track().map(TrackView::name).orElse("");
        String key = selected().map(CueView::key).orElse("");
        boolean same = shown.show().equals(plan.show());
        plan = shown;
        track = 0;
        for (int i = 0; i < plan.tracks().size(); i++) {
            if (same && plan.tracks().get(i).name().equals(trackName)) {
                track = i;
            }
        }
        selected = same ? plan.cues().stream().filter(cue -> cue.key().equals(key)).map(CueView::number).findFirst().orElse(0) : 0;
        if (!same) {
            playheadUs = 0;
            rehearsed = "";
            night = RehearsalView.nothing(List.of(), "");
        }
        tell(Change.SHOW);
    }

    /** The waveform of the soundtrack shown. */
    public WaveView wave() {
        return wave;
    }

    public void wave(WaveView other) {
        wave = other;
        tell(Change.WAVE);
    }

    /** The rehearsed night as it was answered last; one that says why there is nothing to draw while none is chosen. */
    public RehearsalView night() {
        return night;
    }

    public void night(RehearsalView answered) {
        night = answered;
        tell(Change.NIGHT);
    }

    /** Name of the rehearsal that is to be shown over the show; empty when none is. */
    public String rehearsed() {
        return rehearsed;
    }

    /** Chooses a rehearsal by its name, none when that is empty; brings up its soundtrack. */
    public void rehearse(String name) {
        if (name.equals(rehearsed)) {
            return;
        }
        rehearsed = name;
        night = RehearsalView.nothing(night.choices(), name.isEmpty() ? "" : "being gone through\u2026");
        night.choices().stream().filter(choice -> choice.name().equals(name)).findFirst().ifPresent(choice -> {
            for (int i = 0; i < plan.tracks().size(); i++) {
                if (plan.tracks().get(i).name().equals(choice.track()) && i != track) {
                    toTrack(i);
                }
            }
        });
        tell(Change.NIGHT);
    }

    /** Chooses the next rehearsal; after the last none, after none the first. */
    public void nextRehearsal() {
        List<String> names = night.choices().stream().map(RehearsalView.Choice::name).toList();
        int next = names.indexOf(rehearsed) + 1;
        rehearse(next < names.size() ? names.get(next) : "");
    }

    /** The soundtrack shown; empty when the show has none. */
    public Optional<TrackView> track() {
        return track < plan.tracks().size() ? Optional.of(plan.tracks().get(track)) : Optional.empty();
    }

    /** Shows the next soundtrack, after the last the first. */
    public void nextTrack() {
        if (plan.tracks().size() > 1) {
            toTrack((track + 1) % plan.tracks().size());
        }
    }

    private void toTrack(int other) {
        track = other;
        selected = 0;
        playheadUs = 0;
        wave = WaveView.nothing("");
        tell(Change.TRACK);
    }

    public long playheadUs() {
        return playheadUs;
    }

    public void playhead(long us) {
        if (us != playheadUs) {
            playheadUs = us;
            tell(Change.PLAYHEAD);
        }
    }

    public boolean playing() {
        return playing;
    }

    public void playing(boolean now) {
        if (now != playing) {
            playing = now;
            tell(Change.PLAYING);
        }
    }

    /** The selected cue, if one is. */
    public Optional<CueView> selected() {
        return cue(selected);
    }

    /** A cue by its number. Numbers follow the order of the list from 1. */
    public Optional<CueView> cue(int number) {
        return number >= 1 && number <= plan.cues().size() ? Optional.of(plan.cues().get(number - 1)) : Optional.empty();
    }

    /** Selects a cue by its number, 0 for none; brings up its soundtrack. */
    public void select(int number) {
        if (number == selected) {
            return;
        }
        selected = cue(number).isPresent() ? number : 0;
        cue(selected).ifPresent(cue -> {
            for (int i = 0; i < plan.tracks().size(); i++) {
                if (plan.tracks().get(i).slot() == cue.slot() && i != track) {
                    int wanted = selected;
                    toTrack(i);
                    selected = wanted;
                }
            }
        });
        tell(Change.SELECTION);
    }

    /** Selects the first cue of a line, if it has one; an editor says so when its caret moves. */
    public void selectLine(String uri, int line) {
        boolean there = selected().map(CueView::source).filter(at -> at.line() == line && at.uri().equals(uri)).isPresent();
        if (!there) {
            plan.cues().stream().filter(cue -> at(cue.source(), uri, line)).findFirst().ifPresent(cue -> select(cue.number()));
        }
    }

    private static boolean at(SourcePlace place, String uri, int line) {
        return place.line() == line && place.uri().equals(uri);
    }

    private void tell(Change change) {
        listeners.forEach(listener -> listener.changed(change));
    }
}
