package org.girandole.lang.ide.features;

import com.google.inject.Inject;
import com.google.inject.Provider;
import com.google.inject.Singleton;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.xtext.formatting2.FormatterRequest;
import org.eclipse.xtext.formatting2.IFormatter2;
import org.eclipse.xtext.formatting2.regionaccess.ITextReplacement;
import org.eclipse.xtext.formatting2.regionaccess.TextRegionAccessBuilder;
import org.eclipse.xtext.util.TextRegion;

/** The one form of a script, for a whole file or some of its lines. What cannot be read is left as it is. */
@Singleton
public final class Formatting {
    private final Provider<FormatterRequest> requests;
    private final Provider<TextRegionAccessBuilder> regions;
    private final Provider<IFormatter2> formatters;

    @Inject
    Formatting(Provider<FormatterRequest> requests, Provider<TextRegionAccessBuilder> regions, Provider<IFormatter2> formatters) {
        this.requests = requests;
        this.regions = regions;
        this.formatters = formatters;
    }

    /** @param range the lines wanted; all when empty */
    public List<TextEdit> of(ScriptView view, Optional<Range> range) {
        if (view.script().isEmpty()) {
            return List.of();
        }
        FormatterRequest request = requests.get().setTextRegionAccess(regions.get().forNodeModel(view.resource()).create());
        range.ifPresent(wanted -> {
            int from = view.lines().offset(wanted.getStart());
            request.addRegion(new TextRegion(from, Math.max(0, view.lines().offset(wanted.getEnd()) - from)));
        });
        List<TextEdit> edits = new ArrayList<>();
        for (ITextReplacement replacement : formatters.get().format(request)) {
            edits.add(new TextEdit(view.lines().range(replacement.getOffset(), replacement.getEndOffset()), replacement.getReplacementText()));
        }
        return edits;
    }
}
