/** Where the shells of a plan come down, burst or not. */
package org.girandole.plan.fallout;
