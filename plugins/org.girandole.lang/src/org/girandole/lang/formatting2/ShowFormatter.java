package org.girandole.lang.formatting2;

import org.eclipse.xtext.formatting2.AbstractJavaFormatter;

/** Leaves a script as it is. */
public class ShowFormatter extends AbstractJavaFormatter {
}
