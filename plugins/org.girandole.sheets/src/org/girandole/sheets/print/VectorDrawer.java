package org.girandole.sheets.print;

import java.io.ByteArrayInputStream;
import java.io.File;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;

import javax.xml.transform.OutputKeys;
import javax.xml.transform.Transformer;
import javax.xml.transform.TransformerException;
import javax.xml.transform.TransformerFactory;
import javax.xml.transform.dom.DOMSource;
import javax.xml.transform.stream.StreamResult;

import org.w3c.dom.Element;

import com.github.weisj.jsvg.SVGDocument;
import com.github.weisj.jsvg.parser.LoaderContext;
import com.github.weisj.jsvg.parser.SVGLoader;
import com.github.weisj.jsvg.view.ViewBox;
import com.openhtmltopdf.css.sheet.FontFaceRule;
import com.openhtmltopdf.css.style.CssContext;
import com.openhtmltopdf.extend.OutputDevice;
import com.openhtmltopdf.extend.SVGDrawer;
import com.openhtmltopdf.layout.SharedContext;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.RenderingContext;

/** Draws the drawings of a sheet into its PDF as vectors. Drawings have no words of their own: those stand in the document beside them. */
final class VectorDrawer implements SVGDrawer {
	private static final double DOTS_PER_CSS_PIXEL_UNKNOWN = 1;

	@Override
	public SVGImage buildSVGImage(Element svg, Box box, CssContext context, double cssWidth, double cssHeight, double dotsPerPixel) {
		SVGDocument drawing = parse(svg);
		double scale = dotsPerPixel > 0 ? dotsPerPixel : DOTS_PER_CSS_PIXEL_UNKNOWN;
		double width = cssWidth > 0 ? cssWidth : drawing.size().width * scale;
		double height = cssHeight > 0 ? cssHeight : drawing.size().height * scale;
		return new Drawing(drawing, width, height, scale);
	}

	@Override
	public void importFontFaceRules(List<FontFaceRule> rules, SharedContext context) {
		// Drawings have no words, so no font matters to them.
	}

	@Override
	public void addFontFile(File file, String family, Integer weight, FontStyle style) {
		// Drawings have no words, so no font matters to them.
	}

	@Override
	public void close() {
		// Nothing is held open.
	}

	private static SVGDocument parse(Element svg) {
		try {
			Transformer copy = TransformerFactory.newInstance().newTransformer();
			copy.setOutputProperty(OutputKeys.OMIT_XML_DECLARATION, "yes");
			StringWriter text = new StringWriter();
			copy.transform(new DOMSource(svg), new StreamResult(text));
			SVGDocument drawing = new SVGLoader().load(new ByteArrayInputStream(text.toString().getBytes(StandardCharsets.UTF_8)), null,
					LoaderContext.createDefault());
			if (drawing == null) {
				throw new IllegalArgumentException("a drawing of this sheet is not well-formed");
			}
			return drawing;
		} catch (TransformerException e) {
			throw new IllegalArgumentException("a drawing of this sheet cannot be read", e);
		}
	}

	/** A drawing at its size in the output's own dots. */
	private record Drawing(SVGDocument drawing, double widthDots, double heightDots, double dotsPerPixel) implements SVGImage {
		@Override
		public int getIntrinsicWidth() {
			return (int) Math.round(widthDots);
		}

		@Override
		public int getIntrinsicHeight() {
			return (int) Math.round(heightDots);
		}

		@Override
		public void drawSVG(OutputDevice device, RenderingContext context, double x, double y) {
			float width = (float) (widthDots / dotsPerPixel);
			float height = (float) (heightDots / dotsPerPixel);
			device.drawWithGraphics((float) x, (float) y, width, height,
					graphics -> drawing.render((java.awt.Component) null, graphics, new ViewBox(0, 0, width, height)));
		}
	}
}
