/** What a script says, as plain values: the border between the language and the plan. */
package org.girandole.plan.script;
