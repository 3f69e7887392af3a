package org.girandole.sheets.print.html

import com.google.common.collect.Lists
import org.eclipse.xtend.lib.annotations.Data
import org.girandole.sheets.print.values.Quantities
import org.girandole.sheets.print.values.TubeLabels
import org.girandole.sheets.print.values.TubeLabels.Label

import static extension org.girandole.sheets.print.html.Html.*

/** Sheet 12: labels to cut out, with a code that a telephone reads. */
@Data
class LabelSheet {
	static val LABELS_A_ROW = 3
	static val CODE_MM = 17.0

	Page page

	def String html(TubeLabels labels) {
		page.document("12", "Tube labels", "", "cut along the dashed lines; one label a tube or ground piece", "", '''
			«page.cautions(#["A label says what is to go in, not what is in. Labels of another release are torn off before loading. The square code holds release, position, rack, tube and cue; it fires nothing."])»
			«FOR part : labels.positions»
				<table class="labels">
				<thead><tr><th colspan="«LABELS_A_ROW»">Position «part.position.text» <span class="small">«Quantities.count(part.labels.size, "label", "labels")»</span></th></tr></thead>
				<tbody>
				«FOR row : Lists.partition(part.labels, LABELS_A_ROW)»
					<tr>«FOR label : row»«label.cell»«ENDFOR»«FOR i : row.size ..< LABELS_A_ROW»<td class="none"></td>«ENDFOR»</tr>
				«ENDFOR»
				</tbody>
				</table>
			«ENDFOR»
			«IF labels.positions.empty»<p class="missing">Nothing to label.</p>«ENDIF»
		''')
	}

	private def CharSequence cell(Label label) '''
		<td><table class="label"><tr><td class="code">«SquareCode.svg(label.code, CODE_MM)»</td>
		<td><div><span class="huge">«label.position.text»</span> <span class="big">«label.place.text»</span></div>
		<div>cue <span class="huge">«label.cues.text»</span></div>
		<div class="small nowrap">release «page.head.stamp.text»</div></td></tr></table>
		<div><b>«label.what.text»</b></div>
		<div>«label.set.text», pin <b class="nowrap">«label.pin.text»</b></div>
		<div class="small">«page.head.show.text»</div></td>
	'''
}
