package org.girandole.lang.ide.server;

import com.google.inject.Guice;
import com.google.inject.Injector;
import org.eclipse.xtext.parser.antlr.IReferableElementsUnloader;
import org.eclipse.xtext.resource.XtextResource;
import org.eclipse.xtext.util.Modules2;
import org.girandole.lang.ShowRuntimeModule;
import org.girandole.lang.ShowStandaloneSetup;
import org.girandole.lang.ide.ShowIdeModule;

/** The language as a server uses it: with the board on which the server puts what was found. */
final class ServedShowSetup extends ShowStandaloneSetup {
    private final ShowBoard board;

    ServedShowSetup(ShowBoard board) {
        this.board = board;
    }

    @Override
    public Injector createInjector() {
        return Guice.createInjector(Modules2.mixin(new ShowRuntimeModule(), new ShowIdeModule(),
                binder -> {
            binder.bind(ShowBoard.class).toInstance(board);
            binder.bind(XtextResource.class).to(ServedScript.class);
            // Nothing keeps what was parsed before: scripts that use a changed one are linked again. Giving each lost object an address takes longer
            // than to parse the file.
            binder.bind(IReferableElementsUnloader.class).to(IReferableElementsUnloader.NullUnloader.class);
        }));
    }
}
