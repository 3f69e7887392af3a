package org.girandole.studio.tests;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import org.eclipse.compare.IEncodedStreamContentAccessor;
import org.eclipse.compare.ITypedElement;
import org.eclipse.swt.graphics.Image;

/** One of two versions of a script that are compared. */
record Version(String getName, String text) implements ITypedElement, IEncodedStreamContentAccessor {
    @Override
    public Image getImage() {
        return null;
    }

    @Override
    public String getType() {
        return "show";
    }

    @Override
    public InputStream getContents() {
        return new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8));
    }

    @Override
    public String getCharset() {
        return "UTF-8";
    }
}
