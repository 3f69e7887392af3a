/** Measurements of whole processes, as a user sees them. */
package org.girandole.benchmarks;
