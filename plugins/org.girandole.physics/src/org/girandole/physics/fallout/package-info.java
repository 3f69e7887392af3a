/**
 * Where things come down: many flights with scattered speed, tilt, wind, burst and drag, and the areas on the ground
 * that hold given shares of them. The same seed gives the same areas on every machine and on any number of threads.
 */
package org.girandole.physics.fallout;
