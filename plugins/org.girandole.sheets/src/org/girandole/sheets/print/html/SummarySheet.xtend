package org.girandole.sheets.print.html

import java.util.List
import org.eclipse.xtend.lib.annotations.Data
import org.girandole.sheets.print.values.Head
import org.girandole.sheets.print.values.Notice
import org.girandole.sheets.print.values.Quantities
import org.girandole.sheets.print.values.Summary

import static extension org.girandole.sheets.print.html.Html.*
import static extension org.girandole.sheets.print.html.Page.notices

/** Sheet 1: what the show is, how it stands, what was agreed. */
@Data
class SummarySheet {
	static val COLUMNS = 3

	Page page
	Head head

	def String html(Summary summary, List<String> otherSheets) {
		page.document("1", "Summary and checks", "", "", "", '''
			«page.cautions(#[])»
			«verdict»
			«IF !head.standing.gaps.empty»
				<h2>What is not known</h2>
				<ul class="plain">
				«FOR gap : head.standing.gaps»
					<li><span class="box small"></span> <b>«gap.what.text»</b>: «gap.count» (first: «gap.of.text»)</li>
				«ENDFOR»
				</ul>
			«ENDIF»
			<h2>The show</h2>
			<table class="facts">
			«FOR pair : summary.facts.indexed.filter[key % 2 == 0].map[summary.facts.subList(key, Math.min(key + 2, summary.facts.size))]»
				<tr>«FOR fact : pair»<td class="name">«fact.name.text»</td><td class="value">«fact.value.text»</td>«ENDFOR»«IF pair.size == 1»<td class="name"></td><td class="value"></td>«ENDIF»</tr>
			«ENDFOR»
			</table>
			<table class="grid">
			<colgroup><col style="width: 12mm"/><col/><col style="width: 20mm"/><col style="width: 24mm"/><col style="width: 24mm"/><col style="width: 22mm"/><col style="width: 14mm"/><col style="width: 22mm"/><col style="width: 22mm"/></colgroup>
			<thead><tr><th>Slot</th><th>Soundtrack</th><th>Timecode</th><th>Starts at</th><th>First note at</th><th class="n">Length</th><th class="n">Cues</th><th class="n">First fires</th><th class="n">Last fires</th></tr></thead>
			<tbody>
			«FOR track : summary.tracks»
				<tr><td class="huge">«track.slot»</td><td>«track.name.text»</td><td>«track.rate.text»</td><td>«track.start.text»</td><td>«track.firstNote.text»</td><td class="n">«track.length.text»</td><td class="n big">«track.cues»</td><td class="n">«track.firstFire.text»</td><td class="n">«track.lastFire.text»</td></tr>
			«ENDFOR»
			</tbody>
			</table>
			«block("Unresolved errors", summary.errors, "None was found by the checks of this version.")»
			«block("Agreed risks", summary.agreed, "None.")»
			«block("Warnings", summary.warnings, "None was found by the checks of this version.")»
			«IF !summary.notes.empty»«block("Notes", summary.notes, "")»«ENDIF»
			<h2>Sheets of this release</h2>
			<p>Two sheets belong together only if both say release <b>«head.stamp.text»</b>.</p>
			<table class="facts">
			«FOR row : otherSheets.inColumns»
				<tr>«FOR sheet : row»<td>«sheet.text»</td>«ENDFOR»</tr>
			«ENDFOR»
			</table>
			«Page.signatures(#["Made by (name, licence)", "Reviewed by (name, date)", "Authority having jurisdiction"])»
			<p class="small">Made with Girandole «head.toolVersion.text». The checks see what the script says. They do not see weather, ground, workmanship or age of the goods.</p>
		''')
	}

	private def CharSequence block(String title, List<Notice> found, String none) '''
		<h2>«title.text» <span class="aside">«IF !found.empty»«found.size»«ENDIF»</span></h2>
		«IF found.empty»<p>«none.text»</p>«ELSE»«found.notices»«ENDIF»
	'''

	/** Read down the first column, then down the next; rows are filled up with empty words. */
	private static def List<List<String>> inColumns(List<String> words) {
		val rows = (words.size + COLUMNS - 1) / COLUMNS;
		(0 ..< rows).map[row|(0 ..< COLUMNS).map[words.at(it * rows + row)].toList].toList
	}

	private static def String at(List<String> words, int index) {
		if(index < words.size) words.get(index) else ""
	}

	private def CharSequence verdict() {
		val standing = head.standing
		val counted = '''«Quantities.count(standing.errors, "unresolved error", "unresolved errors")», «Quantities.count(standing.warnings, "warning", "warnings")», «Quantities.count(standing.waived, "agreed risk", "agreed risks")», «Quantities.count(standing.gaps.size, "kind of data", "kinds of data")» missing.'''
		switch standing.verdict {
			case ERRORS: '''<div class="verdict errors"><div class="word">NOT CLEAN. Do not fire from this release.</div><p>«counted»</p></div>'''
			case DATA_MISSING: '''<div class="verdict"><div class="word">NOT CLEAN. Data is missing.</div><p>«counted» No unresolved error was found in what could be looked at; the rest could not be looked at.</p></div>'''
			case NO_ERRORS_FOUND: '''<div class="verdict"><div class="word">No unresolved error was found.</div><p>«counted» That is not permission to fire: see the cautions above.</p></div>'''
		}
	}
}
