package org.girandole.lang.compile;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

import java.util.Optional;
import java.util.regex.Pattern;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.show.HazardField;

/** Hazard class and UN number as written on the carton. */
record Hazard(String division, Optional<String> unNumber) {
    private static final Pattern DIVISION = Pattern.compile("1\\.[1-6][A-HJ-LNS]");
    private static final Pattern UN_NUMBER = Pattern.compile("UN\\d{4}");

    /** The hazard class of a field; empty, and reported, when it is none. */
    static Optional<Hazard> of(Compilation compilation, HazardField field) {
        if (field.getDivision() == null) {
            return Optional.empty();
        }
        if (!DIVISION.matcher(field.getDivision()).matches()) {
            compilation.problems().report(LanguageRules.UNKNOWN_WORD, "'" + field.getDivision() + "' is no hazard class")
                    .found(field.getDivision(), "a division and a group, such as 1.3G").basis("UN Model Regulations, chapter 2.1")
                    .remedy("write it as on the carton, such as 1.3G UN0335")
                    .at(compilation.sources().of(field, eINSTANCE.getHazardField_Division()));
            return Optional.empty();
        }
        if (field.getUnNumber() != null && !UN_NUMBER.matcher(field.getUnNumber()).matches()) {
            compilation.problems().report(LanguageRules.UNKNOWN_WORD, "'" + field.getUnNumber() + "' is no UN number")
                    .found(field.getUnNumber(), "UN and four digits, such as UN0335").basis("UN Model Regulations, chapter 3.2")
                    .remedy("write it as on the carton").at(compilation.sources().of(field, eINSTANCE.getHazardField_UnNumber()));
            return Optional.of(new Hazard(field.getDivision(), Optional.empty()));
        }
        return Optional.of(new Hazard(field.getDivision(), Optional.ofNullable(field.getUnNumber())));
    }
}
