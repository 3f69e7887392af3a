package org.girandole.protocol;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.girandole.protocol.RehearsalView.Ending;
import org.girandole.protocol.RehearsalView.Stretch;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A rehearsed night over the wire, held against arithmetic. */
class RehearsalRequestTest {
    private static final long S = 1_000_000;
    private static final String REHEARSALS = """
            rehearse "Slow and released" of Tune {
              timecode lost from 0:02 to 0:14
              clock slow by 1000 ppm
              released from 0:07 to 0:08
            }
            rehearse "Backwards" of Tune { timecode lost from 0:14 to 0:02 }
            """;

    @TempDir
    Path folder;
    private SmallShow show;

    @BeforeEach
    void open() throws Exception {
        show = new SmallShow(folder, REHEARSALS);
    }

    @AfterEach
    void close() throws Exception {
        show.close();
    }

    private RehearsalView ask(String name) throws Exception {
        return Session.get(show.server().rehearsal(new RehearsalParams(show.uri(), name)));
    }

    @Test
    void saysWhatBecomesOfEachCue() throws Exception {
        RehearsalView night = ask("Slow and released");
        assertThat(night.nothing()).isNull();
        assertThat(night.track()).isEqualTo("Tune");
        assertThat(night.clock()).contains("slow").contains("1000 ppm");
        assertThat(night.lost()).containsExactly(new Stretch(2 * S, 14 * S));
        assertThat(night.released()).containsExactly(new Stretch(7 * S, 8 * S));
        // Seen at 10 s with a rise of 2.4 s: fired at about 7.6 s, while the control is released.
        Ending peony = night.cues().get(0);
        assertThat(peony.end()).isEqualTo("suppressed");
        assertThat(peony.lateUs()).isNull();
        // The mine comes 10 s after the code was lost: a clock that is slow by 1000 ppm is then 10 ms behind.
        Ending mine = night.cues().get(1);
        assertThat(mine.end()).isEqualTo("fired");
        assertThat(mine.lateUs()).isBetween(9_500L, 10_500L);
        assertThat(night.states()).anySatisfy(said -> {
            assertThat(said.state()).isEqualTo("holdover");
            assertThat(said.fromUs()).isBetween(2 * S, 3 * S);
            assertThat(said.toUs()).isBetween(14 * S, 15 * S);
        });
        for (int i = 1; i < night.states().size(); i++) {
            assertThat(night.states().get(i).fromUs()).as("one after the other").isEqualTo(night.states().get(i - 1).toUs());
        }
    }

    @Test
    void saysWhichThereAreAndWhatIsImpossible() throws Exception {
        RehearsalView none = ask(null);
        assertThat(none.choices()).extracting(RehearsalView.Choice::name).containsExactly("Slow and released", "Backwards");
        assertThat(none.nothing()).isEqualTo("No rehearsal is chosen.");
        assertThat(ask("Nobody").nothing()).contains("'Nobody'");
        assertThat(ask("Backwards").nothing()).contains("until before it begins").contains("write the earlier moment first");
    }
}
