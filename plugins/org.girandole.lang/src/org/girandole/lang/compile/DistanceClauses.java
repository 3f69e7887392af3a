package org.girandole.lang.compile;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.show.FacingClause;
import org.girandole.lang.show.KindsClause;
import org.girandole.lang.show.OnClause;
import org.girandole.lang.show.RuleClause;
import org.girandole.lang.show.SaysClause;
import org.girandole.lang.show.WhenClause;
import org.girandole.physics.separation.Condition;
import org.girandole.physics.separation.Where;

/**
 * What follows a distance: for which articles it is, when, in which direction, and where that is written.
 *
 * @param on names of the rules that a change is of; empty for all
 * @param where the direction, everywhere when none is written
 * @param section the place in the document, empty when none is written
 */
record DistanceClauses(List<Condition> when, List<String> on, Where where, String section) {

    /** Empty when any part is wrong: a rule that is not sure must not hold for more than it says. */
    static Optional<DistanceClauses> of(Compilation compilation, List<RuleClause> clauses, List<String> rules, boolean mayName) {
        DistanceWords words = new DistanceWords(compilation);
        List<Condition> when = new ArrayList<>();
        List<String> on = new ArrayList<>();
        Where where = Where.EVERYWHERE;
        String section = "";
        boolean whole = true;
        Set<Class<?>> seen = new HashSet<>();
        for (RuleClause clause : clauses) {
            if (!seen.add(clause.eClass().getInstanceClass())) {
                compilation.problems().report(LanguageRules.REPEATED_FIELD, "The same is said twice of one rule")
                        .found(Sources.text(clause), "once").remedy("write both in one, or make it two rules")
                        .at(compilation.sources().whole(clause));
                whole = false;
            } else if (clause instanceof KindsClause kinds) {
                whole &= words.kinds(kinds).map(found -> when.add(new Condition.IsA(EnumSet.copyOf(found)))).isPresent();
            } else if (clause instanceof WhenClause asked) {
                for (org.girandole.lang.show.Condition condition : asked.getConditions()) {
                    whole &= words.condition(condition).map(when::add).isPresent();
                }
            } else if (clause instanceof OnClause named) {
                whole &= mayName ? names(compilation, named, rules, on) : misplaced(compilation, named);
            } else if (clause instanceof FacingClause facing) {
                where = where(facing);
            } else if (clause instanceof SaysClause says && says.getSection() != null) {
                section = says.getSection();
            } else {
                whole = false;
            }
        }
        return whole ? Optional.of(new DistanceClauses(when, on, where, section)) : Optional.empty();
    }

    private static boolean names(Compilation compilation, OnClause clause, List<String> rules, List<String> on) {
        boolean whole = !clause.getRules().isEmpty();
        for (int i = 0; i < clause.getRules().size(); i++) {
            String name = clause.getRules().get(i);
            if (rules.contains(name)) {
                on.add(name);
                continue;
            }
            whole = false;
            Optional<String> near = Words.nearest(name, rules);
            compilation.problems().report(LanguageRules.UNRESOLVED_NAME, "The table has no rule '" + name + "'"
                    + near.map(n -> "; did you mean " + n + "?").orElse("")).found(name, Words.or(rules))
                    .remedy(near.map(n -> "write " + n).orElse("write the name of a rule that is kept"))
                    .at(compilation.sources().of(clause, eINSTANCE.getOnClause_Rules(), i));
        }
        return whole;
    }

    private static boolean misplaced(Compilation compilation, OnClause clause) {
        compilation.problems().report(LanguageRules.SYNTAX, "'on' names the rules that a change is of; this is a rule itself")
                .found(Sources.text(clause), "for, when, a direction or says").remedy("write 'for' and kinds of effect, or begin the line with then")
                .at(compilation.sources().whole(clause));
        return false;
    }

    private static Where where(FacingClause clause) {
        return switch (clause.getFacing()) {
            case "downwind" -> Where.DOWNWIND;
            case "upwind" -> Where.UPWIND;
            case "toward" -> Where.TOWARDS_TILT;
            default -> Where.AGAINST_TILT;
        };
    }
}
