package org.girandole.studio.views.workbench;

import java.util.function.Consumer;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.part.ViewPart;
import org.girandole.protocol.CueView;
import org.girandole.protocol.SiteView;
import org.girandole.studio.views.stage.Stage;
import org.girandole.studio.views.swt.SiteCanvas;

/** The site of the show in the active editor. */
public final class SitePart extends ViewPart {
    private static final double ZOOM = 1.25;

    private final Stage.Listener selections = this::changed;
    private ShowHub hub;
    private SiteCanvas canvas;
    private Consumer<SiteView> sites;

    @Override
    public void createPartControl(Composite parent) {
        hub = ShowHub.get(parent.getDisplay());
        canvas = new SiteCanvas(parent, hub.triedWind(), hub::reveal);
        sites = canvas::site;
        hub.onSite(sites);
        hub.stage().listen(selections);
        new Buttons(getViewSite())
                .add("Script's wind", "Back to the wind of the script (S)", () -> redrawn(() -> canvas.state().scriptWind()))
                .add("Closer", "Zoom in (+)", () -> redrawn(() -> canvas.state().zoom(ZOOM)))
                .add("Farther", "Zoom out (-)", () -> redrawn(() -> canvas.state().zoom(1 / ZOOM)))
                .add("Whole", "The whole site (0)", () -> redrawn(() -> canvas.state().fit()))
                .inMenu("All words, or few (L)", () -> redrawn(() -> canvas.state().fold()));
    }

    private void redrawn(Runnable change) {
        change.run();
        canvas.redraw();
    }

    /** The position of a selected cue is the one to look at. */
    private void changed(Stage.Change change) {
        if (change == Stage.Change.SELECTION && !canvas.isDisposed()) {
            hub.stage().selected().map(CueView::position).ifPresent(canvas.state()::selectPosition);
            canvas.redraw();
        }
    }

    @Override
    public void dispose() {
        if (hub != null) {
            hub.offSite(sites);
            hub.stage().unlisten(selections);
        }
        super.dispose();
    }

    @Override
    public void setFocus() {
        canvas.setFocus();
    }
}
