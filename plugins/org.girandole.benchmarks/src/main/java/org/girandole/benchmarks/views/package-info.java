/** Measures how fast the views draw. */
package org.girandole.benchmarks.views;
