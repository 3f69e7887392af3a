package org.girandole.lang.ide.completion;

import java.util.List;
import java.util.Set;
import org.girandole.lang.compile.Dimension;
import org.girandole.lang.scoping.Kind;
import org.girandole.lang.scoping.Kind.Space;

/** What may follow the effect of a cue. */
final class CueOptions {
    private final Here here;
    private final Caret caret;
    private final Proposals out;

    CueOptions(Here here) {
        this.here = here;
        this.caret = here.caret();
        this.out = here.out();
    }

    void propose(CueSlot slot) {
        Word last = caret.last();
        switch (last.text()) {
            case "lot" -> here.names(Space.LOT, Kind.LOT);
            case "from" -> here.keyword(true, "lot", "audience");
            case "toward" -> here.keyword(true, "audience");
            case "away" -> here.keyword(true, "from audience");
            case "pin" -> new Loading(here).pins();
            case "tube" -> new Loading(here).tubes(new Places(here).positions(slot.places()));
            case "/" -> new Loading(here).numbers();
            case "turn", "outward", "inward", "alternating" -> here.keyword(true, "every");
            case "every" -> new Parameters(here).propose();
            default -> {
                if (last.isNumber()) {
                    String key = lastKey();
                    here.keyword(key.equals("every"), Units.TIME.toArray(String[]::new));
                    if (key.equals("fan") || key.equals("tilt") || key.equals("toward")) {
                        new Units(here).of(Dimension.ANGLE);
                    }
                }
                out.snippet("fan", "fan ${1:-20} deg .. ${2:20} deg", "spread out to both sides");
                out.snippet("tilt", "tilt ${1:15} deg", "leaning to the side");
                out.snippet("in turn", "in turn every ${1:1/2 beat}", "one place after the other");
                out.snippet("outward", "outward every ${1:1/2 beat}", "from the middle to the ends");
                out.snippet("inward", "inward every ${1:1/2 beat}", "from the ends to the middle");
                out.snippet("alternating", "alternating every ${1:1/2 beat}", "from side to side");
                out.snippet("note", "note \"${1:what it is for}\"", "a word for the crew");
                here.keyword(true, "heard", "from lot", "pin", "tube");
            }
        }
    }

    private String lastKey() {
        List<Word> words = caret.statement();
        for (int i = words.size() - 1; i >= 0; i--) {
            if (Set.of("every", "fan", "tilt", "toward").contains(words.get(i).text())) {
                return words.get(i).text();
            }
        }
        return "";
    }
}
