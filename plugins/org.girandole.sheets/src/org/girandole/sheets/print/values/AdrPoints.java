package org.girandole.sheets.print.values;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * Points of the European agreement on carriage by road (ADR): net explosive mass in kilograms times a factor by transport category. A
 * vehicle whose sum stays within 1000 may use the partial exemption of 1.1.3.6. It is printed as information: the consignor reckons anew.
 *
 * <p>
 * Source: ADR table 1.1.3.6.3 (members of the categories of class 1) and 1.1.3.6.4 (factors); category 4 for 1.4S from memory.
 */
public final class AdrPoints {
	/** Points up to which the partial exemption reaches. */
	public static final int LIMIT = 1000;
	/** What the sheet says about where this comes from. */
	public static final String SOURCE = "ADR 1.1.3.6.3 and 1.1.3.6.4";
	private static final Set<String> CATEGORY_0 = Set.of("1.1A", "1.1L", "1.2L", "1.3L");
	private static final Set<String> CATEGORY_1 = Set.of("1.1B", "1.1C", "1.1D", "1.1E", "1.1F", "1.1G", "1.1J", "1.2B", "1.2C", "1.2D",
			"1.2E", "1.2F", "1.2G", "1.2H", "1.2J", "1.3C", "1.3G", "1.3H", "1.3J", "1.5D");
	private static final Set<String> CATEGORY_2 = Set.of("1.4B", "1.4C", "1.4D", "1.4E", "1.4F", "1.4G", "1.6N");
	private static final Set<String> CATEGORY_4 = Set.of("1.4S");
	private static final Map<Integer, Integer> FACTORS = Map.of(1, 50, 2, 3, 4, 0);

	private AdrPoints() {
	}

	/** The transport category of a hazard class; empty for one that the table does not name. */
	public static OptionalInt category(String hazardClass) {
		if (CATEGORY_0.contains(hazardClass)) {
			return OptionalInt.of(0);
		}
		if (CATEGORY_1.contains(hazardClass)) {
			return OptionalInt.of(1);
		}
		if (CATEGORY_2.contains(hazardClass)) {
			return OptionalInt.of(2);
		}
		return CATEGORY_4.contains(hazardClass) ? OptionalInt.of(4) : OptionalInt.empty();
	}

	/** The factor of a hazard class; empty where there is no exemption at all (category 0) or the class is not in the table. */
	public static Optional<Integer> factor(String hazardClass) {
		OptionalInt category = category(hazardClass);
		return category.isPresent() ? Optional.ofNullable(FACTORS.get(category.getAsInt())) : Optional.empty();
	}
}
