package org.girandole.lang.parsing;

import org.eclipse.emf.common.util.URI;
import org.eclipse.xtext.parser.IEncodingProvider;

/** Scripts are UTF-8 on every machine. */
public class Utf8 implements IEncodingProvider {
    @Override
    public String getEncoding(URI uri) {
        return "UTF-8";
    }
}
