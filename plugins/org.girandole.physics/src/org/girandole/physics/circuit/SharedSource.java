package org.girandole.physics.circuit;

import java.util.ArrayList;
import java.util.List;

import org.girandole.physics.Band;
import org.girandole.physics.Derivation;
import org.girandole.physics.Figures;
import org.girandole.physics.PhysicsInputException;

/**
 * Pins fired at the same moment from one supply. Kirchhoff's laws on a source with inner resistance and parallel
 * branches; inductance and the change of an igniter's resistance while it heats are left out.
 *
 * @param source the supply all branches share
 * @param branches the pins fired together, at least one
 */
public record SharedSource(Source source, List<Branch> branches) {
    public SharedSource {
        branches = List.copyOf(branches);
        if (branches.isEmpty()) {
            throw new PhysicsInputException("a supply without pins", "one pin or more", "give the pins fired together");
        }
    }

    /** One result for each branch, in their order. */
    public List<LoopResult> solve() {
        List<LoopResult> results = new ArrayList<>();
        for (int i = 0; i < branches.size(); i++) {
            results.add(solve(i));
        }
        return List.copyOf(results);
    }

    /** Current drawn from the supply by all branches together, in ampere. */
    public Band totalCurrentA() {
        double[] siemens = new double[3];
        for (Branch branch : branches) {
            siemens[0] += 1 / branch.ohm().most();
            siemens[1] += 1 / branch.ohm().nominal();
            siemens[2] += 1 / branch.ohm().least();
        }
        return new Band(total(siemens[0]), total(siemens[1]), total(siemens[2]));
    }

    private double total(double siemens) {
        return source.emfV() * siemens / (1 + source.ohm() * siemens);
    }

    private LoopResult solve(int index) {
        Branch branch = branches.get(index);
        double othersLeast = othersSiemens(index, Corner.MOST);
        double othersNominal = othersSiemens(index, Corner.NOMINAL);
        double othersMost = othersSiemens(index, Corner.LEAST);
        Band ohm = branch.ohm();
        Band current = new Band(pinCurrent(ohm.most(), othersMost), pinCurrent(ohm.nominal(), othersNominal),
                pinCurrent(ohm.least(), othersLeast));
        List<Band> igniters = new ArrayList<>();
        for (int i = 0; i < branch.igniterOhm().size(); i++) {
            igniters.add(new Band(igniterCurrent(branch, i, Corner.MOST, Corner.LEAST, othersMost),
                    igniterCurrent(branch, i, Corner.NOMINAL, Corner.NOMINAL, othersNominal),
                    igniterCurrent(branch, i, Corner.LEAST, Corner.MOST, othersLeast)));
        }
        Band loop = Branch.sum(Band.plusMinus(source.ohm(), 0), ohm);
        return new LoopResult(loop, branch.readingOhm(), current, igniters);
    }

    /**
     * How the nominal values of a branch come about; the last step is the smallest current through an igniter.
     *
     * @param index of the branch, from 0
     */
    public Derivation derivation(int index) {
        return derivation(branches.get(index), solve(index), othersSiemens(index, Corner.NOMINAL));
    }

    /** Conductance of all branches but one, at a corner of their tolerance. */
    private double othersSiemens(int index, Corner corner) {
        double siemens = 0;
        for (int i = 0; i < branches.size(); i++) {
            if (i != index) {
                siemens += 1 / corner.of(branches.get(i).ohm());
            }
        }
        return siemens;
    }

    /** Current into a branch of {@code ohm} beside others of the conductance {@code others}. */
    private double pinCurrent(double ohm, double others) {
        return source.emfV() / (ohm + source.ohm() * (1 + others * ohm));
    }

    /**
     * Current through igniter {@code i}. In series, the worst is that all igniters stand at the most; in parallel,
     * that the others stand at the least, because they then take the larger share.
     */
    private double igniterCurrent(Branch branch, int i, Corner own, Corner parallelOthers, double others) {
        boolean series = branch.join() == Join.SERIES;
        double[] ohms = new double[branch.igniterOhm().size()];
        for (int k = 0; k < ohms.length; k++) {
            ohms[k] = (k == i || series ? own : parallelOthers).of(branch.igniterOhm().get(k));
        }
        double joined = Branch.joined(ohms, branch.join());
        double ohm = branch.pinOhm() + own.of(branch.lead().loopOhm()) + joined;
        double current = pinCurrent(ohm, others);
        return series ? current : current * joined / ohms[i];
    }

    private Derivation derivation(Branch branch, LoopResult result, double others) {
        double loop = result.loopOhm().nominal();
        double current = result.currentA().nominal();
        int n = branch.igniterOhm().size();
        Derivation.Builder steps = Derivation.builder().all(branch.lead().derivation());
        steps.step("R_igniters", joinFormula(branch), igniterText(branch), branch.ignitersOhm().nominal(), "ohm", "");
        steps.step("R_loop", "R_source + R_pin + R_lead + R_igniters",
                Figures.of(source.ohm()) + " + " + Figures.of(branch.pinOhm()) + " + "
                        + Figures.of(branch.lead().loopOhm().nominal()) + " + "
                        + Figures.of(branch.ignitersOhm().nominal()),
                loop, "ohm", "");
        if (others == 0 || source.ohm() == 0) {
            steps.step("I", "E / R_loop", Figures.of(source.emfV()) + " / " + Figures.of(loop),
                    current, "A", "Ohm's law");
        } else {
            double ohm = branch.ohm().nominal();
            steps.step("G_others", "conductance of the other pins fired at once", "", others, "S", "");
            steps.step("I", "E / (R + R_source (1 + G_others R))",
                    Figures.of(source.emfV()) + " / (" + Figures.of(ohm) + " + " + Figures.of(source.ohm()) + " * (1 + "
                            + Figures.of(others) + " * " + Figures.of(ohm) + "))",
                    current, "A", "Kirchhoff's laws");
        }
        double weakest = result.igniterA().stream().mapToDouble(Band::nominal).min().orElseThrow();
        if (branch.join() == Join.PARALLEL && n > 1) {
            steps.step("I_igniter", "I R_igniters / R_igniter, the smallest", "", weakest, "A", "current divider");
        } else {
            steps.step("I_igniter", "I", Figures.of(current), weakest, "A", "one path");
        }
        return steps.build();
    }

    private static String joinFormula(Branch branch) {
        int n = branch.igniterOhm().size();
        if (n == 1) {
            return "one igniter";
        }
        return branch.join() == Join.SERIES ? n + " igniters in series, sum" : n + " igniters in parallel, 1 / sum(1 / R)";
    }

    private static String igniterText(Branch branch) {
        List<Band> ohms = branch.igniterOhm();
        if (ohms.stream().distinct().count() > 1) {
            return "";
        }
        String one = Figures.of(ohms.get(0).nominal());
        if (ohms.size() == 1) {
            return one;
        }
        return branch.join() == Join.SERIES ? ohms.size() + " * " + one : one + " / " + ohms.size();
    }

    /** Which end of each band is taken. */
    private enum Corner {
        LEAST, NOMINAL, MOST;

        double of(Band band) {
            return switch (this) {
                case LEAST -> band.least();
                case NOMINAL -> band.nominal();
                case MOST -> band.most();
            };
        }
    }
}
