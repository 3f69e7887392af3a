/** The views of the workbench: they bring the show of the active editor to the canvases, and what is clicked there back to the editor. */
package org.girandole.studio.views.workbench;
