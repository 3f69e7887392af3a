package org.girandole.plan.allocate;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.girandole.plan.Times;
import org.girandole.plan.allocate.Allocation.Kind;
import org.girandole.plan.allocate.Allocation.Refusal;
import org.girandole.plan.script.Rack;

/** Says why a request was refused, and what is the least that would help. */
final class Refusals {
    private Refusals() {
    }

    static Refusal pin(Field field, Request request, Map<String, Integer> used) {
        List<Field.Stand> stands = field.modulesAt(request.position());
        if (stands.isEmpty()) {
            return new Refusal(request.key(), Kind.PIN, "No module serves position " + request.position(), "no module",
                    "1 free pin", "add a module at " + request.position());
        }
        String names = stands.stream().map(Field.Stand::name).collect(Collectors.joining(", "));
        List<Field.Stand> roomy = stands.stream().filter(stand -> used.getOrDefault(stand.name(), 0) < stand.usablePins()).toList();
        if (!roomy.isEmpty()) {
            String moment = Times.exactClock(request.fireUs());
            return new Refusal(request.key(), Kind.PIN,
                    "Modules that serve position " + request.position() + " have free pins (" + names + "), but none may fire another at "
                            + moment,
                    "pins at once and the gap between pins are used up around " + moment, "1 more module",
                    "add a module at " + request.position() + " or move the cue a little");
        }
        int pins = stands.stream().mapToInt(Field.Stand::usablePins).sum();
        return new Refusal(request.key(), Kind.PIN,
                "All pins that serve position " + request.position() + " are in use (" + names + ")",
                pins + " pins besides the spare ones", "1 more pin",
                "add a module at " + request.position() + " or take away a cue there");
    }

    static Refusal tube(Field field, Request request) {
        String position = request.position();
        if (request.calibreM().isEmpty()) {
            return new Refusal(request.key(), Kind.TUBE, "The calibre of " + request.effect() + " is not said", "no calibre",
                    "a calibre", "give the effect a calibre");
        }
        String calibre = millimetres(request.calibreM().get());
        List<Rack> racks = field.racksAt(position);
        long ofCalibre = racks.stream().mapToLong(rack -> tubes(rack, request, false)).sum();
        if (ofCalibre == 0) {
            return new Refusal(request.key(), Kind.TUBE, "No tube of " + calibre + " stands at position " + position,
                    racks.isEmpty() ? "no rack" : "tubes of other calibres", tubesWanted(request, calibre),
                    "add a rack with " + tubesWanted(request, calibre) + " at " + position);
        }
        String tilt = String.format(Locale.ROOT, "%.1f deg", request.aim().tiltDeg());
        long ofTilt = racks.stream().mapToLong(rack -> tubes(rack, request, true)).sum();
        if (ofTilt == 0) {
            return new Refusal(request.key(), Kind.TUBE,
                    "No tube of " + calibre + " at position " + position + " can point to " + tilt,
                    ofCalibre + " tubes of " + calibre + " with other tilts", tubesWanted(request, calibre) + " at " + tilt,
                    "add a rack that reaches " + tilt + ", or change the tilt of the cue");
        }
        String inARow = request.pieces() > 1 ? " in a row" : "";
        return new Refusal(request.key(), Kind.TUBE,
                "The tubes of " + calibre + " at position " + position + " that fit are all in use",
                ofTilt + " tubes of " + calibre + " that fit", tubesWanted(request, calibre) + inARow + " more",
                "add a rack with " + tubesWanted(request, calibre) + inARow + " at " + position);
    }

    private static long tubes(Rack rack, Request request, boolean withTilt) {
        return IntStream.rangeClosed(1, rack.tubes())
                .filter(tube -> rack.runOf(tube).filter(run -> Fit.calibre(request.calibreM().get(), run.calibreM())).isPresent())
                .filter(tube -> !withTilt || Fit.tilt(rack, tube, request.aim()))
                .count();
    }

    private static String tubesWanted(Request request, String calibre) {
        return request.pieces() + (request.pieces() == 1 ? " tube of " : " tubes of ") + calibre;
    }

    private static String millimetres(double metres) {
        String digits = String.format(Locale.ROOT, "%.1f", metres * 1000);
        return (digits.endsWith(".0") ? digits.substring(0, digits.length() - 2) : digits) + " mm";
    }
}
