package org.girandole.lang.compile;

import java.nio.file.Path;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EReference;
import org.eclipse.xtext.resource.XtextResource;
import org.girandole.lang.LanguageRules;
import org.girandole.lang.files.ProjectRoot;
import org.girandole.lang.files.Recordings;
import org.girandole.lang.scoping.Kind;
import org.girandole.lang.scoping.Lookup;
import org.girandole.lang.scoping.Names;
import org.girandole.lang.services.ShowGrammarAccess;
import org.girandole.lang.show.CueLine;
import org.girandole.lang.show.Named;
import org.girandole.lang.show.PlaceRange;
import org.girandole.lang.show.Places;
import org.girandole.plan.script.InputFile;

/** What the compilers of the parts of one script share. */
final class Compilation {
    private final ShowGrammarAccess grammar;
    private final Lookup lookup;
    private final XtextResource main;
    private final Problems problems = new Problems();
    private final Sources sources;
    private final Quantities quantities;
    private final Map<String, InputFile> inputs = new LinkedHashMap<>();
    private final Set<Named> dropped = Collections.newSetFromMap(new IdentityHashMap<>());
    private final Path root;
    private final Recordings recordings;
    private final BooleanSupplier overtaken;

    Compilation(ShowGrammarAccess grammar, Lookup lookup, XtextResource main, Recordings recordings, BooleanSupplier overtaken) {
        this.recordings = recordings;
        this.overtaken = overtaken;
        this.grammar = grammar;
        this.lookup = lookup;
        this.main = main;
        this.root = ProjectRoot.of(main);
        this.sources = new Sources(uri -> ProjectRoot.relative(root, ProjectRoot.path(uri)));
        this.quantities = new Quantities(problems, sources);
    }

    /** Asked before each line. @throws CancellationException when nobody wants the answer any more */
    void goOn() {
        if (overtaken.getAsBoolean()) {
            throw new CancellationException();
        }
    }

    ShowGrammarAccess grammar() {
        return grammar;
    }

    Problems problems() {
        return problems;
    }

    Sources sources() {
        return sources;
    }

    Quantities quantities() {
        return quantities;
    }

    Recordings recordings() {
        return recordings;
    }

    Path root() {
        return root;
    }

    /** The names that the main script sees. */
    Names names() {
        return lookup.names(main.getContents().get(0));
    }

    void input(InputFile file) {
        inputs.putIfAbsent(file.path(), file);
    }

    List<InputFile> inputs() {
        return List.copyOf(inputs.values());
    }

    /** Marks something as too broken to be in the show; what refers to it is left out without a word, since the cause is reported. */
    void drop(Named named) {
        dropped.add(named);
    }

    boolean dropped(Named named) {
        return dropped.contains(named);
    }

    /** What a reference points to; reported when it points to nothing. Empty also when it points to something left out. */
    Optional<Named> resolve(EObject owner, EReference reference) {
        Named target = (Named) owner.eGet(reference);
        if (target == null) {
            return Optional.empty();
        }
        if (target.eIsProxy()) {
            unresolved(owner, reference);
            return Optional.empty();
        }
        return dropped.contains(target) ? Optional.empty() : Optional.of(target);
    }

    /** As {@link #resolve}, when only one type is possible. */
    <T extends Named> Optional<T> resolve(EObject owner, EReference reference, Class<T> type) {
        return resolve(owner, reference).filter(type::isInstance).map(type::cast);
    }

    /** The name that a reference points to. */
    Optional<String> resolvedName(EObject owner, EReference reference) {
        return resolve(owner, reference).map(Named::getName);
    }

    void unresolved(EObject owner, EReference reference) {
        unresolved(owner, reference, Set.of());
    }

    /** @param more names that would also do, such as imported marks */
    void unresolved(EObject owner, EReference reference, Set<String> more) {
        String name = Sources.name(owner, reference);
        if (name.isEmpty() || !Character.isLetter(name.charAt(0)) && name.charAt(0) != '_') {
            // No name at all; the parser has said so.
            return;
        }
        if (Joints.is(name) && (owner instanceof CueLine || isMore(owner))) {
            Joints.report(this, owner, reference, name, owner instanceof CueLine ? Joints.WRITE_COMMA : Joints.LEAVE_OUT);
            return;
        }
        Lookup.Candidates candidates = lookup.candidates(owner, reference);
        List<String> wanted = candidates.kinds().isEmpty() ? List.of(Kind.PARAMETER.words())
                : candidates.kinds().stream().map(Kind::words).toList();
        Optional<Kind> other = elsewhere(owner, name, candidates);
        if (other.isPresent() && (owner instanceof PlaceRange || owner instanceof CueLine)) {
            misplaced(owner, reference, name, other.get(), wanted);
            return;
        }
        if (other.isPresent()) {
            problems.report(LanguageRules.WRONG_KIND, "'" + name + "' is " + other.get().words() + ", but " + Words.or(wanted) + " is needed here")
                    .found(other.get().words(), Words.or(wanted)).remedy("write the name of " + Words.or(wanted))
                    .at(sources.of(owner, reference));
            return;
        }
        TreeSet<String> known = new TreeSet<>(more);
        candidates.tables().forEach(table -> table.forEach((key, named) -> {
            if (Kind.of(named).filter(candidates.kinds()::contains).isPresent()) {
                known.add(key);
            }
        }));
        Optional<String> near = Words.nearest(name, known);
        problems.report(LanguageRules.UNRESOLVED_NAME, "There is no " + Words.or(wanted.stream().map(Words::bare).toList()) + " '" + name + "'"
                + near.map(n -> "; did you mean " + n + "?").orElse("")).found(name, Words.or(wanted))
                .remedy(near.map(n -> "write " + n + ", or define " + name).orElse("define " + name + ", or use the file that does"))
                .data(near.map(n -> Map.of("replace", n)).orElse(Map.of())).at(sources.of(owner, reference));
    }

    /** Whether it stands after a comma between positions. */
    private static boolean isMore(EObject place) {
        return place instanceof PlaceRange && place.eContainer() instanceof Places places && places.getRanges().indexOf(place) > 0;
    }

    /** In a cue, a name of the wrong kind mostly means that something before or after it is missing. */
    private void misplaced(EObject owner, EReference reference, String name, Kind other, List<String> wanted) {
        boolean place = other == Kind.POSITION || other == Kind.GROUP;
        String remedy = owner instanceof PlaceRange ? "write the position before the effect: at TIME PLACES EFFECT"
                : place ? "separate positions by commas, and write the effect after the last"
                : "write the name of an effect: at TIME PLACES EFFECT";
        problems.report(LanguageRules.WRONG_KIND, "'" + name + "' is " + other.words() + ", but " + Words.or(wanted) + " is needed here")
                .found(other.words(), Words.or(wanted)).remedy(remedy).at(sources.of(owner, reference));
    }

    private Optional<Kind> elsewhere(EObject owner, String name, Lookup.Candidates candidates) {
        for (Map<String, Named> table : candidates.tables()) {
            if (table.containsKey(name)) {
                return Kind.of(table.get(name));
            }
        }
        Names names = lookup.names(owner);
        for (Kind.Space space : Kind.Space.values()) {
            Named named = names.in(space).get(name);
            if (named != null && Kind.of(named).filter(candidates.kinds()::contains).isEmpty()) {
                return Kind.of(named);
            }
        }
        return Optional.empty();
    }
}
