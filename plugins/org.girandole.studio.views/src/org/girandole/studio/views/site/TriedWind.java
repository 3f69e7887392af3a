package org.girandole.studio.views.site;

import java.util.Optional;
import org.girandole.protocol.WindView;

/** The wind that is tried on the show at hand, in place of that of its script. One for all that draw its site. Knows no toolkit. */
public final class TriedWind {
    private final Runnable ask;
    private String show = "";
    private WindView wind;

    /** @param ask asks for the site in the wind that is wanted by then */
    public TriedWind(Runnable ask) {
        this.ask = ask;
    }

    /** Empty: the wind of the script. */
    public Optional<WindView> wind() {
        return Optional.ofNullable(wind);
    }

    /** A show is looked at; what was tried on another is forgotten. */
    public void look(String uri) {
        if (!uri.equals(show)) {
            show = uri;
            wind = null;
        }
    }

    void change(WindView wanted) {
        if (!wanted.equals(wind)) {
            wind = wanted;
            ask.run();
        }
    }

    void forget() {
        if (wind != null) {
            wind = null;
            ask.run();
        }
    }
}
