package org.girandole.sheets.print.html

import org.eclipse.xtend.lib.annotations.Data
import org.girandole.sheets.print.values.CuttingList
import org.girandole.sheets.print.values.PullList
import org.girandole.sheets.print.values.Quantities

import static extension org.girandole.sheets.print.html.Html.*

/** Sheet 6: what leaves the store. */
@Data
class PullSheet {
	Page page

	def String html(PullList list) {
		page.document("6", "Pull list", "", "", "", '''
			«page.cautions(#[])»
			«IF list.shortLines > 0»<div class="alarm"><span class="word">«Quantities.count(list.shortLines, "effect is", "effects are").text» short of stock.</span> Do not replace one piece by another: the show is planned for the one named.</div>«ENDIF»
			«IF list.unknownLines > 0»<div class="alarm"><span class="word">For «Quantities.count(list.unknownLines, "effect", "effects").text» nobody has said what is in stock.</span> Count them before you promise them.</div>«ENDIF»
			«FOR kind : list.kinds»
				<h2>«kind.kind.toFirstUpper.text» <span class="aside">«Quantities.count(kind.lines.size, "effect", "effects")»</span></h2>
				<table class="grid">
				<colgroup><col style="width: 12mm"/><col/><col style="width: 20mm"/><col style="width: 17mm"/><col style="width: 22mm"/><col style="width: 17mm"/><col style="width: 52mm"/></colgroup>
				<thead><tr><th class="c">Pulled</th><th>Effect</th><th class="n">Calibre</th><th class="n">Need</th><th class="n">In stock</th><th class="n">Short</th><th>Take from lot</th></tr></thead>
				<tbody>
				«FOR line : kind.lines.indexed»
					<tr«IF line.key % 2 == 1» class="shade"«ENDIF»><td class="c"><span class="box"></span></td><td><b>«line.value.label.text»</b></td><td class="n">«line.value.calibre.text»</td><td class="n huge">«line.value.needed»</td><td class="n«IF !line.value.known» missing«ELSE» big«ENDIF»">«line.value.inStock.text»</td><td class="n huge">«IF line.value.missing > 0»«line.value.missing»«ELSEIF line.value.known»0«ELSE»?«ENDIF»</td><td>«IF line.value.lots.empty»no lot named«ENDIF»«FOR lot : line.value.lots SEPARATOR '<br/>'»<b>«lot.lot.text»</b>: take «lot.take» of «lot.has»«IF lot.shortOf» <b>TOO FEW</b>«ENDIF»«ENDFOR»</td></tr>
				«ENDFOR»
				</tbody>
				</table>
			«ENDFOR»
			<h2>Igniters</h2>
			<table class="grid">
			<colgroup><col style="width: 12mm"/><col style="width: 45mm"/><col style="width: 30mm"/><col/></colgroup>
			<thead><tr><th class="c">Pulled</th><th>Type</th><th class="n">Need, without spares</th><th>For position</th></tr></thead>
			<tbody>«FOR igniter : list.igniters»<tr><td class="c"><span class="box"></span></td><td><b>«igniter.type.text»</b></td><td class="n huge">«igniter.needed»</td><td>«igniter.where.text»</td></tr>«ENDFOR»</tbody>
			</table>
			<h2>By position</h2>
			<table class="grid">
			<colgroup><col style="width: 12mm"/><col style="width: 34mm"/><col/><col style="width: 20mm"/></colgroup>
			<thead><tr><th class="c">Packed</th><th>Position</th><th>What goes there</th><th class="n">Pieces</th></tr></thead>
			<tbody>«FOR crate : list.crates»
				<tr><td class="c"><span class="box"></span></td><td class="huge">«crate.position.text»</td><td>«FOR line : crate.lines SEPARATOR '<br/>'»<b>«line.pieces» ×</b> «line.label.text»«ENDFOR»</td><td class="n huge">«crate.pieces»</td></tr>«ENDFOR»
			</tbody>
			</table>
			<h2>Racks and modules</h2>
			<table class="grid">
			<colgroup><col style="width: 12mm"/><col style="width: 45mm"/><col/><col style="width: 34mm"/></colgroup>
			<thead><tr><th class="c">Pulled</th><th>What</th><th>Facts</th><th>For position</th></tr></thead>
			<tbody>«FOR gear : list.gear»
				<tr><td class="c"><span class="box"></span></td><td><b>«gear.what.text»</b></td><td>«gear.facts.text»</td><td class="big">«gear.position.text»</td></tr>«ENDFOR»
			</tbody>
			</table>
			«list.leads.cutting»
			«Page.signatures(#["Pulled by (name, time)", "Counted by a second person (name, time)", "Remarks"])»
		''')
	}

	private def CharSequence cutting(CuttingList leads) '''
		<h2>Lead cutting list <span class="aside">«leads.total.text»</span></h2>
		«IF !leads.missing.empty»<div class="alarm"><span class="word">This list is not whole.</span> «leads.missing.text» More wire is needed than it says.</div>«ENDIF»
		<p class="how">Wire: <b>«leads.wire.text»</b>, twin. Lengths are one way, from the module to the tube, slack included, rounded up to the metre; igniters that share a pin share its lead. What joins them to one another, spare leads and waste are not counted. Mark both ends with the pin before laying.</p>
		<table class="grid">
		<colgroup><col style="width: 12mm"/><col style="width: 28mm"/><col style="width: 20mm"/><col style="width: 18mm"/><col/><col style="width: 22mm"/></colgroup>
		<thead><tr><th class="c">Cut</th><th>Position</th><th class="n">Length</th><th class="n">Leads</th><th>For pins</th><th class="n">Wire</th></tr></thead>
		<tbody>
		«FOR line : leads.lines.indexed»
			<tr«IF line.key % 2 == 1» class="shade"«ENDIF»><td class="c"><span class="box"></span></td><td class="big">«line.value.position.text»</td><td class="n huge">«line.value.length.text»</td><td class="n huge">«line.value.leads»</td><td>«line.value.pins.text»</td><td class="n">«line.value.wire.text»</td></tr>
		«ENDFOR»
		</tbody>
		</table>
		«IF leads.lines.empty»<p class="missing">No lead has a known length.</p>«ENDIF»
		«IF !leads.sums.empty»
			<p class="keep">By position: «FOR sum : leads.sums SEPARATOR '; '»<b>«sum.position.text»</b> «Quantities.count(sum.leads, "lead", "leads")», «sum.wire.text»«ENDFOR».</p>
		«ENDIF»
	'''
}
