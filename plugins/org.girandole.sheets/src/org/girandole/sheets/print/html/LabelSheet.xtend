package org.girandole.sheets.print.html

import org.eclipse.xtend.lib.annotations.Data
import org.girandole.sheets.print.values.LabelPages
import org.girandole.sheets.print.values.Quantities
import org.girandole.sheets.print.values.TubeLabels.Label

import static extension org.girandole.sheets.print.html.Html.*

/** Sheet 12: labels with a code that a telephone reads, on label paper or to be cut out. */
@Data
class LabelSheet {
	static val CODE_MM = 17.0
	/** The code with the white around it. */
	static val CODE_CELL_MM = 21.6
	/** Space inside a label's edge, on each side. */
	static val EDGE_MM = 1.2
	/** From this height there is room for words below the code. */
	static val TALL_MM = 36.0
	/** Height of a line of type. */
	static val LINE_MM = 4.0
	/** What an average letter takes of a line, by size of type; words are cut so that a label never runs over. */
	static val LETTER_MM = 2.0
	static val SMALL_LETTER_MM = 1.7
	/** The head and the foot of a page need so much of its margin. */
	static val HEAD_MM = 17.0
	static val FOOT_MM = 15.0
	/** Keeps a grid that fills its page from being pushed to the next one by rounding. */
	static val ROUNDING_MM = 0.1
	static val RULER_MM = 100.0

	Page page

	def String html(LabelPages labels) {
		page.document("12", "Tube labels", "", '''«labels.kind», one label a tube or ground piece''', "", labels.pageRule, '''
			«page.cautions(#["A label says what is to go in, not what is in. Labels of another release are torn off before loading. The square code holds release, position, rack, tube and cue; it fires nothing."])»
			<h2>Before printing</h2>
			<p>Print the following pages at actual size, never fitted to the page. This line is 100 mm long; measure it on paper first:</p>
			<div>«ruler»</div>
			<p>«labels.grid.across» labels across and «labels.grid.down» down, each «labels.grid.widthM.words» by «labels.grid.heightM.words»; the first begins «labels.grid.leftM.words» from the left and «labels.grid.topM.words» from the top edge of the paper.</p>
			<h2>What follows</h2>
			<table class="grid">
			<colgroup><col style="width: 34mm"/><col style="width: 30mm"/><col style="width: 30mm"/><col/></colgroup>
			<thead><tr><th>Position</th><th class="n">Labels</th><th class="n">Sheets of paper</th><th></th></tr></thead>
			<tbody>«FOR part : labels.positions»<tr><td class="huge">«part.position.text»</td><td class="n huge">«part.labels»</td><td class="n huge">«part.pages.size»</td><td></td></tr>«ENDFOR»</tbody>
			</table>
			«IF labels.positions.empty»<p class="missing">Nothing to label.</p>«ENDIF»
			«FOR part : labels.positions»«FOR sheet : part.pages»
				<div class="labelpage">
				«FOR label : sheet.indexed»
					<div class="tubelabel«IF labels.plainPaper» cut«ENDIF»«IF labels.grid.heightM * 1000 < TALL_MM» flat«ENDIF»" style="left: «(labels.leftM(label.key) - labels.grid.leftM).mm»; top: «(labels.topM(label.key) - labels.grid.topM).mm»; width: «labels.grid.widthM.mm»; height: «labels.grid.heightM.mm»">«IF labels.grid.heightM * 1000 >= TALL_MM»«label.value.tall(labels)»«ELSE»«label.value.flat(labels)»«ENDIF»</div>
				«ENDFOR»
				</div>
			«ENDFOR»«ENDFOR»
		''')
	}

	private static def String kind(LabelPages labels) {
		if(labels.plainPaper) "cut along the dashed lines" else "for label paper as the script describes it"
	}

