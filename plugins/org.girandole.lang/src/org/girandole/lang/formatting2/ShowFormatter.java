package org.girandole.lang.formatting2;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.eclipse.xtext.formatting2.FormatterRequest;
import org.eclipse.xtext.formatting2.IFormatter2;
import org.eclipse.xtext.formatting2.regionaccess.IEObjectRegion;
import org.eclipse.xtext.formatting2.regionaccess.IHiddenRegion;
import org.eclipse.xtext.formatting2.regionaccess.ISemanticRegion;
import org.eclipse.xtext.formatting2.regionaccess.ITextRegionAccess;
import org.eclipse.xtext.formatting2.regionaccess.ITextReplacement;
import org.eclipse.xtext.formatting2.regionaccess.ITextSegment;
import org.eclipse.xtext.resource.XtextResource;
import org.eclipse.xtext.util.ITextRegion;
import org.girandole.lang.show.Script;

/**
 * Gives scripts their one form: lines of a block below each other and indented by two, one space between words and two between things
 * said on one line, times, places and effects of cues in columns. Line breaks between the lines of a block are the author's, and so are
 * comments and single empty lines. What is not a script is left as it is.
 */
public class ShowFormatter implements IFormatter2 {
    @Override
    public List<ITextReplacement> format(FormatterRequest request) {
        ITextRegionAccess access = request.getTextRegionAccess();
        XtextResource resource = access.getResource();
        IEObjectRegion root = access.regionForRootEObject();
        if (root == null || !(root.getSemanticElement() instanceof Script script) || resource.getParseResult() == null
                || resource.getParseResult().hasSyntaxErrors()) {
            return List.of();
        }
        Layout layout = new Layout(access);
        layout.script(script);
        new Columns(access, layout).script(script);
        List<ITextReplacement> replacements = new ArrayList<>();
        Gaps gaps = new Gaps(layout);
        IHiddenRegion gap = root.getPreviousHiddenRegion();
        while (gap != null) {
            replace(access, gap, gaps.text(gap), request.getRegions(), replacements);
            ISemanticRegion token = gap.getNextSemanticRegion();
            if (token != null) {
                replace(access, token, Tokens.canonical(token), request.getRegions(), replacements);
            }
            gap = token == null ? null : token.getNextHiddenRegion();
        }
        return replacements;
    }

    private static void replace(ITextRegionAccess access, ITextSegment segment, String text, Collection<ITextRegion> regions,
            List<ITextReplacement> replacements) {
        if (!segment.getText().equals(text) && wanted(segment, regions)) {
            replacements.add(access.getRewriter().createReplacement(segment.getOffset(), segment.getLength(), text));
        }
    }

    /** Without a selection everything is wanted. */
    private static boolean wanted(ITextSegment segment, Collection<ITextRegion> regions) {
        if (regions.isEmpty()) {
            return true;
        }
        return regions.stream()
                .anyMatch(region -> segment.getOffset() <= region.getOffset() + region.getLength()
                        && segment.getOffset() + segment.getLength() >= region.getOffset());
    }
}
