package org.girandole.plan.script;

import java.util.List;

/**
 * A firing module on the site.
 *
 * @param address what the controller calls it
 * @param positions the positions it serves; it stands at the first
 */
public record Module(String name, String address, String type, List<String> positions, SourceRef source) {
    public Module {
        positions = List.copyOf(positions);
    }
}
