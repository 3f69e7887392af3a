package org.girandole.physics.separation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The tables that come with the program, each quoting its document and how far it was verified. None is permission:
 * the edition in force where the show is fired, the authority, and the maker's data come first.
 */
public final class ShippedTables {
    private static final List<DistanceTable> ALL = all0();

    private ShippedTables() {
    }

    private static List<DistanceTable> all0() {
        List<DistanceTable> tables = new ArrayList<>();
        tables.add(SeventyFeetPerInch.TABLE);
        tables.add(SprengVAnnex6.TABLE);
        tables.addAll(TokyoTables.TABLES);
        return List.copyOf(tables);
    }

    /** All tables in a fixed order. */
    public static List<DistanceTable> all() {
        return ALL;
    }

    /** The table of a name. */
    public static Optional<DistanceTable> named(String name) {
        return ALL.stream().filter(table -> table.name().equals(name)).findFirst();
    }
}
