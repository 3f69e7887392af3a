/** The site from above, with distances and fallout, and the wind to try. */
package org.girandole.studio.views.site;
