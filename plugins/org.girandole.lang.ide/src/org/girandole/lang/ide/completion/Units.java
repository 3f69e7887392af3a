package org.girandole.lang.ide.completion;

import java.util.List;
import java.util.Map;
import org.eclipse.lsp4j.CompletionItemKind;
import org.girandole.lang.compile.Dimension;

/** Units behind numbers. */
final class Units {
    static final List<String> TIME = List.of("beats", "beat", "bars", "bar", "s", "ms", "min", "frames", "frame");
    private static final Map<String, Dimension> DIMENSIONS = Map.ofEntries(Map.entry("calibre", Dimension.LENGTH), Map.entry("rise", Dimension.TIME),
            Map.entry("apex", Dimension.LENGTH), Map.entry("spread", Dimension.LENGTH), Map.entry("lasts", Dimension.TIME),
            Map.entry("charge", Dimension.MASS), Map.entry("mass", Dimension.MASS), Map.entry("length", Dimension.LENGTH),
            Map.entry("gap", Dimension.TIME), Map.entry("resistance", Dimension.RESISTANCE), Map.entry("all-fire", Dimension.CURRENT),
            Map.entry("no-fire", Dimension.CURRENT), Map.entry("gauge", Dimension.GAUGE), Map.entry("area", Dimension.AREA),
            Map.entry("drive", Dimension.VOLTAGE), Map.entry("source", Dimension.RESISTANCE), Map.entry("capacitor", Dimension.CAPACITANCE),
            Map.entry("test", Dimension.CURRENT), Map.entry("spaced", Dimension.LENGTH), Map.entry("tilt", Dimension.ANGLE),
            Map.entry("fan", Dimension.ANGLE), Map.entry("toward", Dimension.ANGLE), Map.entry("air", Dimension.TEMPERATURE),
            Map.entry("elevation", Dimension.LENGTH), Map.entry("from", Dimension.ANGLE), Map.entry("at", Dimension.SPEED),
            Map.entry("gusting", Dimension.SPEED), Map.entry("radius", Dimension.LENGTH), Map.entry("(", Dimension.LENGTH),
            Map.entry(",", Dimension.LENGTH), Map.entry("step", Dimension.TIME), Map.entry("latency", Dimension.TIME),
            Map.entry("copper", Dimension.TEMPERATURE), Map.entry("slack", Dimension.LENGTH), Map.entry("preroll", Dimension.TIME),
            Map.entry("over", Dimension.TIME), Map.entry("every", Dimension.TIME), Map.entry("tubes", Dimension.LENGTH),
            Map.entry("tube", Dimension.LENGTH), Map.entry("long", Dimension.LENGTH), Map.entry("within", Dimension.TIME),
            Map.entry("timecode", Dimension.RATE), Map.entry("wav", Dimension.FREQUENCY), Map.entry("keep", Dimension.LENGTH),
            Map.entry("sector", Dimension.ANGLE));

    private final Caret caret;
    private final Proposals out;

    Units(Here here) {
        this.caret = here.caret();
        this.out = here.out();
    }

    /** The units of the field that the number belongs to. */
    void behindNumber(String block) {
        for (int i = caret.statement().size() - 1; i >= 0; i--) {
            Word word = caret.statement().get(i);
            String key = word.is("fire") && i > 1 ? caret.statement().get(i - 2).text() + "-fire" : word.text();
            Dimension dimension = DIMENSIONS.get(key);
            if (dimension == Dimension.LENGTH && key.equals("length") && block.equals("soundtrack") || key.equals("lead") && block.equals("chain")) {
                dimension = Dimension.TIME;
            } else if (key.equals("within") && block.equals("firing")) {
                dimension = Dimension.DRIFT;
            }
            if (dimension != null) {
                of(dimension);
                return;
            }
        }
    }

    void of(Dimension dimension) {
        dimension.symbols().forEach(unit -> out.word(unit, CompletionItemKind.Unit, dimension.words()));
    }
}
