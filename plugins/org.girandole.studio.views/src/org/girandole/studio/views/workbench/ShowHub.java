package org.girandole.studio.views.workbench;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import org.eclipse.lsp4j.jsonrpc.services.ServiceEndpoints;
import org.eclipse.swt.widgets.Display;
import org.girandole.protocol.PlanView;
import org.girandole.protocol.RehearsalParams;
import org.girandole.protocol.RehearsalView;
import org.girandole.protocol.ScriptParams;
import org.girandole.protocol.ShowRequests;
import org.girandole.protocol.SiteParams;
import org.girandole.protocol.SiteView;
import org.girandole.protocol.SourcePlace;
import org.girandole.protocol.TrackView;
import org.girandole.protocol.WaveParams;
import org.girandole.protocol.WaveView;
import org.girandole.studio.client.ShowClient;
import org.girandole.studio.client.ShowListener;
import org.girandole.studio.views.site.TriedWind;
import org.girandole.studio.views.stage.Playback;
import org.girandole.studio.views.stage.Stage;

/**
 * Keeps the stage of all views up to date with the active editor. Everything here runs on the display's thread; nothing waits on it: of
 * each kind of question one is on its way at a time, and what was wanted meanwhile is asked afterwards.
 */
public final class ShowHub implements ShowListener {
    private static final int TICK_MS = 33;
    private static ShowHub instance;

    private final Display display;
    private final ShowClient client = ShowClient.get();
    private final ShowRequests requests = ServiceEndpoints.toServiceObject(new ClientEndpoint(client), ShowRequests.class);
    private final Stage stage = new Stage();
    private final Playback playback = new Playback(stage, System::nanoTime, this::tick);
    private final List<Consumer<SiteView>> siteListeners = new CopyOnWriteArrayList<>();
    private final Question<String, PlanView> plans;
    private final Question<SiteParams, SiteView> sites;
    private final Question<RehearsalParams, RehearsalView> nights;
    private String uri = "";
    private String heard = "";
    private String rehearsed = "";
    private SiteView site = SiteView.nothing("", "Open the script of a show to see its site here.");
    private final TriedWind wind = new TriedWind(this::askSite);
    private final FirstCheck check;

    private ShowHub(Display display) {
        this.display = display;
        check = new FirstCheck(display, why -> empty(uri, why));
        plans = new Question<>(display, wanted -> requests.plan(new ScriptParams(wanted)), this::show);
        sites = new Question<>(display, requests::site, this::showSite);
        nights = new Question<>(display, requests::rehearsal, this::showNight);
        stage.listen(this::stageChanged);
        client.addListener(this);
        client.activeUri().ifPresent(this::look);
    }

    /** The one hub. On the display's thread. */
    public static ShowHub get(Display display) {
        if (instance == null) {
            instance = new ShowHub(display);
        }
        return instance;
    }

    public Stage stage() {
        return stage;
    }

    public Playback playback() {
        return playback;
    }

    public ShowRequests requests() {
        return requests;
    }

    /** Goes to a line in its editor. */
    public void reveal(SourcePlace place) {
        client.reveal(place.uri(), place.line(), place.column(), place.length());
    }

    /** Whoever shows the site hears of it, now and whenever it changes. */
    public void onSite(Consumer<SiteView> listener) {
        siteListeners.add(listener);
        listener.accept(site);
        askSite();
    }

    public void offSite(Consumer<SiteView> listener) {
        siteListeners.remove(listener);
    }

    /** The wind that is tried on the show at hand. */
    public TriedWind triedWind() {
        return wind;
    }

    @Override
    public void editorChanged(Optional<String> active) {
        active.ifPresent(this::look);
    }

    @Override
    public void caretMoved(String file, int line) {
        if (!stage.playing()) {
            stage.selectLine(file, line);
        }
    }

    @Override
    public void checked(String script) {
        display.asyncExec(() -> {
            if (!uri.isEmpty()) {
                plans.ask(uri);
            }
        });
    }

    private void look(String file) {
        uri = file;
        if (!check.isOf(file) && (stage.plan().uri().equals(file) || stage.plan().files().contains(file))) {
            check.ends();
        } else {
            check.begins(file);
        }
        plans.ask(file);
    }

    private void empty(String file, String why) {
        stage.show(PlanView.nothing(file, why));
        // Else the site of another show would stay.
        tellSite(SiteView.nothing(file, why));
    }

    private void show(PlanView plan) {
        check.ends();
        // A file that belongs to the show at hand may be broken for a moment: the last good plan then stays.
        boolean broken = plan.nothing() != null && stage.plan().nothing() == null && stage.plan().files().contains(uri);
        if (broken || display.isDisposed()) {
            return;
        }
        wind.look(plan.uri());
        if (plan.nothing() != null) {
            empty(plan.uri(), plan.nothing());
        } else {
            stage.show(plan);
            askSite();
        }
    }

    private void stageChanged(Stage.Change change) {
        if (stage.plan().nothing() == null && (change == Stage.Change.SHOW || change == Stage.Change.NIGHT && !rehearsed.equals(stage.rehearsed()))) {
            rehearsed = stage.rehearsed();
            nights.ask(new RehearsalParams(stage.plan().uri(), rehearsed.isEmpty() ? null : rehearsed));
        }
        if (change == Stage.Change.SHOW || change == Stage.Change.TRACK) {
            String audio = stage.track().map(TrackView::audio).orElse("");
            if (!audio.equals(heard) || stage.wave().columns() == 0) {
                heard = audio;
                askWave();
            }
        }
    }

    private void showNight(RehearsalView night) {
        if (rehearsed.equals(stage.rehearsed())) {
            stage.night(night);
        }
    }

    private void askWave() {
        Optional<TrackView> track = stage.track().filter(each -> each.audio() != null);
        if (track.isEmpty()) {
            if (stage.wave().columns() > 0) {
                stage.wave(WaveView.nothing(""));
            }
            return;
        }
        String wanted = heard;
        requests.waveform(new WaveParams(stage.plan().uri(), track.get().name())).thenAccept(wave -> display.asyncExec(() -> {
            if (wave != null && wanted.equals(heard)) {
                stage.wave(wave);
            }
        }));
    }

    private void askSite() {
        if (!siteListeners.isEmpty() && stage.plan().nothing() == null) {
            sites.ask(new SiteParams(stage.plan().uri(), wind.wind().orElse(null)));
        }
    }

    private void showSite(SiteView shown) {
        if (stage.plan().nothing() == null) {
            tellSite(shown);
        }
    }

    private void tellSite(SiteView shown) {
        site = shown;
        siteListeners.forEach(listener -> listener.accept(shown));
    }

    private void tick() {
        if (!display.isDisposed() && stage.playing()) {
            playback.tick();
            display.timerExec(TICK_MS, this::tick);
        }
    }

}
