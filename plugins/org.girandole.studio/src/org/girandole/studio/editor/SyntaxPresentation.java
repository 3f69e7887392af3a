package org.girandole.studio.editor;

import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.TextAttribute;
import org.eclipse.jface.text.presentation.PresentationReconciler;
import org.eclipse.jface.text.rules.DefaultDamagerRepairer;
import org.eclipse.jface.text.rules.EndOfLineRule;
import org.eclipse.jface.text.rules.ICharacterScanner;
import org.eclipse.jface.text.rules.IRule;
import org.eclipse.jface.text.rules.IToken;
import org.eclipse.jface.text.rules.MultiLineRule;
import org.eclipse.jface.text.rules.RuleBasedScanner;
import org.eclipse.jface.text.rules.SingleLineRule;
import org.eclipse.jface.text.rules.Token;
import org.eclipse.jface.util.IPropertyChangeListener;
import org.eclipse.ui.PlatformUI;

/** Comments, strings and numbers, which are there at once; the rest comes from {@link SemanticColours}. */
public final class SyntaxPresentation extends PresentationReconciler {
    private final IPropertyChangeListener themes = event -> rules();
    private final RuleBasedScanner scanner = new RuleBasedScanner();
    private ITextViewer viewer;

    /** For the extension point. */
    public SyntaxPresentation() {
        rules();
        DefaultDamagerRepairer repairer = new DefaultDamagerRepairer(scanner);
        setDamager(repairer, IDocument.DEFAULT_CONTENT_TYPE);
        setRepairer(repairer, IDocument.DEFAULT_CONTENT_TYPE);
    }

    @Override
    public void install(ITextViewer installed) {
        super.install(installed);
        viewer = installed;
        JFaceResources.getColorRegistry().addListener(themes);
        PlatformUI.getWorkbench().getThemeManager().addPropertyChangeListener(themes);
    }

    @Override
    public void uninstall() {
        JFaceResources.getColorRegistry().removeListener(themes);
        PlatformUI.getWorkbench().getThemeManager().removePropertyChangeListener(themes);
        viewer = null;
        super.uninstall();
    }

    private void rules() {
        scanner.setRules(new MultiLineRule("/*", "*/", token(Colours.COMMENT), (char) 0, true), new EndOfLineRule("//", token(Colours.COMMENT)),
                new SingleLineRule("\"", "\"", token(Colours.STRING), '\\', true), new NumberRule(token(Colours.NUMBER)), new NameRule());
        if (viewer != null && viewer.getTextWidget() != null && !viewer.getTextWidget().isDisposed()) {
            viewer.invalidateTextPresentation();
        }
    }

    private static IToken token(String colour) {
        return new Token(new TextAttribute(Colours.get(colour), null, Colours.fontStyle(colour)));
    }

    /** Digits, with the points and colons of decimals and times. */
    private record NumberRule(IToken token) implements IRule {
        @Override
        public IToken evaluate(ICharacterScanner text) {
            int c = text.read();
            if (!Character.isDigit(c)) {
                text.unread();
                return Token.UNDEFINED;
            }
            while (Character.isDigit(c) || c == ':' || c == '.') {
                int next = text.read();
                if (c == '.' && next == '.') {
                    // The dots of a row of places.
                    text.unread();
                    break;
                }
                c = next;
            }
            text.unread();
            return token;
        }
    }

    /** A name is left alone as a whole, also when digits are in it. */
    private static final class NameRule implements IRule {
        @Override
        public IToken evaluate(ICharacterScanner text) {
            int c = text.read();
            if (!Character.isLetter(c) && c != '_') {
                text.unread();
                return Token.UNDEFINED;
            }
            while (Character.isLetterOrDigit(c) || c == '_') {
                c = text.read();
            }
            text.unread();
            return Token.WHITESPACE;
        }
    }
}
