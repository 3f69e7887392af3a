package org.girandole.sheets.print.html

import java.util.List
import org.eclipse.xtend.lib.annotations.Data
import org.girandole.plan.account.WaitingTime
import org.girandole.sheets.account.AccountReport

import static extension org.girandole.sheets.print.html.Html.*

/** The report after the show, to be signed and kept. */
@Data
class AccountSheet {
	Page page

	def String html(AccountReport report) {
		page.document("R", "Report after the show", "", "", "", '''
			<p><b>«report.counts.text»</b></p>
			«page.cautions(report.cautions)»
			<h2>Live in the field</h2>
			«IF report.live.empty»<p>By the log nothing is. Search all the same.</p>«ELSE»«live(report.live)»«ENDIF»
			<h2>Waiting times that are published <span class="aside">the law of the place, the permit and the maker come first</span></h2>
			<ul class="plain">«FOR time : WaitingTime.PUBLISHED»<li>«time.rule.text» <span class="small">«time.source.text»</span></li>«ENDFOR»</ul>
			<h2>Stock</h2>
			<table class="grid">
			<colgroup><col style="width: 34mm"/><col/><col style="width: 23mm"/><col style="width: 19mm"/><col style="width: 22mm"/><col style="width: 23mm"/><col style="width: 25mm"/></colgroup>
			<thead><tr><th>Lot</th><th>Of</th><th class="n">Before</th><th class="n">− drawn</th><th class="n">+ returned</th><th class="n">= on the shelf</th><th class="n">Drawn and live</th></tr></thead>
			<tbody>«FOR lot : report.stock»<tr><td><b>«lot.lot.text»</b></td><td>«lot.effect.text»</td><td class="n">«lot.before»</td><td class="n">«lot.drawn»</td><td class="n">«lot.returned»</td><td class="n"><b>«lot.after»</b></td><td class="n">«IF lot.live > 0»<b>«lot.live»</b>«ENDIF»</td></tr>«ENDFOR»</tbody>
			</table>
			«IF !report.notes.empty»
				<h2>Notes</h2>
				<table class="grid">
				<colgroup><col style="width: 13mm"/><col style="width: 46mm"/><col style="width: 26mm"/><col/></colgroup>
				<thead><tr><th class="n">Cue</th><th>What</th><th>Outcome</th><th>Note</th></tr></thead>
				<tbody>«FOR note : report.notes»<tr><td class="n">«note.cue»</td><td>«note.what.text»</td><td>«note.outcome.text»</td><td>«note.note.text»</td></tr>«ENDFOR»</tbody>
				</table>
			«ENDIF»
			«Page.signatures(#["Person in charge (name, date, time)", "Second person (name, date, time)", "Kept until (records are kept as long as the law asks)"])»
		''')
	}

	private def CharSequence live(List<AccountReport.LiveCue> cues) '''
		<table class="grid">
		<colgroup><col style="width: 13mm"/><col style="width: 17mm"/><col style="width: 20mm"/><col style="width: 23mm"/><col/><col style="width: 24mm"/><col style="width: 24mm"/><col style="width: 38mm"/></colgroup>
		<thead><tr><th class="n">Cue</th><th>Position</th><th>Tube</th><th>Pin</th><th>What</th><th>State</th><th>Time, note</th><th>Made safe how, by whom, when</th></tr></thead>
		<tbody>«FOR cue : cues»<tr><td class="n big">«cue.cue»</td><td class="big">«cue.position.text»</td><td><b>«cue.tube.text»</b></td><td>«cue.pin.text»</td><td>«cue.what.text»«IF cue.pieces > 1», «cue.pieces» pieces«ENDIF»</td><td><b>«cue.state.text»</b></td><td>«cue.time.text» «cue.note.text»</td><td><span class="write"></span></td></tr>«ENDFOR»</tbody>
		</table>
	'''
}
