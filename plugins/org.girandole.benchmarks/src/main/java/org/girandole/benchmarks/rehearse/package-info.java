/** How long rehearsals take. */
package org.girandole.benchmarks.rehearse;
