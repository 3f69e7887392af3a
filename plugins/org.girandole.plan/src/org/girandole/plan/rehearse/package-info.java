/** The night as it may go wrong: a model of a controller that reads a damaged timecode, and what becomes of each cue. */
package org.girandole.plan.rehearse;
