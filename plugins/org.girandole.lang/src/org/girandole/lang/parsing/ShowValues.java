package org.girandole.lang.parsing;

import com.google.inject.Inject;
import com.google.inject.Singleton;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.eclipse.xtext.EcoreUtil2;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.IGrammarAccess;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.ParserRule;
import org.eclipse.xtext.conversion.IValueConverter;
import org.eclipse.xtext.conversion.ValueConverter;
import org.eclipse.xtext.conversion.ValueConverterException;
import org.eclipse.xtext.conversion.impl.AbstractDeclarativeValueConverterService;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.eclipse.xtext.nodemodel.INode;
import org.girandole.lang.services.ShowGrammarAccess;

/** Between what is written and what is meant: names without their escape sign, texts without their quotes, words with one space. */
@Singleton
public class ShowValues extends AbstractDeclarativeValueConverterService {
    private final Names names;
    private final Texts texts = new Texts();
    private final Phrase phrase = new Phrase();

    @Inject
    public ShowValues(ShowGrammarAccess grammar) {
        this.names = new Names(grammar);
    }

    @Override
    @Inject
    public void setGrammar(IGrammarAccess grammar) {
        super.setGrammar(grammar);
    }

    @ValueConverter(rule = "Name")
    public IValueConverter<String> name() {
        return names;
    }

    @ValueConverter(rule = "TableName")
    public IValueConverter<String> tableName() {
        return names;
    }

    @ValueConverter(rule = "ID")
    public IValueConverter<String> id() {
        return names;
    }

    @ValueConverter(rule = "STRING")
    public IValueConverter<String> text() {
        return texts;
    }

    @ValueConverter(rule = "FieldWords")
    public IValueConverter<String> fieldWords() {
        return phrase;
    }

    @ValueConverter(rule = "FiringSystemKey")
    public IValueConverter<String> firingSystemKey() {
        return phrase;
    }

    @ValueConverter(rule = "SyncKey")
    public IValueConverter<String> syncKey() {
        return phrase;
    }

    @ValueConverter(rule = "SeparationKey")
    public IValueConverter<String> separationKey() {
        return phrase;
    }

    @ValueConverter(rule = "TubeLengthKey")
    public IValueConverter<String> tubeLengthKey() {
        return phrase;
    }

    @ValueConverter(rule = "PinGapKey")
    public IValueConverter<String> pinGapKey() {
        return phrase;
    }

    @ValueConverter(rule = "LeadLimitKey")
    public IValueConverter<String> leadLimitKey() {
        return phrase;
    }

    @ValueConverter(rule = "AtMostKey")
    public IValueConverter<String> atMostKey() {
        return phrase;
    }

    @ValueConverter(rule = "ClockKey")
    public IValueConverter<String> clockKey() {
        return phrase;
    }

    @ValueConverter(rule = "ClockAgeingKey")
    public IValueConverter<String> clockAgeingKey() {
        return phrase;
    }

    @ValueConverter(rule = "ClockJitterKey")
    public IValueConverter<String> clockJitterKey() {
        return phrase;
    }

    @ValueConverter(rule = "LateKey")
    public IValueConverter<String> lateKey() {
        return phrase;
    }

    @ValueConverter(rule = "LockKey")
    public IValueConverter<String> lockKey() {
        return phrase;
    }

    @ValueConverter(rule = "LossKey")
    public IValueConverter<String> lossKey() {
        return phrase;
    }

    @ValueConverter(rule = "TimecodeLostKey")
    public IValueConverter<String> timecodeLostKey() {
        return phrase;
    }

    @ValueConverter(rule = "ClockOffKey")
    public IValueConverter<String> clockOffKey() {
        return phrase;
    }

    @ValueConverter(rule = "ClockSlowKey")
    public IValueConverter<String> clockSlowKey() {
        return phrase;
    }

    @ValueConverter(rule = "ClockFastKey")
    public IValueConverter<String> clockFastKey() {
        return phrase;
    }

    @ValueConverter(rule = "MusicStartsKey")
    public IValueConverter<String> musicStartsKey() {
        return phrase;
    }

    @ValueConverter(rule = "CodeJumpsKey")
    public IValueConverter<String> codeJumpsKey() {
        return phrase;
    }

    @ValueConverter(rule = "BackupKey")
    public IValueConverter<String> backupKey() {
        return phrase;
    }

    @ValueConverter(rule = "ExpectLaterKey")
    public IValueConverter<String> expectLaterKey() {
        return phrase;
    }

