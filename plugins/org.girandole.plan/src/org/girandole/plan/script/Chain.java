package org.girandole.plan.script;

/**
 * Items of one effect fused together and lit by one igniter. Item k, from 0, lights at firing + lead + k gaps.
 *
 * @param gap time between neighbours with its tolerance
 */
public record Chain(String name, String label, String effect, int items, Measured gap, long leadUs, SourceRef source) {
}
