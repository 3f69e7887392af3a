/**
 * The plan: every cue of a show with its moment, its place, its tube and its pin, and the findings about them.
 * Knows no language, no editor; works as a library.
 */
package org.girandole.plan;
