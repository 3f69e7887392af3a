package org.girandole.sheets.print.html

import org.eclipse.xtend.lib.annotations.Data
import org.girandole.sheets.print.values.Checklists

import static extension org.girandole.sheets.print.html.Html.*

/** Sheet 10: what is ticked off on the day. */
@Data
class ChecklistSheet {
	Page page

	def String html(Checklists lists) {
		page.document("10", "Crew checklists", "", "common practice unless a source is named", "", '''
			«page.cautions(#["A list is ticked by the one who looked, at the time of looking. What cannot be ticked stops the work until the person in charge has decided."])»
			«FOR phase : lists.phases»
				<div class="keep">
				<h2>«phase.name.text» <span class="aside">«phase.who.text»</span></h2>
				<table class="grid">
				<colgroup><col style="width: 11mm"/><col/><col style="width: 22mm"/></colgroup>
				<thead><tr><th class="c">Done</th><th>What</th><th>Initials, time</th></tr></thead>
				<tbody>
				«FOR step : phase.steps»
					<tr><td class="c"><span class="box"></span></td><td>«step.text»</td><td><span class="write"></span></td></tr>
				«ENDFOR»
				</tbody>
				</table>
				</div>
			«ENDFOR»
		''')
	}
}
