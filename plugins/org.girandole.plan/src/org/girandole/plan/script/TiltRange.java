package org.girandole.plan.script;

/** Angles from the vertical, degrees; negative leans to the left as the audience sees it. */
public record TiltRange(double fromDeg, double toDeg) {
}
