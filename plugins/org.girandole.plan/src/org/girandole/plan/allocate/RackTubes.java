package org.girandole.plan.allocate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.girandole.plan.script.Rack;

/** The tubes of one rack while they are given away. Tubes are counted from 1, as on the rack. */
final class RackTubes {
    private final Rack rack;
    private final double[] calibreM;
    private final int[] run;
    private final Request[] load;

    RackTubes(Rack rack) {
        this.rack = rack;
        List<Double> calibres = new ArrayList<>();
        List<Integer> runs = new ArrayList<>();
        for (int i = 0; i < rack.rows().size(); i++) {
            for (int k = 0; k < rack.rows().get(i).count(); k++) {
                calibres.add(rack.rows().get(i).calibreM());
                runs.add(i);
            }
        }
        calibreM = calibres.stream().mapToDouble(Double::doubleValue).toArray();
        run = runs.stream().mapToInt(Integer::intValue).toArray();
        load = new Request[calibreM.length];
    }

    private RackTubes(RackTubes other) {
        rack = other.rack;
        calibreM = other.calibreM;
        run = other.run;
        load = other.load.clone();
    }

    RackTubes copy() {
        return new RackTubes(this);
    }

    Rack rack() {
        return rack;
    }

    int tubes() {
        return calibreM.length;
    }

    /** Which run of equal tubes a tube belongs to, from 0. */
    int runOf(int tube) {
        return run[tube - 1];
    }

    boolean exists(int tube) {
        return tube >= 1 && tube <= calibreM.length;
    }

    boolean isFree(int tube) {
        return load[tube - 1] == null;
    }

    Request loadOf(int tube) {
        return load[tube - 1];
    }

    /** Whether the piece goes into this tube by calibre and tilt, free or not. */
    boolean suits(Request request, int tube) {
        return exists(tube) && request.calibreM().filter(calibre -> Fit.calibre(calibre, calibreM[tube - 1])).isPresent()
                && Fit.tilt(rack, tube, request.aim());
    }

    /** Whether all pieces of the request go into free tubes from {@code first} on. */
    boolean fits(Request request, int first) {
        for (int tube = first; tube < first + request.pieces(); tube++) {
            if (!suits(request, tube) || !isFree(tube)) {
                return false;
            }
        }
        return true;
    }

    /** Loads a request from {@code first} on; what lies there already stays, and tubes that do not exist are passed over. */
    void put(Request request, int first) {
        for (int tube = first; tube < first + request.pieces(); tube++) {
            if (exists(tube) && isFree(tube)) {
                load[tube - 1] = request;
            }
        }
    }

    void remove(Request request) {
        for (int i = 0; i < load.length; i++) {
            if (load[i] == request) {
                load[i] = null;
            }
        }
    }

    boolean isEmpty() {
        return Arrays.stream(load).allMatch(request -> request == null);
    }

    boolean hasChain() {
        return Arrays.stream(load).anyMatch(request -> request != null && request.pieces() > 1);
    }
}
