package org.girandole.studio.views.workbench;

import java.util.function.Consumer;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.part.ViewPart;
import org.girandole.protocol.SiteView;
import org.girandole.studio.views.swt.SkyCanvas;

/** The sky over the show in the active editor. */
public final class SkyPart extends ViewPart {
    private ShowHub hub;
    private SkyCanvas canvas;
    private Consumer<SiteView> sites;

    @Override
    public void createPartControl(Composite parent) {
        hub = ShowHub.get(parent.getDisplay());
        canvas = new SkyCanvas(parent, hub.stage(), hub.playback());
        sites = canvas::site;
        hub.onSite(sites);
        new Buttons(getViewSite()).add("Play", "Play and stop (Space)", () -> hub.playback().toggle());
    }

    @Override
    public void dispose() {
        if (hub != null) {
            hub.offSite(sites);
        }
        super.dispose();
    }

    @Override
    public void setFocus() {
        canvas.setFocus();
    }
}
