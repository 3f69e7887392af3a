/**
 * Separation distances as data: tables of rules by article, and modifiers in order, evaluated for one firing towards
 * one direction. Nothing here is permission to fire: a distance is a floor to start from, and where a table has no
 * number the answer is that somebody competent must assess the case.
 */
package org.girandole.physics.separation;
