package org.girandole.sheets.print;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.List;

import org.apache.pdfbox.Loader;
import org.apache.pdfbox.multipdf.PDFMergerUtility;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.outputdevice.helper.ExternalResourceControlPriority;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder.PdfAConformance;
import com.openhtmltopdf.util.XRLog;

/**
 * Lays sheets out as PDF. The same document always gives the same bytes: no date, and an identity that is a hash of the document.
 */
public final class PdfWriter {
	private static final String FAMILY = "DejaVu Sans Condensed";
	private static final String PRODUCER = "Girandole";
	private static final float PDF_VERSION = 1.7f;

	static {
		XRLog.setLoggingEnabled(false);
	}

	private PdfWriter() {
	}

	/**
	 * Writes one sheet as a PDF with its fonts in it.
	 *
	 * @param html a whole document, well-formed as XML, that needs no other file
	 * @throws SheetException if it cannot be laid out
	 * @throws IOException if the stream does not take it
	 */
	public static void write(String html, OutputStream out) throws IOException {
		PdfRendererBuilder builder = new PdfRendererBuilder();
		builder.useFastMode();
		builder.usePdfVersion(PDF_VERSION);
		builder.withProducer(PRODUCER);
		builder.useFont(() -> font("DejaVuSansCondensed.ttf"), FAMILY, 400, FontStyle.NORMAL, true);
		builder.useFont(() -> font("DejaVuSansCondensed-Bold.ttf"), FAMILY, 700, FontStyle.NORMAL, true);
		builder.useReplacementText("\uFFFD");
		// Archival rules keep the renderer from searching the machine for fonts; every word is set in the two faces given here.
		builder.usePdfAConformance(PdfAConformance.PDFA_2_U);
		builder.useSVGDrawer(new VectorDrawer());
		builder.useExternalResourceAccessControl((uri, type) -> false, ExternalResourceControlPriority.RUN_BEFORE_RESOLVING_URI);
		builder.withHtmlContent(html, null);
		try (PdfBoxRenderer renderer = builder.buildPdfRenderer()) {
			renderer.createPDFWithoutClosing();
			save(renderer.getPdfDocument(), hash(html), out);
		} catch (RuntimeException e) {
			throw new SheetException("a sheet could not be laid out as PDF: " + e.getMessage(), e);
		}
	}

	/**
	 * Joins finished PDFs into one, in order; page numbers inside stay those of each sheet.
	 *
	 * @throws IOException if one of them is no PDF or the stream does not take the result
	 */
	public static void join(List<byte[]> pdfs, OutputStream out) throws IOException {
		PDFMergerUtility merger = new PDFMergerUtility();
		List<PDDocument> sources = new ArrayList<>();
		try (PDDocument joined = new PDDocument()) {
			for (byte[] pdf : pdfs) {
				PDDocument source = Loader.loadPDF(pdf);
				// Pages of the joined document live in their sources until it is saved.
				sources.add(source);
				merger.appendDocument(joined, source);
			}
			joined.getDocumentInformation().setProducer(PRODUCER);
			save(joined, hash(pdfs.toArray(byte[][]::new)), out);
		} finally {
			for (PDDocument source : sources) {
				source.close();
			}
		}
	}

	private static void save(PDDocument document, byte[] hash, OutputStream out) throws IOException {
		PDDocumentInformation information = document.getDocumentInformation();
		information.setCreationDate(null);
		information.setModificationDate(null);
		// The renderer's metadata carries the time of day.
		document.getDocumentCatalog().setMetadata(null);
		document.setDocumentId(ByteBuffer.wrap(hash).getLong());
		document.save(out);
	}

	private static InputStream font(String file) {
		InputStream in = PdfWriter.class.getResourceAsStream("fonts/" + file);
		if (in == null) {
			throw new IllegalStateException("the font " + file + " is missing from the bundle");
		}
		return in;
	}

	private static byte[] hash(String html) {
		return hash(html.getBytes(StandardCharsets.UTF_8));
	}

	private static byte[] hash(byte[]... parts) {
		try {
			MessageDigest digest = MessageDigest.getInstance("SHA-256");
			for (byte[] part : parts) {
				digest.update(part);
			}
			return digest.digest();
		} catch (NoSuchAlgorithmException e) {
			throw new IllegalStateException("every Java platform has SHA-256", e);
		}
	}
}
