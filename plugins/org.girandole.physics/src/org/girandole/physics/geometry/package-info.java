/** Plane geometry of a site in metres: x east, y north; z up for points in the air. */
package org.girandole.physics.geometry;
