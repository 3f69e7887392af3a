package org.girandole.plan.script;

import java.util.Optional;

/** Stock of one effect from one delivery, with what was measured on it. A measured rise goes before the catalogue's. */
public record Lot(String name, String effect, int count, Optional<Measured> rise, SourceRef source) {
}
