package org.girandole.lang.compile;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.show.DistancesDef;
import org.girandole.lang.show.KeepField;
import org.girandole.lang.show.TextField;
import org.girandole.lang.show.ThenField;
import org.girandole.physics.separation.BaseRule;
import org.girandole.physics.separation.Change;
import org.girandole.physics.separation.Citation;
import org.girandole.physics.separation.Condition;
import org.girandole.physics.separation.DistanceTable;
import org.girandole.physics.separation.Formula;
import org.girandole.physics.separation.Modifier;
import org.girandole.physics.separation.ShippedTables;
import org.girandole.physics.separation.Verification;
import org.girandole.physics.separation.Where;
import org.girandole.plan.script.DistanceRules;

/** Distance tables that the user writes. */
final class DistanceBlock {
    private final Compilation compilation;
    private final DistanceAmounts amounts;

    DistanceBlock(Compilation compilation) {
        this.compilation = compilation;
        this.amounts = new DistanceAmounts(compilation);
    }

    /** Empty when any part of it is wrong: a table that lacks a rule would ask less than its author meant. */
    Optional<DistanceRules> table(DistancesDef def) {
        Block block = new Block(compilation, def, def.getFields(), "a distance table", compilation.grammar().getDistancesFieldRule(),
                Set.of("keep", "assess", "then", "note"));
        block.missing("document", "document \"…\" with the title of what the distances are from, were it only your own practice");
        block.missing("keep", "keep Shells 0.8 m per mm for shell");
        Optional<String> document = block.field("document", TextField.class).map(TextField::getText).filter(text -> !text.isBlank());
        List<String> notes = block.all("note", TextField.class).stream().map(TextField::getText).filter(text -> text != null).toList();
        Optional<Double> sector = block.has("sector") ? block.si("sector", Range.SECTOR) : Optional.of(DistanceTable.DEFAULT_SECTOR_DEG);
        Citation own = new Citation(document.orElse(""), "", Verification.OWN);
        List<BaseRule> rules = new ArrayList<>();
        List<KeepField> kept = def.getFields().stream().filter(KeepField.class::isInstance).map(KeepField.class::cast).toList();
        for (KeepField field : kept) {
            rule(field, own).filter(rule -> isNew(field, rules)).ifPresent(rules::add);
        }
        List<String> names = kept.stream().map(KeepField::getRule).filter(name -> name != null).toList();
        List<ThenField> changes = block.all("then", ThenField.class);
        List<Modifier> modifiers = new ArrayList<>();
        changes.forEach(field -> modifier(field, names, own).ifPresent(modifiers::add));
        boolean whole = rules.size() == kept.size() && modifiers.size() == changes.size() && block.has("keep") && !block.hasUnknown();
        if (def.getName() == null || isShipped(def) || document.isEmpty() || sector.isEmpty() || !whole) {
            compilation.drop(def);
            return Optional.empty();
        }
        return Optional.of(new DistanceRules(new DistanceTable(def.getName(), def.getLabel() == null ? def.getName() : def.getLabel(), own,
                sector.get(), rules, modifiers, notes), compilation.sources().of(def)));
    }

    private boolean isShipped(DistancesDef def) {
        if (ShippedTables.named(def.getName()).isEmpty()) {
            return false;
        }
        compilation.problems().report(LanguageRules.DUPLICATE_NAME, "'" + def.getName() + "' is a distance table that comes with the program")
                .found(def.getName(), "a name of its own").remedy("give your table another name").at(compilation.sources().of(def));
        return true;
    }

    private boolean isNew(KeepField field, List<BaseRule> rules) {
        if (rules.stream().noneMatch(rule -> rule.id().equals(field.getRule()))) {
            return true;
        }
        compilation.problems().report(LanguageRules.DUPLICATE_NAME, "There is already a rule '" + field.getRule() + "' in this table")
                .found(field.getRule(), "each name once").remedy("rename one of the two")
                .at(compilation.sources().of(field, eINSTANCE.getKeepField_Rule()));
        return false;
    }

    private Optional<BaseRule> rule(KeepField field, Citation own) {
        Optional<DistanceClauses> clauses = DistanceClauses.of(compilation, field.getClauses(), List.of(), false);
        Optional<Formula> formula = field.getReason() != null ? Optional.of(Formula.noNumber(field.getReason()))
                : amounts.formula(field.getAmount());
        if (clauses.isEmpty() || formula.isEmpty() || field.getRule() == null) {
            return Optional.empty();
        }
        List<Condition> when = new ArrayList<>(clauses.get().when());
        if (clauses.get().where() != Where.EVERYWHERE) {
            when.add(Condition.facing(clauses.get().where()));
        }
        return Optional.of(new BaseRule(field.getRule(), Sources.line(field), when, formula.get(), cite(own, clauses.get())));
    }

    private Optional<Modifier> modifier(ThenField field, List<String> rules, Citation own) {
        Optional<DistanceClauses> clauses = DistanceClauses.of(compilation, field.getClauses(), rules, true);
        Optional<Change> change = amounts.change(field.getChange());
        if (clauses.isEmpty() || change.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Modifier(Sources.line(field), clauses.get().on(), clauses.get().when(), clauses.get().where(), change.get(),
                cite(own, clauses.get())));
    }

    private static Citation cite(Citation own, DistanceClauses clauses) {
        return new Citation(own.document(), clauses.section(), own.verification());
    }
}