	/** The pages with labels have the grid as their area; head and foot stand only where the grid leaves them room. */
	private def CharSequence pageRule(LabelPages labels) {
		val grid = labels.grid
		val right = Math.max(0, page.paper.widthMm - (grid.leftM + grid.totalWidthM) * 1000 - ROUNDING_MM)
		val bottom = Math.max(0, page.paper.heightMm - (grid.topM + grid.totalHeightM) * 1000 - ROUNDING_MM)
		'''
			@page labels { size: «page.paper.cssName»; margin: «grid.topM.mm» «Svg.number(right)»mm «Svg.number(bottom)»mm «grid.leftM.mm»;
			  «IF grid.topM * 1000 < HEAD_MM»@top-left { content: none; } @top-center { content: none; } @top-right { content: none; }«ENDIF»
			  «IF bottom < FOOT_MM»@bottom-left { content: none; } @bottom-center { content: none; } @bottom-right { content: none; }«ENDIF»
			}
			.labelpage { page: labels; page-break-before: always; position: relative; height: «Svg.number(grid.totalHeightM * 1000 - ROUNDING_MM)»mm; }
		'''
	}

	/** How a tube is set and its pin are never cut; what goes in and the show's name are. */
	private def CharSequence tall(Label label, LabelPages labels) {
		val width = labels.grid.widthM * 1000 - 2 * EDGE_MM
		val lines = ((labels.grid.heightM * 1000 - 2 * EDGE_MM - CODE_CELL_MM) / LINE_MM) as int
		val setLines = (label.set.length + letters(width, LETTER_MM) - 1) / letters(width, LETTER_MM)
		val whatLines = Math.min(2, Math.max(1, lines - setLines - 1))
		'''
			<table class="label"><tr><td class="code">«SquareCode.svg(label.code, CODE_MM)»</td>
			<td><div class="nowrap"><span class="huge">«label.position.brief(6).text»</span> <span class="big">«label.place.brief(12).text»</span></div>
			<div class="nowrap">cue <span class="huge">«label.cues.brief(8).text»</span></div>
			<div class="small nowrap">release «page.head.stamp.text»</div></td></tr></table>
			<div><b>«label.set.text»</b></div>
			<div><b>«label.what.brief(letters(width, LETTER_MM) * whatLines).text»</b></div>
			<div>pin <b>«label.pin.text»</b> <span class="small">«page.head.show.brief(letters(width - (label.pin.length + 5) * LETTER_MM, SMALL_LETTER_MM)).text»</span></div>
		'''
	}

	private def CharSequence flat(Label label, LabelPages labels) {
		val width = labels.grid.widthM * 1000 - 2 * EDGE_MM - CODE_CELL_MM
		'''
			<table class="label"><tr><td class="code">«SquareCode.svg(label.code, CODE_MM)»</td>
			<td><div class="big nowrap">«label.position.brief(5).text» «label.place.brief(10).text»</div>
			<div><span class="big">cue «label.cues.brief(8).text»</span> <span class="small">pin <b>«label.pin.text»</b></span></div>
			<div class="small"><b>«label.set.text»</b></div>
			<div class="small nowrap"><b>«label.what.brief(letters(width, SMALL_LETTER_MM)).text»</b></div>
			<div class="small nowrap">release «page.head.stamp.text»</div></td></tr></table>
		'''
	}

	private static def int letters(double widthMm, double letterMm) {
		Math.max(1, (widthMm / letterMm) as int)
	}

	private static def String ruler() {
		new Svg(RULER_MM + 1, 5).line(0.5, 2.5, RULER_MM + 0.5, 2.5, 0.35, Svg.SOLID).line(0.5, 0.5, 0.5, 4.5, 0.35, Svg.SOLID)
			.line(RULER_MM + 0.5, 0.5, RULER_MM + 0.5, 4.5, 0.35, Svg.SOLID).element
	}

	private static def String words(double metres) {
		Quantities.millimetres(metres)
	}

	private static def String mm(double metres) {
		Svg.number(metres * 1000) + "mm"
	}
}
