package org.girandole.benchmarks.physics;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

import org.girandole.physics.fallout.Debris;
import org.girandole.physics.fallout.Fallout;
import org.girandole.physics.fallout.FalloutResult;
import org.girandole.physics.fallout.FalloutSpec;
import org.girandole.physics.fallout.Scatter;
import org.girandole.physics.flight.Air;
import org.girandole.physics.flight.Body;
import org.girandole.physics.flight.Burst;
import org.girandole.physics.flight.Estimates;
import org.girandole.physics.flight.FlightModel;
import org.girandole.physics.flight.Launch;
import org.girandole.physics.flight.MuzzleFit;
import org.girandole.physics.flight.PowerLawWind;
import org.girandole.physics.flight.StandardAir;
import org.girandole.physics.flight.Wind;
import org.girandole.physics.geometry.Point2;
import org.girandole.physics.geometry.Point3;

/**
 * Measures the fallout of a show in which all 10,000 cues differ in effect, place or tilt, 1,000 samples each, and
 * compares the flights with a plain fixed-step Runge-Kutta at equal accuracy, in the same run. The show is invented.
 * The machine should do nothing else; processor time is printed beside the clock's so that a reader can tell.
 * Arguments: number of cues, number of threads; 10000 and 2 if left out.
 */
public final class FalloutBenchmark {
    private static final int SAMPLES = 1000;
    private static final int ROUNDS = 3;
    private static final double[] CALIBRES_MM = {50, 65, 75, 100, 125, 150, 200, 250, 300};
    private static final int POSITIONS = 20;
    private static final int PLAIN_FLIGHTS = 20_000;
    private static final int MODEL_FLIGHTS = 500;
    private static final double SHORTEST_STEP_S = 0.001;

    private final Air air = new StandardAir(100, 18);
    private final Wind wind = new PowerLawWind(240, 6, 10, PowerLawWind.OPEN_GROUND);

    private FalloutBenchmark() {
    }

    public static void main(String[] args) {
        int cues = args.length > 0 ? Integer.parseInt(args[0]) : 10_000;
        int threads = args.length > 1 ? Integer.parseInt(args[1]) : 2;
        new FalloutBenchmark().run(cues, threads);
    }

    private void run(int cues, int threads) {
        List<FalloutSpec> show = show(cues, Scatter.USUAL);
        Fallout fallout = new Fallout(air, wind, 1, SAMPLES, Fallout.USUAL_SHARES, List.of());
        print("%d cues, %d samples each, %d threads, areas of 50, 90 and 99 %% for unburst shells and for debris", cues,
                SAMPLES, threads);
        for (int round = 1; round <= ROUNDS; round++) {
            double load = load();
            long cpu = processCpuNs();
            long start = System.nanoTime();
            fallout.run(show, threads);
            double seconds = (System.nanoTime() - start) / 1e9;
            double processor = (processCpuNs() - cpu) / 1e9;
            // What other work took from the clock shows in the share of the cores that was had; a load above 0 before says that there was some.
            print("  round %d: %.2f s by the clock, %.2f s of processor, %.0f %% of %d cores had; load of the machine %.2f before, %.2f after;"
                    + " %.0f flights/s", round, seconds, processor, 100 * processor / seconds / threads, threads, load, load(),
                    (double) cues * SAMPLES / seconds);
        }
        compare(fallout);
    }

    /** Every cue another combination of calibre, place and tilt. */
    private List<FalloutSpec> show(int cues, Scatter scatter) {
        double[] speeds = new double[CALIBRES_MM.length];
        for (int i = 0; i < speeds.length; i++) {
            speeds[i] = MuzzleFit.fromRiseAndApex(Body.estimated(CALIBRES_MM[i]), riseUs(i),
                    Estimates.apexM(CALIBRES_MM[i]).value(), air).speedMps();
        }
        List<FalloutSpec> specs = new ArrayList<>();
        for (int cue = 0; cue < cues; cue++) {
            int size = cue % CALIBRES_MM.length;
            int position = cue / CALIBRES_MM.length % POSITIONS;
            int lean = cue / CALIBRES_MM.length / POSITIONS;
            specs.add(new FalloutSpec("cue " + cue, Body.estimated(CALIBRES_MM[size]),
                    new Launch(new Point3(position * 15, 0, 0), speeds[size], lean % 8 * 2.5, lean * 47 % 360),
                    Optional.of(new Burst.After(riseUs(size))),
                    Optional.of(Debris.usual(Estimates.spreadM(CALIBRES_MM[size]).value())), scatter));
        }
        return specs;
    }

