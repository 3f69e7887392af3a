package org.girandole.sheets.print.html

import org.eclipse.xtend.lib.annotations.Data
import org.girandole.sheets.print.values.FiringRows

import static extension org.girandole.sheets.print.html.Html.*

/** Sheet 3: the firing table for people. */
@Data
class FiringSheet {
	Page page

	def String html(FiringRows table) {
		page.document("3", "Firing table", "", "", "", '''
			«page.cautions(#[])»
			<p class="how">In firing order. “Fire” is when the controller fires, “seen” is when the audience sees it; (heard) means when they hear it. ± is the worst case of all tolerances together. Times count from the first note.</p>
			«FOR part : table.slots»
				<h2>Slot «part.slot»: «part.soundtrack.text» <span class="aside">«part.rate.text», «part.rows.size» cues</span></h2>
				<table class="grid">
				<colgroup><col style="width: 13mm"/><col style="width: 25mm"/><col style="width: 19mm"/><col style="width: 22mm"/><col style="width: 15mm"/><col style="width: 20mm"/><col style="width: 14mm"/><col style="width: 19mm"/><col/></colgroup>
				<thead><tr><th class="n">Cue</th><th>Timecode</th><th class="n">Fire</th><th class="n">Seen</th><th class="n">±</th><th>Module · pin</th><th>Position</th><th>Rack · tube</th><th>What</th></tr></thead>
				<tbody>
				«FOR row : part.rows.indexed»
					<tr«IF row.key % 2 == 1» class="shade"«ENDIF»><td class="n big">«row.value.cue»</td><td><b>«row.value.timecode.text»</b></td><td class="n">«row.value.fire.text»</td><td class="n">«row.value.seen.text»«IF row.value.heard»<br/><span class="small">(heard)</span>«ENDIF»</td><td class="n small">«row.value.tolerance.text»</td><td><b>«row.value.pin.text»</b></td><td class="big">«row.value.position.text»</td><td>«row.value.tube.text»</td><td>«row.value.what.text»«IF !row.value.note.empty» <span class="small">“«row.value.note.text»”</span>«ENDIF»</td></tr>
				«ENDFOR»
				</tbody>
				</table>
				«IF part.rows.empty»<p class="missing">No cues.</p>«ENDIF»
			«ENDFOR»
		''')
	}
}
