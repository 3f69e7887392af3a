/**
 * From script to moments: tempo, marks, sections, the expansion of cues, stable keys, delay arithmetic. {@link
 * org.girandole.plan.schedule.Planner} is the way in.
 */
package org.girandole.plan.schedule;
