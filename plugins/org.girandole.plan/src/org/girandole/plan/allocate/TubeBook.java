package org.girandole.plan.allocate;

import java.util.BitSet;
import java.util.Optional;
import org.girandole.plan.script.Rack;

/** What is in the tubes of one rack while an allocation is made. */
final class TubeBook {
    private final Rack rack;
    private final BitSet taken = new BitSet();
    private boolean singles;
    private boolean chains;

    TubeBook(Rack rack) {
        this.rack = rack;
    }

    Rack rack() {
        return rack;
    }

    /** Whether a load of this kind would bring chain-fused and singly fired pieces together in the rack. */
    boolean wouldMix(boolean chain) {
        return chain ? singles : chains;
    }

    /** The lowest tube from which the whole request fits. */
    Optional<Integer> place(Request request) {
        for (int first = 1; first + request.pieces() - 1 <= rack.tubes(); first++) {
            if (fits(request, first)) {
                return Optional.of(first);
            }
        }
        return Optional.empty();
    }

    /** Whether the request's pieces fit into free tubes from {@code first} on. */
    boolean fits(Request request, int first) {
        if (first < 1 || first + request.pieces() - 1 > rack.tubes() || request.calibreM().isEmpty()) {
            return false;
        }
        for (int tube = first; tube < first + request.pieces(); tube++) {
            boolean fits = !taken.get(tube) && Fit.tilt(rack, tube, request.aim())
                    && rack.runOf(tube).filter(run -> Fit.calibre(request.calibreM().get(), run.calibreM())).isPresent();
            if (!fits) {
                return false;
            }
        }
        return true;
    }

    /** Marks tubes as used; those of hand-written cues may be marked more than once. */
    void take(Request request, int first) {
        if (first >= 1) {
            taken.set(first, first + request.pieces());
        }
        if (request.pieces() > 1) {
            chains = true;
        } else {
            singles = true;
        }
    }
}
