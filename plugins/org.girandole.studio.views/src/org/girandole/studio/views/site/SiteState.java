package org.girandole.studio.views.site;

import java.util.Optional;
import org.girandole.protocol.SiteView;
import org.girandole.protocol.WindView;
import org.girandole.studio.views.draw.Pen;
import org.girandole.studio.views.draw.Pen.Letters;

/** What the site view shows and how keys and mouse change it. Knows no toolkit. */
public final class SiteState {
    /** In lines of letters: in a drawing that is narrower or lower the words give way. */
    private static final double NARROW = 50;
    private static final double LOW = 25;
    /** Where words lie over the edge of the plan, the room that is left over is there. */
    private static final double ABOVE = 0.85;
    private static final WindView CALM = new WindView(0, 0, null);

    private final TriedWind tried;
    private SiteView site = SiteView.nothing("", "Open the script of a show to see its site here.");
    private Ground ground = new Ground(0, 0, 1, 1, 1);
    private SiteLayout layout = new SiteLayout(new Rose(0, 0, 1), SiteLayout.Fold.USUAL, 1, 1, new Box(0, 0, 1, 1), 1, new Box(0, 0, 1, 1));
    private int selected = -1;
    private boolean fitted = true;
    private boolean small;
    private Boolean unfolded;

    public SiteState(TriedWind tried) {
        this.tried = tried;
    }

    public SiteView site() {
        return site;
    }

    public Ground ground() {
        return ground;
    }

    /** Whether the drawing is so small that all in it keeps clear of the plan. */
    boolean small() {
        return small;
    }

    /** Whether the words are folded, so that the plan has the room: of itself in a small view. */
    public boolean folded() {
        return unfolded == null ? small : !unfolded;
    }

    /** Whether somebody asked for all words, whatever they cover. */
    boolean unfolded() {
        return Boolean.TRUE.equals(unfolded);
    }

    /** All words, or few. */
    public void fold() {
        unfolded = !unfolded();
    }

    SiteLayout layout() {
        return layout;
    }

    public Rose rose() {
        return layout.rose();
    }

    /** An answer has come. A selected position stays if the new site has one of its name. */
    public void show(SiteView shown) {
        String name = selected().map(SiteView.Position::name).orElse("");
        boolean other = !shown.name().equals(site.name()) || shown.positions().size() != site.positions().size();
        site = shown;
        selected = -1;
        selectPosition(name);
        if (other || fitted) {
            fit();
        }
    }

    /** The wind that is wanted, before the answer has come. */
    public WindView wind() {
        return tried.wind().orElse(site.scriptWind() != null ? site.scriptWind() : CALM);
    }

    /** Whether a wind is tried that is not the script's. */
    public boolean trying() {
        return tried.wind().isPresent();
    }

    /** Whether what is drawn is for the wind that is wanted. */
    public boolean settled() {
        return site.nothing() != null || tried.wind().isEmpty() || tried.wind().get().equals(site.wind());
    }

    public void tryWind(WindView wind) {
        tried.change(wind);
    }

    /** Back to the wind of the script. */
    public void scriptWind() {
        tried.forget();
    }

    /** A step of the wind by keys. */
    public void turnWind(int turns, int speeds) {
        tryWind(Rose.stepped(wind(), turns, speeds));
    }

    /** The selected position. */
    public Optional<SiteView.Position> selected() {
        return selected >= 0 && selected < site.positions().size() ? Optional.of(site.positions().get(selected)) : Optional.empty();
    }

    public void selectPosition(String name) {
        for (int i = 0; i < site.positions().size(); i++) {
            if (site.positions().get(i).name().equals(name)) {
                selected = i;
            }
        }
    }

    /** The next position, or the one before; around the end. */
    public void stepPosition(int direction) {
        int count = site.positions().size();
        if (count > 0) {
            selected = selected < 0 ? (direction > 0 ? 0 : count - 1) : Math.floorMod(selected + direction, count);
        }
    }

    public void selectNone() {
        selected = -1;
    }

    /** The position near a point of the drawing. */
    public Optional<SiteView.Position> at(double px, double py, double reach) {
        return site.positions().stream().filter(p -> Math.hypot(ground.px(p.at().x()) - px, ground.py(p.at().y()) - py) <= reach).findFirst();
    }

    /** Finds the places for all in a drawing of this size. */
    public void arrange(double width, double height, Pen pen) {
        double unit = pen.height(Letters.NORMAL);
        small = width < unit * NARROW || height < unit * LOW;
        ground = ground.sized(width, height);
        if (site.nothing() != null) {
            return;
        }
        layout = SiteLayout.of(this, width, height, pen);
        if (fitted) {
            fit();
        }
    }

    public void fit() {
        fitted = true;
        ground = Ground.whole(site, layout.plan(), small ? 0.5 : ABOVE, ground.width(), ground.height());
    }

    public void zoom(double factor) {
        fitted = false;
        ground = ground.zoomed(factor);
    }

    public void move(double dx, double dy) {
        fitted = false;
        ground = ground.moved(dx, dy);
    }
}
