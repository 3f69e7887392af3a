package org.girandole.studio.views.sheets;

import java.util.List;
import java.util.Optional;
import org.girandole.protocol.SheetList;
import org.girandole.protocol.SheetPage;

/** Which page of which sheet is looked at, how large, and what is there of it. Knows no toolkit. */
public final class SheetsState {
    private static final double ZOOM = 1.25;
    private static final double SMALLEST = 0.3;
    private static final double LARGEST = 4;

    private final Runnable ask;
    private SheetList list = SheetList.nothing("", "Open the script of a show to see its sheets here.");
    private SheetPage page = SheetPage.nothing("", "");
    private int selected;
    private int wantedPage = 1;
    private double zoom = 1;

    /** @param ask asks for the page that is wanted now */
    public SheetsState(Runnable ask) {
        this.ask = ask;
    }

    public SheetList list() {
        return list;
    }

    /** Another list has come: the same sheet stays chosen if there still is one. */
    public void list(SheetList other) {
        String id = chosen().map(SheetList.Entry::id).orElse("");
        list = other;
        selected = 0;
        for (int i = 0; i < list.sheets().size(); i++) {
            if (list.sheets().get(i).id().equals(id)) {
                selected = i;
            }
        }
        if (!chosen().map(SheetList.Entry::id).orElse("").equals(id)) {
            wantedPage = 1;
        }
        page = SheetPage.nothing(id, "");
        askIfAny();
    }

    /** The chosen sheet. */
    public Optional<SheetList.Entry> chosen() {
        return selected < list.sheets().size() ? Optional.of(list.sheets().get(selected)) : Optional.empty();
    }

    public int selected() {
        return selected;
    }

    public void choose(int index) {
        if (index != selected && index >= 0 && index < list.sheets().size()) {
            selected = index;
            wantedPage = 1;
            page = SheetPage.nothing("", "");
            askIfAny();
        }
    }

    public int wantedPage() {
        return wantedPage;
    }

    /** The next page or the one before; beyond the last page comes the next sheet. */
    public void step(int direction) {
        int next = wantedPage + direction;
        if (next < 1 || page.pages() > 0 && next > page.pages()) {
            choose(selected + direction);
        } else {
            wantedPage = next;
            askIfAny();
        }
    }

    /** The page that is there; its field {@code nothing} may say why there is none. */
    public SheetPage page() {
        return page;
    }

    /** A page has come. One that is no longer wanted is dropped; a page that the sheet does not have is taken to its last. */
    public boolean page(SheetPage come) {
        if (!chosen().map(SheetList.Entry::id).orElse("").equals(come.id())) {
            return false;
        }
        page = come;
        if (come.nothing() == null) {
            wantedPage = come.page();
        }
        return true;
    }

    /** 1 is as wide as the view. */
    public double zoom() {
        return zoom;
    }

    public void zoom(int steps) {
        zoom = Math.max(SMALLEST, Math.min(LARGEST, zoom * Math.pow(ZOOM, steps)));
        askIfAny();
    }

    public void fit() {
        zoom = 1;
        askIfAny();
    }

    /** Names as they stand in a list. */
    public List<String> names() {
        return list.sheets().stream().map(entry -> entry.id() + "  " + entry.title()).toList();
    }

    /** What is looked at, in words. */
    public String words() {
        if (list.nothing() != null) {
            return list.nothing();
        }
        if (chosen().isEmpty()) {
            return "";
        }
        String title = chosen().map(SheetList.Entry::title).orElse("");
        if (page.nothing() != null) {
            return page.nothing().isEmpty() ? title + ": being laid out\u2026" : page.nothing();
        }
        return title + ", page " + page.page() + " of " + page.pages() + ". Editor preview, not released.";
    }

    private void askIfAny() {
        if (chosen().isPresent()) {
            ask.run();
        }
    }
}
