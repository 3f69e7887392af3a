/* Generated from Show.xtext. */
package org.girandole.lang.formatting2;

import org.eclipse.xtext.formatting2.AbstractJavaFormatter;
import org.eclipse.xtext.formatting2.IFormattableDocument;
import org.girandole.lang.show.Element;
import org.girandole.lang.show.Script;

public class ShowFormatter extends AbstractJavaFormatter {

	protected void format(Script script, IFormattableDocument doc) {
		// TODO: format HiddenRegions around keywords, attributes, cross references, etc. 
		for (Element element : script.getElements()) {
			doc.format(element);
		}
	}
	
}
