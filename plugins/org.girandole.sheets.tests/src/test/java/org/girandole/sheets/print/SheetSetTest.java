package org.girandole.sheets.print;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;

import javax.xml.parsers.DocumentBuilderFactory;

import org.girandole.plan.script.EffectKind;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

class SheetSetTest {
	private static final String HOSTILE = "</style><script>\"'&{}\\ \u0001 } body { display: none";

	@Test
	void everySheetIsWellFormedAndOpensWithTheCautions() throws Exception {
		for (Sheet sheet : full()) {
			Document document = parse(sheet.html());
			String text = document.getDocumentElement().getTextContent();
			assertThat(text).as(sheet.fileName()).contains("Local law, the authority having jurisdiction", "is a floor to start from",
					"Nobody approaches", "DD62-7833", "Night on the Quay (invented)");
		}
	}

	@Test
	void thereIsASheetForEachPositionModuleAndSoundtrack() {
		assertThat(full()).extracting(Sheet::id).startsWith("1", "2 0", "2 1", "3", "4 A", "4 B", "4 C", "5 M1", "5 M2", "6", "7", "8", "9", "10", "11", "12");
	}

	@Test
	void fileNamesAreSafeAndDiffer() {
		HandMadeShow show = HandMadeShow.full();
		show.rack("R8", "Ä/..", 0.1, HandMadeShow.tubes(2, 0.075));
		show.rack("R9", "Ö/..", 0.1, HandMadeShow.tubes(2, 0.075));

		List<String> names = SheetSet.of(show.checked(), PaperSize.A4, "1").stream().map(Sheet::fileName).toList();

		assertThat(names).doesNotHaveDuplicates().allMatch(name -> name.matches("[a-z0-9-]+"));
	}

	@Test
	void wordsOfTheShowNeverBecomeStructure() throws Exception {
		HandMadeShow show = HandMadeShow.full();
		show.label = HOSTILE;
		show.cue(show.soundtracks.get(0), 70_000_000, "A",
				show.add(HandMadeShow.effect("Odd", HOSTILE, EffectKind.CAKE, 0.03, 0.1, "1.4G", "UN0336"))).named(HOSTILE, HOSTILE).add();

		for (Sheet sheet : SheetSet.of(show.checked(), PaperSize.A4, "1")) {
			Document document = parse(sheet.html());
			assertThat(document.getElementsByTagName("script").getLength()).isZero();
			assertThat(document.getElementsByTagName("style").getLength()).isEqualTo(1);
			assertThat(document.getElementsByTagName("style").item(0).getTextContent()).doesNotContain(HOSTILE, "display: none\"");
			assertThat(document.getElementsByTagName("title").item(0).getTextContent()).contains("</style><script>");
		}
	}

	@Test
	void thePositionSheetHasItsParts() throws Exception {
		assertThat(headings(sheet("4 A"))).containsExactly(
				"Rack R1 10 × 75 mm, 140 mm centre to centre, tubes can be tilted",
				"Rack R2 3 × 50 mm + 2 × 100 mm, 200 mm centre to centre, tubes can be tilted",
				"On the ground these bring their own tubes or need none", "Found about this position");
	}

	@Test
	void theSummarySaysThatAShowWithErrorsIsNotClean() throws Exception {
		assertThat(parse(sheet("1").html()).getDocumentElement().getTextContent()).contains("NOT CLEAN. Do not fire from this release.",
				"1 unresolved error", "Agreed by A. Inspector: barge 60 m out, agreed on site");
	}

	@Test
	void theTwoKindsOfLineAreToldApartInWords() {
		assertThat(sheet("5 M1").html()).contains("FIRING LINE. Igniters only.", "border: 2.2pt solid #000");
		assertThat(sheet("9").html()).contains("AUDIO LINE. Sound and timecode only.", "border: 2.2pt dashed #000");
	}

	private static List<Sheet> full() {
		return SheetSet.of(HandMadeShow.full().checked(), PaperSize.A4, "0.1.0");
	}

	private static Sheet sheet(String id) {
		return full().stream().filter(sheet -> sheet.id().equals(id)).findFirst().orElseThrow();
	}

	private static List<String> headings(Sheet sheet) throws Exception {
		NodeList found = parse(sheet.html()).getElementsByTagName("h2");
		List<String> headings = new ArrayList<>();
		for (int i = 0; i < found.getLength(); i++) {
			headings.add(found.item(i).getTextContent().strip());
		}
		return headings;
	}

	private static Document parse(String html) throws Exception {
		return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(html)));
	}
}
