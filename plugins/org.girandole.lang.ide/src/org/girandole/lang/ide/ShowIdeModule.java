/* Generated from Show.xtext. */
package org.girandole.lang.ide;

import org.eclipse.xtext.ide.server.ILanguageServerExtension;
import org.girandole.lang.ide.show.ShowRequestsExtension;

/**
 * Use this class to register ide components.
 */
public class ShowIdeModule extends AbstractShowIdeModule {
    public Class<? extends ILanguageServerExtension> bindILanguageServerExtension() {
        return ShowRequestsExtension.class;
    }
}
