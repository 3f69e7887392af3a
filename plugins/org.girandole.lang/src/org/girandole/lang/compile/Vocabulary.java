package org.girandole.lang.compile;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.eclipse.xtext.AbstractElement;
import org.eclipse.xtext.AbstractRule;
import org.eclipse.xtext.Alternatives;
import org.eclipse.xtext.Assignment;
import org.eclipse.xtext.CompoundElement;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.Group;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.ParserRule;
import org.eclipse.xtext.RuleCall;

/** The words with which things begin, read off the grammar. */
public final class Vocabulary {
    private static final String KEY = "key";

    private Vocabulary() {
    }

    /** The words with which the lines of a block begin; several where one does not tell which line it is. */
    public static List<String> of(AbstractRule rule) {
        Set<String> words = new LinkedHashSet<>();
        collect(rule.getAlternatives(), words);
        return new ArrayList<>(words);
    }

    /** All words that a rule can begin with. */
    public static Set<String> first(AbstractRule rule) {
        Set<String> words = new LinkedHashSet<>();
        first(rule.getAlternatives(), words, new LinkedHashSet<>(List.of(rule)));
        return words;
    }

    /** @return whether what follows the element may come first as well */
    private static boolean first(AbstractElement element, Set<String> words, Set<AbstractRule> seen) {
        boolean optional = GrammarUtil.isOptionalCardinality(element);
        if (element instanceof Keyword keyword) {
            if (Character.isLetter(keyword.getValue().charAt(0))) {
                words.add(keyword.getValue());
            }
        } else if (element instanceof Alternatives alternatives) {
            for (AbstractElement alternative : alternatives.getElements()) {
                optional |= first(alternative, words, seen);
            }
        } else if (element instanceof Group group) {
            boolean open = true;
            for (AbstractElement part : group.getElements()) {
                open = open && first(part, words, seen);
            }
            optional |= open;
        } else if (element instanceof Assignment assignment) {
            optional |= first(assignment.getTerminal(), words, seen);
        } else if (element instanceof RuleCall call) {
            if (!unknown(call) && call.getRule() instanceof ParserRule && seen.add(call.getRule())) {
                optional |= first(call.getRule().getAlternatives(), words, seen);
            }
        } else {
            optional = true;
        }
        return optional;
    }

    /** Rules that take what nobody knows are no source of words. */
    private static boolean unknown(RuleCall call) {
        return call.getRule().getName().startsWith("Stray") || call.getRule().getName().equals("UnknownField");
    }

    private static void collect(AbstractElement element, Set<String> words) {
        if (element instanceof Alternatives alternatives) {
            alternatives.getElements().forEach(alternative -> collect(alternative, words));
        } else if (element instanceof Group group) {
            for (AbstractElement part : group.getElements()) {
                if (part instanceof Assignment || part instanceof RuleCall || part instanceof Alternatives) {
                    collect(part, words);
                    return;
                }
            }
        } else if (element instanceof Assignment assignment && KEY.equals(assignment.getFeature())) {
            keys(assignment.getTerminal(), words);
        } else if (element instanceof RuleCall call && !unknown(call)) {
            collect(call.getRule().getAlternatives(), words);
        }
    }

    private static void keys(AbstractElement terminal, Set<String> words) {
        if (terminal instanceof Keyword keyword) {
            words.add(keyword.getValue());
        } else if (terminal instanceof Alternatives alternatives) {
            alternatives.getElements().forEach(alternative -> keys(alternative, words));
        } else if (terminal instanceof RuleCall call && GrammarUtil.isDatatypeRule(call.getRule())) {
            words.add(phrase(call.getRule().getAlternatives()));
        }
    }

    private static String phrase(AbstractElement element) {
        if (element instanceof Keyword keyword) {
            return keyword.getValue();
        }
        List<String> parts = new ArrayList<>();
        for (AbstractElement part : ((CompoundElement) element).getElements()) {
            parts.add(phrase(part));
        }
        return String.join(" ", parts).replace(" - ", "-");
    }
}
