package org.girandole.studio.views.timeline;

import org.girandole.studio.views.Shows;
import org.girandole.studio.views.draw.Sketch;
import org.girandole.studio.views.stage.Stage;

/** The small show in a timeline of an ordinary size. */
record OpenTimeline(Stage stage, TimelineState state) {
    static OpenTimeline small() {
        Stage stage = new Stage();
        stage.show(Shows.small());
        TimelineState state = new TimelineState(stage);
        stage.listen(state::changed);
        state.arrange(Frame.of(new Sketch(1), 1200, 600, state.score().lanes().size()));
        return new OpenTimeline(stage, state);
    }
}
