/** The electric circuit of every pin: lead, igniters, current, and what the continuity meter should show. */
package org.girandole.plan.circuit;
