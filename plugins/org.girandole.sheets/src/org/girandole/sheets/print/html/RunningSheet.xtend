package org.girandole.sheets.print.html

import org.eclipse.xtend.lib.annotations.Data
import org.girandole.sheets.print.values.RunningRows
import org.girandole.sheets.print.values.RunningRows.Hold
import org.girandole.sheets.print.values.RunningRows.Milestone
import org.girandole.sheets.print.values.RunningRows.Moment
import org.girandole.sheets.print.values.RunningRows.Part
import org.girandole.sheets.print.values.RunningRows.Row

import static extension org.girandole.sheets.print.html.Html.*

/** Sheet 2: what the shooter follows. */
@Data
class RunningSheet {
	Page page

	def String html(RunningRows running) {
		page.document("2", '''Running sheet, slot «running.slot»''', '''slot «running.slot»''', '''«running.soundtrack» · timecode «running.rate» from «running.start» · «running.preroll» before the first note · music «running.length»''', "", '''
			«page.cautions(#[])»
			<div class="line-kind"><span class="word">SLOT «running.slot»</span> Before arming, read the slot and the release off the controller and compare both with this sheet.</div>
			<p class="how">Keep the hold-to-fire control pressed while cues are to fire. Let go: cues that come due are not fired, and they are not made up later. Let go at once when anything is not as it should be. Where a box says LET GO, nothing is planned to fire and nothing is to fall.</p>
			<table class="grid">
			<colgroup><col style="width: 32mm"/><col style="width: 30mm"/><col style="width: 20mm"/><col/><col style="width: 23mm"/></colgroup>
			<thead><tr><th>Cue</th><th>Timecode</th><th class="n">Show time</th><th>What fires, where</th><th class="n">Time to next</th></tr></thead>
			<tbody>
			«FOR row : running.rows»
				«row.line»
			«ENDFOR»
			</tbody>
			</table>
			«Page.signatures(#["Shooter (name)", "Show caller (name)", "Let go at (timecode), why"])»
		''')
	}

	private def CharSequence line(Row row) {
		switch row {
			Milestone: row.milestone
			Part: row.part
			Hold: row.hold
			Moment: row.moment
		}
	}

	private def CharSequence milestone(Milestone row) '''
		<tr class="milestone"><td></td><td class="big">«row.timecode.text»</td><td class="n">«row.time.text»</td><td colspan="2" class="big">«row.label.text»</td></tr>
	'''

	private def CharSequence part(Part row) '''
		<tr class="part"><td></td><td>«row.timecode.text»</td><td class="n">«row.time.text»</td><td colspan="2">«row.label.text»</td></tr>
	'''

	private def CharSequence hold(Hold row) '''
		<tr class="hold"><td colspan="5"><span class="word">LET GO «row.fromTimecode.text» – «row.toTimecode.text»</span><br/>Show time «row.from.text» to «row.to.text»: «row.reason.text»</td></tr>
	'''

	private def CharSequence moment(Moment row) '''
		<tr><td class="huge">«row.cues.text»</td><td class="big">«row.timecode.text»</td><td class="n">«row.time.text»</td>
		<td>«IF row.inHold»<b>DUE WHILE LET GO: will not fire.</b><br/>«ENDIF»«FOR what : row.what SEPARATOR '<br/>'»«IF what.count > 1»<b>«what.count» ×</b> «ENDIF»«what.label.text», <b>«what.positions.text»</b>«IF !what.note.empty» <span class="small">“«what.note.text»”</span>«ENDIF»«ENDFOR»</td>
		<td class="n «IF row.longWait»huge«ELSE»big«ENDIF»">«row.next.text»</td></tr>
	'''
}
