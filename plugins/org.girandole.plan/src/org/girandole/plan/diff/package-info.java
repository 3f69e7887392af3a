/** What changed between two plans: for the audience, for the hardware, for safety. Compares what was planned, not text. */
package org.girandole.plan.diff;
