package org.girandole.studio.editor;

import org.eclipse.jface.text.source.DefaultCharacterPairMatcher;

/** Shows the other one of a pair of brackets. */
public final class Brackets extends DefaultCharacterPairMatcher {
    /** For the extension point. */
    public Brackets() {
        super(new char[] {'{', '}', '(', ')'});
    }
}
