/** Measurements of the physics in one process. */
package org.girandole.benchmarks.physics;
