/**
 * The requests that the language server answers beyond the Language Server Protocol. Every type is a record of plain values, so that it
 * can be read from JSON by a client in any language: times are microseconds from the first note, lengths metres, angles degrees. What
 * may be missing is {@code null}. Nothing here is computed: it is what the plan says.
 */
package org.girandole.protocol;
