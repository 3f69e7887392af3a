package org.girandole.benchmarks.views;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.function.IntConsumer;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import org.girandole.protocol.CueView;
import org.girandole.protocol.CueView.Spot;
import org.girandole.protocol.LaneView;
import org.girandole.protocol.PlanView;
import org.girandole.protocol.SiteView;
import org.girandole.protocol.SourcePlace;
import org.girandole.protocol.TrackView;
import org.girandole.studio.views.stage.Stage;
import org.girandole.studio.views.stage.Transport;
import org.girandole.studio.views.swt.DrawnCanvas;
import org.girandole.studio.views.swt.SkyCanvas;
import org.girandole.studio.views.swt.TimelineCanvas;

/**
 * Draws an invented soundtrack of 10,000 cues on an image, every frame anew while it scrolls, and writes the processor time of the frames as a
 * table. An image is drawn by the same code and the same library as the screen; bringing it to the screen is not part of the figure.
 */
public final class FrameBenchmark {
    private static final int CUES = 10_000;
    private static final int POSITIONS = 40;
    private static final long LENGTH_US = 600_000_000;
    private static final int WIDTH = 1920;
    private static final int HEIGHT = 1080;
    private static final int FRAMES = 300;
    private static final int WARM = 60;
    private static final double NS_PER_MS = 1e6;
    /** Time of the processor: whatever else the machine does while this runs is not counted. All drawing is done on the thread that asks for it. */
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();
    private static final String[] KINDS = {"shell", "shell", "shell", "salute", "mine", "comet", "cake", "fountain"};
    private static final String[] COLOURS = {"red", "green", "blue", "gold", "silver", "violet"};

    private FrameBenchmark() {
    }

    /** Expects no arguments. */
    public static void main(String[] args) {
        Display display = Display.getDefault();
        Shell shell = new Shell(display);
        Stage stage = new Stage();
        stage.show(plan());
        TimelineCanvas timeline = new TimelineCanvas(shell, stage, new Still(), place -> { }, piece -> { });
        SkyCanvas sky = new SkyCanvas(shell, stage, new Still());
        sky.site(site());
        timeline.picture(WIDTH, HEIGHT).dispose();
        System.out.println("| what | median (ms) | 95 of 100 within (ms) | worst (ms) | frames a second at 95 of 100 |");
        System.out.println("| --- | ---: | ---: | ---: | ---: |");
        measure("timeline, all 10 minutes in view", timeline, frame -> timeline.state().scrollLanes(frame % 2 == 0 ? 40 : -40));
        for (int seconds : new int[] {120, 30, 5}) {
            zoom(timeline, seconds);
            measure("timeline, " + seconds + " s in view, scrolling", timeline, frame -> timeline.state().scroll(frame % 200 < 100 ? 40 : -40));
        }
        measure("sky, playing", sky, frame -> stage.playhead(60_000_000L + frame * 33_000L));
        shell.dispose();
        display.dispose();
    }

    private static void zoom(TimelineCanvas timeline, int seconds) {
        timeline.state().fit();
        timeline.state().zoom(seconds * 1e6 / LENGTH_US, timeline.state().frame().timeWidth() / 2);
    }

    private static void measure(String what, DrawnCanvas canvas, IntConsumer step) {
        Image image = new Image(canvas.getDisplay(), WIDTH, HEIGHT);
        long[] took = new long[FRAMES];
        for (int frame = -WARM; frame < FRAMES; frame++) {
            step.accept(frame + WARM);
            long start = THREADS.getCurrentThreadCpuTime();
            GC gc = new GC(image);
            canvas.drawOn(gc, WIDTH, HEIGHT);
            gc.dispose();
            if (frame >= 0) {
                took[frame] = THREADS.getCurrentThreadCpuTime() - start;
            }
        }
        image.dispose();
        Arrays.sort(took);
        double p95 = took[FRAMES * 95 / 100] / NS_PER_MS;
        System.out.printf(Locale.ROOT, "| %s | %.1f | %.1f | %.1f | %.0f |%n", what, took[FRAMES / 2] / NS_PER_MS, p95, took[FRAMES - 1] / NS_PER_MS, 1000 / p95);
    }

    private static PlanView plan() {
        SplittableRandom random = new SplittableRandom(20270619);
        List<LaneView> lanes = new ArrayList<>();
        for (int i = 0; i < POSITIONS; i++) {
            lanes.add(new LaneView("P" + i, true, CUES / POSITIONS));
        }
        long[] fires = random.longs(CUES, 0, LENGTH_US - 10_000_000).sorted().toArray();
        List<CueView> cues = new ArrayList<>();
        for (int i = 0; i < CUES; i++) {
            String kind = KINDS[random.nextInt(KINDS.length)];
            boolean shell = kind.equals("shell") || kind.equals("salute");
            int position = random.nextInt(POSITIONS);
            Spot from = new Spot(position * 20 - POSITIONS * 10, 0, 0);
            long burst = fires[i] + (shell ? 2_000_000 + random.nextLong(1_500_000) : 0);
            cues.add(new CueView(i + 1, "k" + i, null, 0, "Whole", "P" + position, "E" + i % 60, "Effect " + i % 60, kind, COLOURS[i % COLOURS.length], 1, burst,
                    burst, fires[i], false, false, 1_600_000L, 80_000, "10:00:00:00", "M1", 1, "R1", 1, 0, 0, from,
                    shell ? new Spot(from.x(), 0, 100 + random.nextInt(60)) : null, null, shell ? 70.0 : null, null, null, List.of(),
                    new SourcePlace("file:///big.show", "big.show", i + 100, 1, 10)));
        }
        List<TrackView.Bar> bars = new ArrayList<>();
        for (long us = 0; us < LENGTH_US; us += 1_920_000) {
            bars.add(new TrackView.Bar(bars.size() + 1, List.of(us, us + 480_000, us + 960_000, us + 1_440_000)));
        }
        TrackView track = new TrackView("S", "Big", 0, LENGTH_US, 60_000_000L, "25", "10:00:00:00", null, "", null, bars, List.of(new TrackView.Mark("Start", 4_000_000)),
                List.of(), List.of(), new SourcePlace("file:///big.show", "big.show", 1, 1, 1));
        return new PlanView("file:///big.show", null, "Big", "Big show", "ABCD-1234", true, 0, 0, 0, List.of(), List.of(track), lanes, cues, List.of());
    }

    private static SiteView site() {
        List<SiteView.Position> positions = new ArrayList<>();
        for (int i = 0; i < POSITIONS; i++) {
            positions.add(new SiteView.Position("P" + i, new Spot(i * 20 - POSITIONS * 10, 0, 0), 1, "clean", new SourcePlace("", "", 1, 1, 1)));
        }
        return new SiteView("", null, "Field", positions, List.of(), null, List.of(), null, null, 0, "", List.of(), List.of(), List.of(), List.of());
    }

    /** Plays nothing. */
    private static final class Still implements Transport {
        @Override
        public void toggle() {
            throw new UnsupportedOperationException("nothing is played here");
        }

        @Override
        public void seek(long us) {
            throw new UnsupportedOperationException("nothing is played here");
        }
    }
}
