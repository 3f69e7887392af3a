/** The timeline: one lane a position, each cue from its firing to its burst. */
package org.girandole.studio.views.timeline;
