package org.girandole.studio.editor;

import org.eclipse.core.expressions.PropertyTester;
import org.eclipse.ui.IEditorInput;
import org.girandole.studio.client.Places;

/** Whether an editor is on a script. */
public final class IsShowTester extends PropertyTester {
    @Override
    public boolean test(Object receiver, String property, Object[] args, Object expected) {
        return receiver instanceof IEditorInput input && Places.uri(input).isPresent();
    }
}
