package org.girandole.sheets.print.html

import org.eclipse.xtend.lib.annotations.Data
import org.girandole.plan.fallout.FalloutAreas
import org.girandole.plan.rules.distance.SiteInWind.State
import org.girandole.plan.rules.distance.WindTable
import org.girandole.sheets.print.values.Quantities
import org.girandole.sheets.print.values.SiteMap
import org.girandole.sheets.print.values.SiteMap.Kind

import static extension org.girandole.sheets.print.html.Html.*

/** Sheet 8: the site from above, to scale, with what is asked and what is there. */
@Data
class SiteSheet {
	Page page

	def String html(SiteMap map) {
		val picture = SitePicture.of(map, page.paper.contentWidthMm)
		page.document("8", "Site plan", '''1 : «picture.scale»''', map.site, "", '''
			«page.cautions(#["Measure on the ground before anything is set up. The drawing is only as right as the coordinates in the script. The area that must be clear is agreed on the site, with the wind of the night: the fallout drawn here is computed for the wind of the script."])»
			«IF map.otherWind»<div class="alarm"><span class="word">This is another wind than that of the script.</span> The release named above was made for the wind of its script.</div>«ENDIF»
			«IF !map.unchecked.empty»<div class="alarm"><span class="word">Not checked, and therefore not known to be clean:</span>
			<ul class="plain">«FOR what : map.unchecked»<li>«what.text»</li>«ENDFOR»</ul></div>«ENDIF»
			<div class="plan" style="width: «Svg.number(picture.widthMm)»mm; height: «Svg.number(picture.heightMm)»mm">«picture.drawing»«FOR word : picture.words»<div class="word«IF word.big» spot«ENDIF»" style="left: «Svg.number(word.xMm)»mm; top: «Svg.number(word.yMm)»mm">«word.text.text»</div>«ENDFOR»</div>
			<p class="small">N is +y of the script, from which winds and leans are counted. Dot: position; figure beside it: its largest calibre in mm. Thin line with bars: a distance to check with a ruler. Heavy line: audience. Dash-dot: boundary. Dashed and dark: «IF map.outlines.exists[kind === Kind.PROTECTED]»protected place«ELSE»protected place (none here)«ENDIF». Dotted circle: the largest number of metres that the table asks from that position towards the audience; no circle means that there is no number. Grey with a broken edge: where 99, 90 and 50 of 100 shells that do not burst, and as many pieces of debris, come down; the rest comes down outside. Mines, comets, candles, cakes and rockets are not part of it. «IF map.wind.present»Black arrow: where the wind goes, «map.wind.get.words.text».«ELSE»No wind: the script states none that can be meant.«ENDIF» Scale 1 : «picture.scale» when printed without shrinking; the bar is «picture.barM» m long.</p>
			<h2>Positions</h2>
			<table class="grid">
			<colgroup><col style="width: 20mm"/><col/><col style="width: 20mm"/><col style="width: 15mm"/><col style="width: 26mm"/><col style="width: 34mm"/><col style="width: 34mm"/></colgroup>
			<thead><tr><th>Position</th><th>Where</th><th class="n">Largest calibre</th><th class="n">Pieces</th><th class="n">Charge</th><th class="n">99 of 100 unburst shells within</th><th class="n">99 of 100 pieces of debris within</th></tr></thead>
			<tbody>
			«FOR spot : map.spots»
				<tr><td class="big">«spot.name.text»</td><td>«spot.place.text»</td><td class="n">«spot.calibre.text»</td><td class="n">«spot.pieces»</td><td class="n">«spot.charge.text»</td><td class="n big">«spot.unburst.text»</td><td class="n big">«spot.debris.text»</td></tr>
			«ENDFOR»
			</tbody>
			</table>
			«IF !map.falloutUnknown.empty»
				<div class="alarm"><span class="word">Where these come down is not known, and not drawn:</span>
				<ul class="plain">«FOR unknown : map.falloutUnknown»<li>«unknown.text»</li>«ENDFOR»</ul></div>
			«ENDIF»
			<h2>Wind <span class="aside">how much of it is clean, by the rules about distances and fallout</span></h2>
			«IF map.bears.present»
				<p><b>«map.bears.get.sentence.text»</b> Measured 2 m above the ground, from «Quantities.degrees(map.bears.get.fromDeg).text», steady; «FalloutAreas.SAMPLES» computed flights of each kind.«IF map.bears.get.waived» “waived”: clean but for what somebody agreed to, which counts here in every wind, whatever wind they thought of.«ENDIF»</p>
				<table class="grid">
				<colgroup><col style="width: 14mm"/><col style="width: 26mm"/>«FOR speed : WindTable.SPEEDS_MPS»<col/>«ENDFOR»</colgroup>
				<thead><tr><th>m/s</th><th class="n">Clean up to</th>«FOR speed : WindTable.SPEEDS_MPS»<th class="c">«speed»</th>«ENDFOR»</tr></thead>
				<tbody>
				«FOR row : map.bears.get.rows»
					<tr><td class="big">«row.position.text»</td><td class="n big">«row.upTo.text»</td>«FOR state : row.states»<td class="c small">«IF state === State.NOT_CLEAN»<b>«state.word.text»</b>«ELSE»«state.word.text»«ENDIF»</td>«ENDFOR»</tr>
				«ENDFOR»
				</tbody>
				</table>
			«ELSE»
				<p class="missing">How much wind it bears is not known: the script does not say, in a way that can be meant, where the wind comes from; or nothing is fired.</p>
			«ENDIF»
			<h2>Distances <span class="aside">«map.table.text»</span></h2>
			«IF map.looked»
				<table class="grid">
				<colgroup><col style="width: 18mm"/><col style="width: 34mm"/><col style="width: 21mm"/><col style="width: 34mm"/><col style="width: 14mm"/><col/></colgroup>
				<thead><tr><th>From</th><th>To</th><th class="n">There is</th><th class="n">Table asks</th><th class="c">Met</th><th>For which cue, by which rule</th></tr></thead>
				<tbody>
				«FOR line : map.distances.indexed»
					<tr«IF line.key % 2 == 1» class="shade"«ENDIF»><td class="big">«line.value.position.text»</td><td>«IF line.value.audience»audience «ENDIF»<b>«line.value.place.text»</b></td><td class="n big">«line.value.found.text»</td><td class="n"><b>«line.value.asked.text»</b></td><td class="c"><b>«IF line.value.holds»yes«ELSE»NO«ENDIF»</b></td><td class="small">cue «line.value.cue.text»<br/>«line.value.basis.text»</td></tr>
				«ENDFOR»
				</tbody>
				</table>
				«IF map.distances.empty»<p class="missing">Nothing was compared: there is no audience line, no protected place, or nothing is fired from where a distance can be computed.</p>«ENDIF»
				<p>One line a position and place, for the cue that asks most. “Met” compares two numbers; it does not make a place safe. Always the largest of table, maker, authority and local law counts.</p>
			«ELSE»
				<p class="missing">No distance was looked at.</p>
			«ENDIF»
			«IF !map.notices.empty»
				<h2>Found about distances</h2>
				«Page.notices(map.notices)»
			«ENDIF»
			«Page.signatures(#["Measured on the ground by (name, time)", "Area agreed with (authority, name)", "Remarks"])»
		''')
	}
}
