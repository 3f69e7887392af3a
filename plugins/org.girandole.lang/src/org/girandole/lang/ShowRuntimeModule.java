package org.girandole.lang;

import com.google.inject.Binder;
import org.eclipse.xtext.conversion.IValueConverterService;
import org.eclipse.xtext.linking.ILinkingDiagnosticMessageProvider;
import org.eclipse.xtext.parser.IEncodingProvider;
import org.eclipse.xtext.service.DispatchingProvider;
import org.girandole.lang.parsing.ShowValues;
import org.girandole.lang.parsing.Utf8;
import org.girandole.lang.scoping.QuietLinking;

/** Components of the language at run time. */
public class ShowRuntimeModule extends AbstractShowRuntimeModule {
    @Override
    public Class<? extends IValueConverterService> bindIValueConverterService() {
        return ShowValues.class;
    }

    public Class<? extends ILinkingDiagnosticMessageProvider.Extended> bindILinkingDiagnosticMessageProvider() {
        return QuietLinking.class;
    }

    @Override
    public void configureRuntimeEncodingProvider(Binder binder) {
        binder.bind(IEncodingProvider.class).annotatedWith(DispatchingProvider.Runtime.class).to(Utf8.class);
    }
}
