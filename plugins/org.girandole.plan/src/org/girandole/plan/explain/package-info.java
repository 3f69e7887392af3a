/** How the numbers of a plan come about, step by step, from what the script says. */
package org.girandole.plan.explain;
