package org.girandole.lang;

import com.google.inject.Binder;
import com.google.inject.Provider;
import com.google.inject.name.Names;
import org.eclipse.xtext.conversion.IValueConverterService;
import org.eclipse.xtext.linking.ILinkingDiagnosticMessageProvider;
import org.eclipse.xtext.parser.IEncodingProvider;
import org.eclipse.xtext.parser.IParser;
import org.eclipse.xtext.parser.antlr.IPartialParsingHelper;
import org.eclipse.xtext.parser.antlr.ISyntaxErrorMessageProvider;
import org.eclipse.xtext.parser.antlr.Lexer;
import org.eclipse.xtext.parser.antlr.LexerBindings;
import org.eclipse.xtext.parser.antlr.LexerProvider;
import org.eclipse.xtext.service.DispatchingProvider;
import org.eclipse.xtext.validation.IResourceValidator;
import org.girandole.lang.parser.antlr.internal.InternalShowLexer;
import org.girandole.lang.parsing.BlockParsing;
import org.girandole.lang.parsing.DepthLexer;
import org.girandole.lang.parsing.PatientParser;
import org.girandole.lang.parsing.ShowValues;
import org.girandole.lang.parsing.SyntaxMessages;
import org.girandole.lang.parsing.Utf8;
import org.girandole.lang.scoping.QuietLinking;
import org.girandole.lang.validation.ShowResourceValidator;

/** Components of the language at run time. */
public class ShowRuntimeModule extends AbstractShowRuntimeModule {
    @Override
    public Class<? extends IValueConverterService> bindIValueConverterService() {
        return ShowValues.class;
    }

    public Class<? extends ILinkingDiagnosticMessageProvider.Extended> bindILinkingDiagnosticMessageProvider() {
        return QuietLinking.class;
    }

    public Class<? extends ISyntaxErrorMessageProvider> bindISyntaxErrorMessageProvider() {
        return SyntaxMessages.class;
    }

    public Class<? extends IResourceValidator> bindIResourceValidator() {
        return ShowResourceValidator.class;
    }

    @Override
    public Class<? extends IParser> bindIParser() {
        return PatientParser.class;
    }

    @Override
    public Class<? extends IPartialParsingHelper> bindIPartialParserHelper() {
        return BlockParsing.class;
    }

    @Override
    public Class<? extends Lexer> bindLexer() {
        return DepthLexer.class;
    }

    @Override
    public Provider<? extends InternalShowLexer> provideInternalShowLexer() {
        return LexerProvider.create(DepthLexer.class);
    }

    @Override
    public void configureRuntimeLexer(Binder binder) {
        binder.bind(Lexer.class).annotatedWith(Names.named(LexerBindings.RUNTIME)).to(DepthLexer.class);
    }

    @Override
    public void configureRuntimeEncodingProvider(Binder binder) {
        binder.bind(IEncodingProvider.class).annotatedWith(DispatchingProvider.Runtime.class).to(Utf8.class);
    }
}
