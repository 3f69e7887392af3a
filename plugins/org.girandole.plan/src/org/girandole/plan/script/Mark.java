package org.girandole.plan.script;

/** A named moment of a soundtrack. */
public record Mark(String name, TimeExpr at, SourceRef source) {
}
