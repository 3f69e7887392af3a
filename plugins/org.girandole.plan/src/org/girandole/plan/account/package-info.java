/** After the show: what became of every cue, where what did not fire is, and what is left in stock. */
package org.girandole.plan.account;