    private static long riseUs(int size) {
        return Math.round(Estimates.riseUs(CALIBRES_MM[size]).value());
    }

    private void compare(Fallout fallout) {
        List<FalloutSpec> nominal = show(CALIBRES_MM.length * POSITIONS * 8, Scatter.NONE);
        FlightModel model = new FlightModel(air, wind);
        List<Point2> truth = new ArrayList<>();
        for (FalloutSpec spec : nominal) {
            truth.add(model.unburst(spec.body(), spec.launch()).place().ground());
        }
        double ours = 0;
        List<FalloutResult> results = fallout.run(nominal, 1);
        for (int i = 0; i < nominal.size(); i++) {
            ours = Math.max(ours, results.get(i).unburst().mean().distanceM(truth.get(i)));
        }
        print("One thread, by its processor time; landing places against the Hipparchus integrator at 1e-10:");
        List<FalloutSpec> scattered = show(CALIBRES_MM.length * POSITIONS, Scatter.USUAL);
        fallout.run(scattered, 1);
        double seconds = seconds(() -> fallout.run(scattered, 1));
        double rate = (double) scattered.size() * SAMPLES / seconds;
        print("  fallout, with draws, debris and areas: off by %.3f m at most, %.0f flights/s", ours, rate);
        plain(nominal, truth, ours, rate);
        model(model, nominal);
    }

    /** Halves the step until the error is no greater than ours. */
    private void plain(List<FalloutSpec> nominal, List<Point2> truth, double ours, double rate) {
        double step = 1.6;
        double error = Double.POSITIVE_INFINITY;
        while (error > ours && step > SHORTEST_STEP_S) {
            step /= 2;
            error = plainError(nominal, truth, step);
        }
        PlainRungeKutta plain = new PlainRungeKutta(air, wind, step);
        flyPlain(plain, nominal);
        double seconds = seconds(() -> flyPlain(plain, nominal));
        double plainRate = PLAIN_FLIGHTS / seconds;
        print("  plain Runge-Kutta 4, flights alone, step %.4f s: off by %.3f m at most, %.0f flights/s", step, error, plainRate);
        print("  ratio %.1f", rate / plainRate);
    }

    private double plainError(List<FalloutSpec> nominal, List<Point2> truth, double step) {
        PlainRungeKutta plain = new PlainRungeKutta(air, wind, step);
        double error = 0;
        for (int i = 0; i < nominal.size(); i++) {
            double[] ground = plain.ground(nominal.get(i).body(), nominal.get(i).launch());
            error = Math.max(error, truth.get(i).distanceM(new Point2(ground[0], ground[1])));
        }
        return error;
    }

    private static void flyPlain(PlainRungeKutta plain, List<FalloutSpec> nominal) {
        for (int i = 0; i < PLAIN_FLIGHTS; i++) {
            FalloutSpec spec = nominal.get(i % nominal.size());
            plain.ground(spec.body(), spec.launch());
        }
    }

    private static void model(FlightModel model, List<FalloutSpec> nominal) {
        double seconds = seconds(() -> {
            for (int i = 0; i < MODEL_FLIGHTS; i++) {
                FalloutSpec spec = nominal.get(i % nominal.size());
                model.unburst(spec.body(), spec.launch());
            }
        });
        print("  Hipparchus Dormand-Prince 8(5,3) at 1e-10, flights alone: %.0f flights/s", MODEL_FLIGHTS / seconds);
    }

    /** Processor time of this thread, which other processes do not lengthen. */
    private static double seconds(Runnable work) {
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        long start = threads.getCurrentThreadCpuTime();
        work.run();
        return (threads.getCurrentThreadCpuTime() - start) / 1e9;
    }

    /** Mean number of processes that ran or waited in the last minute; negative where the system does not say. */
    private static double load() {
        return ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage();
    }

    private static long processCpuNs() {
        return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean()).getProcessCpuTime();
    }

    private static void print(String format, Object... values) {
        System.out.println(String.format(Locale.ROOT, format, values));
    }
}