    @ValueConverter(rule = "ExpectEarlierKey")
    public IValueConverter<String> expectEarlierKey() {
        return phrase;
    }

    @ValueConverter(rule = "ExpectFiredKey")
    public IValueConverter<String> expectFiredKey() {
        return phrase;
    }

    @ValueConverter(rule = "ExpectSuppressedKey")
    public IValueConverter<String> expectSuppressedKey() {
        return phrase;
    }

    @ValueConverter(rule = "ExpectSkippedKey")
    public IValueConverter<String> expectSkippedKey() {
        return phrase;
    }

    @ValueConverter(rule = "CurrentMarginKey")
    public IValueConverter<String> currentMarginKey() {
        return phrase;
    }

    @ValueConverter(rule = "InTurn")
    public IValueConverter<String> inTurn() {
        return phrase;
    }

    @ValueConverter(rule = "LineEndingKey")
    public IValueConverter<String> lineEndingKey() {
        return phrase;
    }

    @ValueConverter(rule = "TimecodeWavKey")
    public IValueConverter<String> timecodeWavKey() {
        return phrase;
    }

    /** A name that is also a keyword is written with ^ before it. */
    private static final class Names implements IValueConverter<String> {
        private final Set<String> reserved;

        Names(ShowGrammarAccess grammar) {
            reserved = new HashSet<>(GrammarUtil.getAllKeywords(grammar.getGrammar()));
            for (ParserRule soft : List.of(grammar.getSoftWordRule(), grammar.getTableWordRule())) {
                EcoreUtil2.eAllOfType(soft, Keyword.class).forEach(keyword -> reserved.remove(keyword.getValue()));
            }
        }

        @Override
        public String toValue(String text, INode node) {
            return text != null && text.startsWith("^") ? text.substring(1) : text;
        }

        @Override
        public String toString(String name) {
            return reserved.contains(name) ? "^" + name : name;
        }
    }

    /** Text in quotes: \" is a quote, \\ a backslash, \n a line end, \t a tab, and u with four digits any sign. */
    private static final class Texts implements IValueConverter<String> {
        private static final int HEX = 16;
        private static final int HEX_DIGITS = 4;

        @Override
        public String toValue(String written, INode node) {
            if (written == null || written.length() < 2) {
                return "";
            }
            StringBuilder text = new StringBuilder();
            for (int i = 1; i < written.length() - 1; i++) {
                char c = written.charAt(i);
                if (c != '\\') {
                    text.append(c);
                    continue;
                }
                i++;
                switch (written.charAt(i)) {
                    case '"', '\\', '\'' -> text.append(written.charAt(i));
                    case 'n' -> text.append('\n');
                    case 't' -> text.append('\t');
                    case 'r' -> text.append('\r');
                    case 'u' -> {
                        text.append(sign(written, i + 1, node));
                        i += HEX_DIGITS;
                    }
                    default -> throw bad(written.substring(i - 1, i + 1), node);
                }
            }
            return text.toString();
        }

        private static char sign(String written, int from, INode node) {
            try {
                return (char) Integer.parseInt(written.substring(from, from + HEX_DIGITS), HEX);
            } catch (NumberFormatException | StringIndexOutOfBoundsException e) {
                throw bad("\\u", node);
            }
        }

        private static ValueConverterException bad(String sequence, INode node) {
            return new ValueConverterException("'" + sequence + "' means nothing in a text; write \\\\ for a backslash, \\\" for a quote", node,
                    null);
        }

        @Override
        public String toString(String text) {
            StringBuilder written = new StringBuilder("\"");
            for (char c : text.toCharArray()) {
                switch (c) {
                    case '"', '\\' -> written.append('\\').append(c);
                    case '\n' -> written.append("\\n");
                    case '\t' -> written.append("\\t");
                    case '\r' -> written.append("\\r");
                    default -> written.append(c);
                }
            }
            return written.append('"').toString();
        }
    }

    /** Several words, with one space between them whatever stands there in the script, and none beside a hyphen. */
    private static final class Phrase implements IValueConverter<String> {
        @Override
        public String toValue(String text, INode node) {
            if (node == null) {
                return text;
            }
            StringBuilder words = new StringBuilder();
            for (ILeafNode leaf : node.getLeafNodes()) {
                if (!leaf.isHidden()) {
                    words.append(words.isEmpty() ? "" : " ").append(leaf.getText());
                }
            }
            return words.toString().replace(" - ", "-");
        }

        @Override
        public String toString(String words) {
            return words;
        }
    }
}
