/** Thin canvases: they hand keys, mouse and paint to the drawings, and know nothing of a workbench. */
package org.girandole.studio.views.swt;
