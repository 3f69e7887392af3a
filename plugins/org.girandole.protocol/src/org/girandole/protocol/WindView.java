package org.girandole.protocol;

/**
 * Wind at the height of a hand-held meter.
 *
 * @param fromDeg compass bearing that it blows from
 * @param gustMps speed of gusts, or null
 */
public record WindView(double fromDeg, double speedMps, Double gustMps) {
}
