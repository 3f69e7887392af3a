package org.girandole.lang;

import com.google.inject.Injector;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.eclipse.emf.common.util.URI;
import org.eclipse.xtext.formatting2.FormatterRequest;
import org.eclipse.xtext.formatting2.IFormatter2;
import org.eclipse.xtext.formatting2.regionaccess.ITextRegionAccess;
import org.eclipse.xtext.formatting2.regionaccess.TextRegionAccessBuilder;
import org.eclipse.xtext.resource.XtextResource;
import org.eclipse.xtext.resource.XtextResourceSet;

/** Gives scripts their one form. */
public final class ScriptFormat {
    private final Injector injector;

    public ScriptFormat() {
        this(new ShowStandaloneSetup().createInjectorAndDoEMFRegistration());
    }

    /** For programs that have an injector of the language already. */
    public ScriptFormat(Injector injector) {
        this.injector = injector;
    }

    /** The script in its one form; empty when it cannot be read, so that nothing of it should be moved. */
    public Optional<String> format(String script) {
        XtextResource resource = (XtextResource) injector.getInstance(XtextResourceSet.class)
                .createResource(URI.createURI("format.show"));
        try {
            resource.load(new ByteArrayInputStream(script.getBytes(StandardCharsets.UTF_8)), null);
        } catch (IOException e) {
            throw new IllegalStateException("text in memory can always be read", e);
        }
        if (resource.getParseResult().hasSyntaxErrors()) {
            return Optional.empty();
        }
        ITextRegionAccess access = injector.getInstance(TextRegionAccessBuilder.class).forNodeModel(resource).create();
        FormatterRequest request = injector.getInstance(FormatterRequest.class).setTextRegionAccess(access);
        return Optional.of(access.getRewriter().renderToString(injector.getInstance(IFormatter2.class).format(request)));
    }
}
