package org.girandole.sheets.print.html

import org.eclipse.xtend.lib.annotations.Data
import org.girandole.sheets.print.values.AdrPoints
import org.girandole.sheets.print.values.Quantities
import org.girandole.sheets.print.values.Transport

import static extension org.girandole.sheets.print.html.Html.*

/** Sheet 7: what is carried, by hazard class. */
@Data
class TransportSheet {
	Page page

	def String html(Transport transport) {
		page.document("7", "Transport summary", "", "", "", '''
			«page.cautions(#["This is a summary from the script, not a transport document. The consignor classifies, packs, declares and answers for it. One igniter a firing is counted. Spare igniters, fuse and packing are not: the script does not describe them."])»
			«IF transport.total.withoutCharge > 0»<div class="alarm"><span class="word">«Quantities.count(transport.total.withoutCharge, "piece has", "pieces have").text» no stated charge.</span> Every sum with “at least” is too small by an unknown amount.</div>«ENDIF»
			<h2>By hazard class and UN number <span class="aside">charge is net explosive content</span></h2>
			<table class="grid">
			<colgroup><col style="width: 26mm"/><col style="width: 24mm"/><col/><col style="width: 17mm"/><col style="width: 44mm"/><col style="width: 15mm"/><col style="width: 29mm"/></colgroup>
			<thead><tr><th>Class</th><th>UN number</th><th>Shipping name</th><th class="n">Pieces</th><th class="n">Charge</th><th class="n">Factor</th><th class="n">Points</th></tr></thead>
			<tbody>
			«FOR line : transport.classes»
				<tr><td class="«IF line.hazardClass.length > 5»big«ELSE»huge«ENDIF»">«line.hazardClass.text»</td><td class="big">«line.unNumber.text»</td><td>«line.name.text»</td><td class="n big">«line.pieces»</td><td class="n big">«line.charge.text»«IF line.withoutCharge > 0»<div class="small">«line.withoutCharge» without stated charge</div>«ENDIF»</td><td class="n">«line.factor.text»</td><td class="n">«line.points.text»</td></tr>
			«ENDFOR»
			<tr class="part"><td colspan="3">All fireworks</td><td class="n big">«transport.total.pieces»</td><td class="n big">«transport.total.charge.text»</td><td></td><td></td></tr>
			«FOR line : transport.igniters»
				<tr><td class="big">«line.hazardClass.text»</td><td class="big">«line.unNumber.text»</td><td>«line.name.text»</td><td class="n big">«line.pieces»</td><td class="n big">«line.charge.text»</td><td class="n">«line.factor.text»</td><td class="n">«line.points.text»</td></tr>
			«ENDFOR»
			</tbody>
			</table>
			<div class="verdict"><div class="word">«transport.points.words.text»</div>
			<p>Points as in «AdrPoints.SOURCE.text», as information for carriage by road where that agreement applies: kilograms of net explosive mass times the factor, at most «AdrPoints.LIMIT» in one transport unit for the partial exemption. «IF !transport.points.complete»With data missing nothing can be said about an exemption.«ELSEIF transport.points.within»The sum alone does not exempt: the conditions of 1.1.3.6 apply, and so does everything else on the vehicle.«ELSE»Above the limit: the full provisions apply to a vehicle that carries all of it.«ENDIF» Check against the edition in force; other places have other rules.</p></div>
			<h2>By effect and igniter</h2>
			<table class="grid">
			<colgroup><col/><col style="width: 22mm"/><col style="width: 24mm"/><col style="width: 18mm"/><col style="width: 28mm"/><col style="width: 28mm"/></colgroup>
			<thead><tr><th>Effect</th><th>Class</th><th>UN number</th><th class="n">Pieces</th><th class="n">Charge, each</th><th class="n">Charge, all</th></tr></thead>
			<tbody>
			«FOR line : transport.effects.indexed»
				<tr«IF line.key % 2 == 1» class="shade"«ENDIF»><td><b>«line.value.label.text»</b></td><td>«line.value.hazardClass.text»</td><td>«line.value.unNumber.text»</td><td class="n big">«line.value.pieces»</td><td class="n">«line.value.each.text»</td><td class="n"><b>«line.value.charge.text»</b></td></tr>
			«ENDFOR»
			</tbody>
			</table>
			«Page.signatures(#["Consignor (name)", "Vehicle, driver", "Remarks"])»
		''')
	}
}
