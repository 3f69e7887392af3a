/** Igniters to pins and pieces to tubes: hard limits first, then what costs the crew least. */
package org.girandole.plan.allocate;
