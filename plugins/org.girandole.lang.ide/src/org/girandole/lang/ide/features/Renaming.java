package org.girandole.lang.ide.features;

import com.google.inject.Inject;
import com.google.inject.Singleton;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.eclipse.xtext.AbstractRule;
import org.eclipse.xtext.EcoreUtil2;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.resource.XtextResource;
import org.girandole.lang.scoping.Kind;
import org.girandole.lang.scoping.Lookup;
import org.girandole.lang.services.ShowGrammarAccess;
import org.girandole.lang.show.Named;
import org.girandole.lang.show.Parameter;

/** Gives a thing another name, everywhere at once. */
@Singleton
public final class Renaming {
    private static final Pattern NAME = Pattern.compile("\\^?[\\p{L}_°²µ][\\p{L}_°²µ0-9]*");

    private final Lookup lookup;
    private final Set<String> reserved;

    @Inject
    Renaming(ShowGrammarAccess grammar, Lookup lookup) {
        this.lookup = lookup;
        Set<String> words = new HashSet<>(GrammarUtil.getAllKeywords(grammar.getGrammar()));
        words.removeAll(keywords(grammar.getSoftWordRule()));
        words.removeAll(keywords(grammar.getTableWordRule()));
        this.reserved = words;
    }

    private static Set<String> keywords(AbstractRule rule) {
        Set<String> words = new HashSet<>();
        EcoreUtil2.getAllContentsOfType(rule, Keyword.class).forEach(keyword -> words.add(keyword.getValue()));
        return words;
    }

    /** A name as it has to be written: escaped where it is a word of the language. */
    public String written(String name) {
        return reserved.contains(name) ? "^" + name : name;
    }

    /** What would be renamed; empty where no name stands. */
    public Optional<Range> prepare(ScriptView view, Position caret) {
        return NameUse.at(view, view.lines().offset(caret)).map(use -> view.range(use.node()));
    }

    /**
     * One edit over all files.
     *
     * @throws ResponseErrorException when the new name is none, or taken by another thing of the same kind
     */
    public WorkspaceEdit rename(ScriptView view, Position caret, String name, Collection<XtextResource> scripts,
            Function<XtextResource, ScriptView> views) {
        NameUse use = NameUse.at(view, view.lines().offset(caret)).orElseThrow(() -> refused("Here stands no name that could be changed."));
        if (!NAME.matcher(name).matches()) {
            throw refused("'" + name + "' cannot be a name: a name is a letter, then letters, digits and underscores.");
        }
        Named target = use.target();
        String bare = name.startsWith("^") ? name.substring(1) : name;
        refuseTaken(target, bare, scripts);
        String written = written(bare);
        Map<String, List<TextEdit>> changes = new LinkedHashMap<>();
        NameUse.definition(target).ifPresent(node -> add(changes, views.apply((XtextResource) target.eResource()), node, written));
        NameUse.uses(target, scripts).forEach(found -> add(changes, views.apply(found.script()), found.node(), written));
        return new WorkspaceEdit(changes);
    }

    private static void add(Map<String, List<TextEdit>> changes, ScriptView view, org.eclipse.xtext.nodemodel.INode node, String written) {
        changes.computeIfAbsent(view.uri(), uri -> new ArrayList<>()).add(new TextEdit(view.range(node), written));
    }

    /** A second thing of that name would make every use of it doubtful; also where only a script that uses this one knows both. */
    private void refuseTaken(Named target, String name, Collection<XtextResource> scripts) {
        Optional<Kind> kind = Kind.of(target);
        for (XtextResource script : scripts) {
            if (script.getContents().isEmpty() || kind.isEmpty()) {
                continue;
            }
            var names = lookup.names(script.getContents().get(0));
            Map<String, Named> space = target instanceof Parameter || kind.get() == Kind.MARK || kind.get() == Kind.SECTION
                    ? names.inside(target.eContainer()) : names.in(kind.get().space());
            Named other = space.get(name);
            if (other != null && other != target && space.get(target.getName()) == target) {
                throw refused("'" + name + "' is already " + Kind.of(other).map(Kind::words).orElse("a name") + "; choose another.");
            }
        }
    }

    private static ResponseErrorException refused(String message) {
        return new ResponseErrorException(new ResponseError(ResponseErrorCode.InvalidParams, message, null));
    }
}
