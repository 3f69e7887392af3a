package org.girandole.physics.fallout;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;

import org.girandole.physics.PhysicsInputException;
import org.girandole.physics.Require;
import org.girandole.physics.flight.Air;
import org.girandole.physics.flight.Wind;
import org.girandole.physics.geometry.Point2;
import org.girandole.physics.geometry.Shape;

/**
 * Flies many samples of each effect and says where they come down. The answer depends on the seed, the number of
 * samples, and each spec alone; not on the other specs, on their order, or on the number of threads.
 */
public final class Fallout {
    /** The shares drawn where nothing else is asked. */
    public static final List<Double> USUAL_SHARES = List.of(0.5, 0.9, 0.99);
    private static final int FEWEST_SAMPLES = 20;

    private final AirColumn column;
    private final long seed;
    private final int samples;
    private final double[] shares;
    private final List<Shape> watched;

    /**
     * @param seed where the random numbers begin
     * @param samples flights of each spec, 20 or more
     * @param shares the shares whose areas are wanted, rising, each above 0 and at most 1
     * @param watched shapes for which the share of samples inside is counted
     */
    public Fallout(Air air, Wind wind, long seed, int samples, List<Double> shares, List<Shape> watched) {
        if (samples < FEWEST_SAMPLES) {
            throw new PhysicsInputException("fallout from " + samples + " samples", "20 or more", "ask for more samples");
        }
        this.shares = shares.stream().mapToDouble(Double::doubleValue).toArray();
        double before = 0;
        for (double share : this.shares) {
            if (!(share > before && share <= 1)) {
                throw new PhysicsInputException("the shares " + shares, "rising shares above 0, at most 1",
                        "put the shares in order");
            }
            before = share;
        }
        this.column = new AirColumn(air, wind);
        this.seed = seed;
        this.samples = samples;
        this.watched = List.copyOf(watched);
    }

    /**
     * Flies all specs.
     *
     * @param threads how many threads may share the work, 1 or more
     * @return one result for each spec, in their order
     */
    public List<FalloutResult> run(List<FalloutSpec> specs, int threads) {
        Require.between(threads, 1, 1024, "number of threads", "");
        FalloutResult[] results = new FalloutResult[specs.size()];
        List<List<Integer>> alike = alike(specs);
        AtomicInteger next = new AtomicInteger();
        Runnable worker = () -> {
            SampleFlights flights = new SampleFlights(column, samples);
            FootprintBuilder footprints = new FootprintBuilder(shares, watched, samples);
            for (int i = next.getAndIncrement(); i < alike.size(); i = next.getAndIncrement()) {
                flights.fly(specs.get(alike.get(i).get(0)).atOrigin(), seed);
                for (int each : alike.get(i)) {
                    results[each] = landed(specs.get(each), flights, footprints);
                }
            }
        };
        int busy = Math.min(threads, alike.size());
        if (busy > 1) {
            runOn(busy, worker);
        } else {
            worker.run();
        }
        return List.copyOf(Arrays.asList(results));
    }

    /** The places themselves where the samples of one spec come down; the same ones that {@link #run} counts. */
    public Landings landings(FalloutSpec spec) {
        SampleFlights flights = new SampleFlights(column, samples);
        flights.fly(spec.atOrigin(), seed);
        Point2 from = spec.launch().muzzle().ground();
        return new Landings(places(flights.unburstX, flights.unburstY, from), spec.burst().map(burst -> places(flights.debrisX, flights.debrisY, from)));
    }

    private static List<Point2> places(double[] fromOriginX, double[] fromOriginY, Point2 from) {
        List<Point2> places = new ArrayList<>();
        for (int i = 0; i < fromOriginX.length; i++) {
            places.add(new Point2(fromOriginX[i] + from.x(), fromOriginY[i] + from.y()));
        }
        return places;
    }

    /** Indexes of specs that differ in nothing but the place they are fired from: their flights are flown once. */
    private static List<List<Integer>> alike(List<FalloutSpec> specs) {
        Map<FalloutSpec, List<Integer>> alike = new LinkedHashMap<>();
        for (int i = 0; i < specs.size(); i++) {
            alike.computeIfAbsent(specs.get(i).atOrigin(), k -> new ArrayList<>()).add(i);
        }
        return List.copyOf(alike.values());
    }

    private FalloutResult landed(FalloutSpec spec, SampleFlights flights, FootprintBuilder footprints) {
        Point2 from = spec.launch().muzzle().ground();
        Footprint unburst = footprints.build(flights.unburstX, flights.unburstY, from);
        Optional<Footprint> debris = spec.burst()
                .map(burst -> footprints.build(flights.debrisX, flights.debrisY, from));
        return new FalloutResult(spec, unburst, debris);
    }

    private static void runOn(int threads, Runnable worker) {
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            List<Future<?>> running = new ArrayList<>();
            for (int i = 0; i < threads; i++) {
                running.add(pool.submit(worker));
            }
            for (Future<?> each : running) {
                each.get();
            }
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("fallout was interrupted", interrupted);
        } catch (ExecutionException failed) {
            if (failed.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            throw new IllegalStateException(failed.getCause());
        } finally {
            pool.shutdownNow();
        }
    }
}
