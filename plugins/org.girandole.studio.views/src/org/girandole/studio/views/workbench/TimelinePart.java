package org.girandole.studio.views.workbench;

import java.net.URI;
import java.nio.file.Path;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.part.ViewPart;
import org.girandole.protocol.RehearsalView;
import org.girandole.studio.views.stage.Stage;
import org.girandole.studio.views.swt.TimelineCanvas;

/** The timeline of the show in the active editor. */
public final class TimelinePart extends ViewPart {
    private TimelineCanvas canvas;

    @Override
    public void createPartControl(Composite parent) {
        ShowHub hub = ShowHub.get(parent.getDisplay());
        Stage stage = hub.stage();
        canvas = new TimelineCanvas(parent, stage, hub.playback(), hub::reveal, piece -> RecordingJob.start(Path.of(URI.create(piece))));
        new Buttons(getViewSite())
                .add("Play", "Play and stop (Space)", () -> hub.playback().toggle())
                .add("Closer", "Zoom in (+)", () -> redrawn(() -> canvas.state().zoomIn()))
                .add("Farther", "Zoom out (-)", () -> redrawn(() -> canvas.state().zoomOut()))
                .add("Whole", "The whole soundtrack (0)", () -> redrawn(() -> canvas.state().fit()))
                .add("Finding", "Next finding (F)", () -> redrawn(() -> canvas.state().nextFinding()))
                .add("Soundtrack", "Next soundtrack (T)", stage::nextTrack)
                .choice("Rehearsal", "Show how a rehearsed night goes (R: the next one)", () -> stage.night().choices().stream()
                        .map(RehearsalView.Choice::name).toList(), stage::rehearsed, stage::rehearse)
                .inMenu("Play the MIDI file into the missing recording (M)", () -> canvas.renderPiece());
    }

    private void redrawn(Runnable change) {
        change.run();
        canvas.redraw();
    }

    @Override
    public void setFocus() {
        canvas.setFocus();
    }
}
