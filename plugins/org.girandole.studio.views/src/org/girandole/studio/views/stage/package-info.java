/** What all views share: the show, the playhead, the selection, the sound. */
package org.girandole.studio.views.stage;
