package org.girandole.studio.editor;

import java.util.Map;
import org.eclipse.jface.viewers.StyledString;
import org.eclipse.lsp4j.SemanticTokenTypes;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.TextStyle;
import org.eclipse.ui.PlatformUI;

/**
 * Colours of the text. They are colour definitions of the workbench: the user can change them, and a dark theme brings its own. Keywords
 * are bold and comments italic besides, so that colour is never the only sign.
 */
final class Colours {
    private static final String PREFIX = "org.girandole.studio.colour.";
    static final String KEYWORD = PREFIX + "keyword";
    static final String STRING = PREFIX + "string";
    static final String NUMBER = PREFIX + "number";
    static final String COMMENT = PREFIX + "comment";
    /** What stands behind a name to say what it is; the platform's own colour for that is too faint. */
    static final StyledString.Styler DETAIL = new StyledString.Styler() {
        @Override
        public void applyStyles(TextStyle style) {
            style.foreground = get(COMMENT);
        }
    };
    private static final Map<String, String> BY_TOKEN = Map.ofEntries(
            Map.entry(SemanticTokenTypes.Keyword, KEYWORD), Map.entry(SemanticTokenTypes.String, STRING),
            Map.entry(SemanticTokenTypes.Number, NUMBER), Map.entry(SemanticTokenTypes.Comment, COMMENT),
            Map.entry(SemanticTokenTypes.Class, PREFIX + "effect"), Map.entry(SemanticTokenTypes.EnumMember, PREFIX + "place"),
            Map.entry(SemanticTokenTypes.Event, PREFIX + "mark"), Map.entry(SemanticTokenTypes.Function, PREFIX + "figure"),
            Map.entry(SemanticTokenTypes.Parameter, PREFIX + "figure"), Map.entry(SemanticTokenTypes.Struct, PREFIX + "hardware"),
            Map.entry(SemanticTokenTypes.Namespace, PREFIX + "section"), Map.entry(SemanticTokenTypes.Type, PREFIX + "rule"));

    private Colours() {
    }

    /** The style of a token of the protocol; null when it has none. */
    static StyleRange style(String token, int offset, int length) {
        String colour = BY_TOKEN.get(token);
        Color found = colour == null ? null : get(colour);
        if (found == null) {
            return null;
        }
        StyleRange style = new StyleRange(offset, length, found, null);
        style.fontStyle = fontStyle(colour);
        return style;
    }

    static int fontStyle(String colour) {
        return colour.equals(KEYWORD) ? SWT.BOLD : colour.equals(COMMENT) ? SWT.ITALIC : SWT.NORMAL;
    }

    static Color get(String colour) {
        return PlatformUI.getWorkbench().getThemeManager().getCurrentTheme().getColorRegistry().get(colour);
    }
}
