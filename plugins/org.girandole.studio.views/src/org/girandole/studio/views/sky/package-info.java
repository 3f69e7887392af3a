/** The sky from the front, as the audience sees it, playing along with the timeline. */
package org.girandole.studio.views.sky;
