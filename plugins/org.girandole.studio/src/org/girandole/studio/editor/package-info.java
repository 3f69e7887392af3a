/** The parts of the editor, one class a feature. Each asks the language server through the client and shows what it answers. */
package org.girandole.studio.editor;
