/**
 * Musical time: tempo maps, bars and beats, exact to the microsecond.
 *
 * <p>Show time is a {@code long} count of microseconds from the first note ({@code ...Us}). Everything musical is a
 * {@link org.girandole.music.Rational}: bars and beats count from 1, a tempo counts the beats of the meter's own unit
 * (its denominator) in a minute. Bad values raise {@link org.girandole.music.MusicTimeException}.
 */
package org.girandole.music;
