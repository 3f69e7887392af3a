package org.girandole.studio.views.draw;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.girandole.studio.views.draw.Pen.Letters;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DrawTest {
    private static final List<String> KINDS = List.of("shell", "salute", "mine", "comet", "candle", "cake", "fountain", "wheel", "flare", "rocket",
            "something else");

    @Test
    void contrastIsThatOfTheGuidelines() {
        // WCAG 2.1: white on black is 21:1; #767676 on white is 4.54:1, the usual example of the lightest grey that passes.
        assertThat(Palette.contrast(0xFFFFFF, 0x000000)).isCloseTo(21, within(0.01));
        assertThat(Palette.contrast(0x767676, 0xFFFFFF)).isCloseTo(4.54, within(0.01));
    }

    /** WCAG 2.1: 1.4.3 asks 4.5:1 of text, 1.4.11 asks 3:1 of signs. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void lettersAndSignsStandOut(boolean dark) {
        Palette palette = Palette.of(dark);
        for (int ground : new int[] {palette.paper(), palette.band()}) {
            for (int text : new int[] {palette.ink(), palette.faint(), palette.accent(), palette.error(), palette.warning(), palette.info(), palette.hold()}) {
                assertThat(Palette.contrast(text, ground)).as("%06X on %06X", text, ground).isGreaterThanOrEqualTo(4.5);
            }
        }
        for (int ground : new int[] {palette.sky(), palette.earth()}) {
            for (int text : new int[] {palette.ink(), palette.faint()}) {
                assertThat(Palette.contrast(text, ground)).as("%06X on %06X", text, ground).isGreaterThanOrEqualTo(4.0);
            }
        }
        Tints.words().keySet().forEach(word -> {
            assertThat(Palette.contrast(Tints.of(word, palette), palette.band())).as(word).isGreaterThanOrEqualTo(3);
            assertThat(Palette.contrast(Tints.of(word, palette), palette.sky())).as(word).isGreaterThanOrEqualTo(3);
        });
    }

    @Test
    void eachKindHasAShapeOfItsOwn() {
        Set<List<String>> shapes = new HashSet<>();
        for (String kind : KINDS) {
            Sketch sketch = new Sketch(1);
            Marks.effect(sketch, kind, 0, 0, 8, 0);
            assertThat(sketch.strokes()).as(kind).isNotEmpty();
            assertThat(shapes.add(sketch.strokes())).as(kind).isTrue();
        }
    }

    @Test
    void severitiesAndAgreementAreToldByShape() {
        Set<List<String>> shapes = new HashSet<>();
        for (String severity : List.of("error", "warning", "info")) {
            for (boolean waived : new boolean[] {true, false}) {
                Sketch sketch = new Sketch(1);
                Marks.finding(sketch, severity, waived, 0, 0, 8, Palette.LIGHT);
                assertThat(shapes.add(sketch.strokes())).as(severity + waived).isTrue();
            }
        }
    }

    @Test
    void theFirstKnownWordOfAColourCounts() {
        assertThat(Tints.of("red", Palette.LIGHT)).isEqualTo(Tints.of("Crimson to gold", Palette.LIGHT));
        assertThat(Tints.of("chartreuse", Palette.LIGHT)).isEqualTo(Palette.LIGHT.ink());
        assertThat(Tints.of(null, Palette.DARK)).isEqualTo(Palette.DARK.ink());
    }

    @Test
    void textIsCutToItsRoom() {
        Sketch sketch = new Sketch(1);
        assertThat(sketch.fitted("abcdefgh", 64, Letters.NORMAL)).isEqualTo("abcdefgh");
        assertThat(sketch.fitted("abcdefgh", 40, Letters.NORMAL)).isEqualTo("abcd\u2026");
        assertThat(sketch.fitted("abcdefgh", 9, Letters.NORMAL)).isEmpty();
    }
}
