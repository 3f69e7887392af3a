package org.girandole.sheets.print.html

import com.google.common.collect.Lists
import org.eclipse.xtend.lib.annotations.Data
import org.girandole.sheets.print.values.Quantities
import org.girandole.sheets.print.values.SharedPin
import org.girandole.sheets.print.values.WiringRows
import org.girandole.sheets.print.values.WiringRows.PinRow

import static extension org.girandole.sheets.print.html.Html.*

/** Sheet 5: what is wired to one module and what the meter should show. */
@Data
class WiringSheet {
	static val PINS_A_LINE = 8
	static val WIDEST_IGNITER_MM = 22.0
	/** Columns narrower than this have no room for large numbers. */
	static val NARROW_MM = 16
	/** What the frame takes of the paper's width. */
	static val PADDING_MM = 8

	Page page
	boolean severalSlots

	def String html(WiringRows wiring) {
		page.document("5", '''Wiring of module «wiring.module»''', wiring.module, '''address «wiring.address» · stands at «wiring.positions» · «wiring.facts.join(", ")»''', "2.2pt solid #000", '''
			«page.cautions(#["Nobody is near connected fireworks during any continuity test. Test only with the module's own test or a meter whose current stays below the igniters' no-fire current with its margin."])»
			<div class="line-kind"><span class="word">FIRING LINE. Igniters only.</span><br/>This sheet has a solid frame. Nothing from the sound desk is ever plugged in here, even where the plug fits: the timecode has a sheet of its own with a dashed frame. Module off and key out while wiring.</div>
			«IF !wiring.known»<div class="alarm"><span class="word">The type of this module is not described.</span> Its free pins, drive and test current are not known. Stop and ask.</div>«ENDIF»
			<h2>Pins in use <span class="aside">«wiring.used.size» of «wiring.pins.size», «Quantities.count(wiring.igniters, "igniter", "igniters").text» · find each pin by its number on the module</span></h2>
			<table class="pins">
			«FOR line : Lists.partition(wiring.pins, PINS_A_LINE)»
				<tr>«FOR pin : line»«pin.cell»«ENDFOR»«FOR i : line.size ..< PINS_A_LINE»<td class="blank"></td>«ENDFOR»</tr>
			«ENDFOR»
			</table>
			<h2>Wire and measure <span class="aside">module's test current «wiring.testCurrent.text»</span></h2>
			<table class="grid">
			<colgroup><col style="width: 12mm"/><col style="width: 15mm"/><col/><col style="width: 26mm"/><col style="width: 15mm"/><col style="width: 13mm"/><col style="width: 18mm"/><col style="width: 22mm"/><col style="width: 21mm"/><col style="width: 10mm"/></colgroup>
			<thead><tr><th class="c">Pin</th><th class="n">Cue</th><th>What</th><th>Where</th><th class="n">Lead</th><th class="c">Igniters</th><th class="n">Expect Ω</th><th class="c">Good if within Ω</th><th>Measured Ω</th><th class="c">OK</th></tr></thead>
			<tbody>
			«FOR pin : wiring.used.indexed»
				<tr«IF pin.key % 2 == 1» class="shade"«ENDIF»>
				<td class="c huge">«pin.value.pin»«IF pin.value.beyond»<div class="small">NO SUCH PIN</div>«ENDIF»</td>
				<td class="n big">«FOR cue : pin.value.cues SEPARATOR '<br/>'»«cue.cue»«ENDFOR»</td>
				<td>«FOR cue : pin.value.cues SEPARATOR '<br/>'»«cue.what.text»«IF severalSlots» <span class="small">slot «cue.slot»</span>«ENDIF»«ENDFOR»</td>
				<td>«FOR cue : pin.value.cues SEPARATOR '<br/>'»<b>«cue.position.text»</b> «cue.tube.text»«ENDFOR»</td>
				<td class="n">«pin.value.lead.text»</td><td class="c">«pin.value.igniters»</td>
				<td class="n big">«pin.value.ohm.text»</td><td class="c">«pin.value.band.text»</td><td><span class="write"></span></td><td class="c"><span class="box"></span></td></tr>
			«ENDFOR»
			</tbody>
			</table>
			«IF wiring.used.empty»<p class="missing">Nothing is wired to this module.</p>«ENDIF»
			«IF !wiring.shared.empty»
				<h2>Joined on one pin <span class="aside">«Quantities.count(wiring.shared.size, "pin", "pins").text» with more than one igniter; the two terminals are at the left, a dot is a joint</span></h2>
				«FOR shared : wiring.shared»
					«shared.drawing»
				«ENDFOR»
			«ENDIF»
			<p>Lead is the length one way. A reading outside the band means that something is wrong: a bad joint, an igniter too many or too few, a short or a damaged lead. No reading means an open loop. Never wire around a bad reading: mark it and call the person in charge.</p>
			«IF !wiring.notices.empty»
				<h2>Found about this module</h2>
				«Page.notices(wiring.notices)»
			«ENDIF»
			«Page.signatures(#["Wired by (name, time)", "Measured by (name, meter, time)", "Remarks"])»
		''')
	}

	private def CharSequence cell(PinRow pin) '''
		«IF pin.cues.empty»<td class="free"><div class="pin">pin «pin.pin»</div>free</td>«ELSE»<td><div class="pin">pin «pin.pin»</div>cue<div class="cue">«FOR cue : pin.cues SEPARATOR '<br/>'»«cue.cue»«ENDFOR»</div>«pin.cues.map[position].toSet.join(", ").text»</td>«ENDIF»
	'''

	private def CharSequence drawing(SharedPin shared) {
		val cell = Math.min(WIDEST_IGNITER_MM, (page.paper.contentWidthMm - PADDING_MM - JoinPicture.LEAD_MM) / shared.igniters.size)
		'''
			<div class="keep">
			<p><b>Pin «shared.pin».</b> «shared.words.text»</p>
			<table class="rack" style="width: «(JoinPicture.LEAD_MM + cell * shared.igniters.size).mm»">
			<colgroup><col style="width: «JoinPicture.LEAD_MM.mm»"/>«FOR igniter : shared.igniters»<col style="width: «cell.mm»"/>«ENDFOR»</colgroup>
			«IF shared.join.present»<tr><td class="picture" colspan="«shared.igniters.size + 1»">«JoinPicture.svg(shared.join.get, shared.igniters.size, cell)»</td></tr>«ENDIF»
			<tr><td class="label"><b>pin «shared.pin», cue</b></td>«FOR igniter : shared.igniters»<td class="cue«IF cell < NARROW_MM» many«ENDIF»">«igniter.cue»</td>«ENDFOR»</tr>
			<tr><td class="label">where</td>«FOR igniter : shared.igniters»<td><b>«igniter.position.text»</b> «igniter.tube.text»</td>«ENDFOR»</tr>
			</table>
			</div>
		'''
	}

	private static def String mm(double millimetres) {
		Svg.number(millimetres) + "mm"
	}
}
