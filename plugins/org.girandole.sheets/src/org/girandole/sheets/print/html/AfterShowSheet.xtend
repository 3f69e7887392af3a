package org.girandole.sheets.print.html

import org.eclipse.xtend.lib.annotations.Data
import org.girandole.sheets.print.values.AfterShow

import static extension org.girandole.sheets.print.html.Html.*

/** Sheet 11: what fired, what did not, what is still in a tube. */
@Data
class AfterShowSheet {
	static val BLANK_ROWS = 6

	Page page
	boolean severalSlots

	def String html(AfterShow form) {
		page.document("11", "Misfires and after the show", "", "", "", '''
			«page.cautions(#["What did not fire is live. Nobody goes near it before the waiting time has ended and the person in charge has gone first. Never relight, never look into a tube, never pull at an igniter."])»
			<h2>What happened</h2>
			<table class="sign">
			<tr><td>First cue fired at (time)</td><td>Last cue fired at (time)</td><td>Modules off, keys out (time)</td><td>Waiting time ended (time)</td></tr>
			<tr><td>Wind at start, at end</td><td>Hold-to-fire released at (timecode)</td><td>Timecode lost at (timecode)</td><td>Injury, damage, fire: no / yes, see report</td></tr>
			<tr><td>First search by (name, time)</td><td>Second search by (name, time)</td><td>Area given back to (name, time)</td><td>Pieces destroyed or taken home</td></tr>
			</table>
			<h2>Misfires and duds <span class="aside">one line each</span></h2>
			<table class="grid">
			<colgroup><col style="width: 18mm"/><col style="width: 30mm"/><col/><col style="width: 34mm"/><col style="width: 30mm"/></colgroup>
			<thead><tr><th>Cue</th><th>Where found</th><th>What was seen</th><th>Made safe how, when</th><th>By (name)</th></tr></thead>
			<tbody>
			«FOR i : 1 .. BLANK_ROWS»
				<tr><td><span class="write"></span></td><td><span class="write"></span></td><td><span class="write"></span></td><td><span class="write"></span></td><td><span class="write"></span></td></tr>
			«ENDFOR»
			</tbody>
			</table>
			«FOR part : form.positions»
				<h2>Position «part.position.text» <span class="aside">tick one box on every line; “not sure” counts as not fired until somebody has looked</span></h2>
				<table class="grid">
				<colgroup><col style="width: 15mm"/><col style="width: 24mm"/><col/><col style="width: 24mm"/><col style="width: 13mm"/><col style="width: 15mm"/><col style="width: 15mm"/><col style="width: 36mm"/></colgroup>
				<thead><tr><th class="n">Cue</th><th>Rack · tube</th><th>What</th><th>Module · pin</th><th class="c">Fired</th><th class="c">Not fired</th><th class="c">Not sure</th><th>Remark</th></tr></thead>
				<tbody>
				«FOR line : part.lines.indexed»
					<tr«IF line.key % 2 == 1» class="shade"«ENDIF»><td class="n big">«line.value.cue»</td><td><b>«line.value.tube.text»</b></td><td>«line.value.what.text»«IF line.value.pieces > 1» (chain of «line.value.pieces»: fired, how many? ____)«ENDIF»«IF severalSlots» <span class="small">slot «line.value.slot»</span>«ENDIF»</td><td>«line.value.pin.text»</td><td class="c"><span class="box"></span></td><td class="c"><span class="box"></span></td><td class="c"><span class="box"></span></td><td><span class="write"></span></td></tr>
				«ENDFOR»
				</tbody>
				</table>
			«ENDFOR»
			«Page.signatures(#["Person in charge (name, time)", "Second person (name, time)", "Kept until (records are kept as long as the law asks)"])»
		''')
	}
}
