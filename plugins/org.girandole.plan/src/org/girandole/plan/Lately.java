package org.girandole.plan;

import java.util.LinkedHashMap;
import java.util.Map;

/** A map that keeps what was asked for last, and never more than a limit. Not for several threads at once. */
public final class Lately<K, V> extends LinkedHashMap<K, V> {
    private static final long serialVersionUID = 1L;
    private final int most;

    public Lately(int most) {
        super(16, 0.75f, true);
        this.most = most;
    }

    @Override
    protected boolean removeEldestEntry(Map.Entry<K, V> eldest) {
        return size() > most;
    }
}
