/**
 * Firing circuits on paper: resistance of leads, current through each igniter, the reading a continuity meter should
 * show. Nothing here speaks to any hardware.
 */
package org.girandole.physics.circuit;
