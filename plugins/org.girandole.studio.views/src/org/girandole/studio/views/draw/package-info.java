/** What the views draw with: a pen without a toolkit, colours for light and dark, and a shape for each kind of effect. */
package org.girandole.studio.views.draw;
