package org.girandole.sheets.print.html

import com.google.common.collect.Lists
import java.util.List
import org.eclipse.xtend.lib.annotations.Data
import org.girandole.sheets.print.values.PositionLoad
import org.girandole.sheets.print.values.PositionLoad.RackLoad
import org.girandole.sheets.print.values.PositionLoad.TubeLoad
import org.girandole.sheets.print.values.Quantities

import static extension org.girandole.sheets.print.html.Html.*

/** Sheet 4: what one position's crew loads, from this paper alone. */
@Data
class PositionSheet {
	static val LABEL_MM = 12.0
	static val WIDEST_TUBE_MM = 24.0
	static val TUBES_A_LINE = 11

	Page page
	boolean severalSlots

	def String html(PositionLoad load) {
		page.document("4", '''Position «load.position»''', load.position, '''«Quantities.count(load.racks.filter[used].size, "rack", "racks")» to load, «Quantities.count(load.loadedTubes, "tube", "tubes")», «Quantities.count(load.ground.size, "ground piece", "ground pieces")»«IF !load.modules.empty» · wired to «load.modules.join(", ")»«ENDIF»''', "", '''
			«page.cautions(#[])»
			«IF !load.unplaced.empty»
				<div class="alarm"><span class="word">«Quantities.count(load.unplaced.size, "cue", "cues")» cannot be loaded from this sheet. Stop and ask.</span>
				<ul class="plain">«FOR each : load.unplaced»<li>Cue «each.cue», «each.what.text»: «each.why.text»</li>«ENDFOR»</ul></div>
			«ENDIF»
			<div class="line-kind"><span class="word">Stand behind the racks and face the audience.</span><br/>Tube 1 is at your LEFT. The drawings show the racks as you see them from there. Left and right always mean yours. Never lean over a tube.</div>
			«FOR rack : load.racks»
				«rack.rackBlock»
			«ENDFOR»
			«IF !load.ground.empty»
				<h2>On the ground <span class="aside">these bring their own tubes or need none</span></h2>
				<table class="grid">
				<colgroup><col style="width: 11mm"/><col style="width: 16mm"/><col/><col style="width: 42mm"/><col style="width: 24mm"/><col style="width: 22mm"/></colgroup>
				<thead><tr><th class="c">Done</th><th class="n">Cue</th><th>What</th><th>Set it</th><th>Module · pin</th><th>Lot</th></tr></thead>
				<tbody>
				«FOR piece : load.ground.indexed»
					<tr«IF piece.key % 2 == 1» class="shade"«ENDIF»><td class="c"><span class="box"></span></td><td class="n huge">«piece.value.cue»</td><td><b>«piece.value.what.text»</b> <span class="small">«piece.value.kind.text»«IF !piece.value.facts.empty», «piece.value.facts.text»«ENDIF»«piece.value.slot.slotWords»</span></td><td>«piece.value.lean.words.text»</td><td class="big">«piece.value.pin.text»</td><td class="small">«IF piece.value.lot.empty»any«ELSE»«piece.value.lot.text»«ENDIF»</td></tr>
				«ENDFOR»
				</tbody>
				</table>
			«ENDIF»
			«IF load.racks.empty && load.ground.empty»<p class="missing">Nothing is loaded at this position.</p>«ENDIF»
			«IF !load.notices.empty»
				<h2>Found about this position</h2>
				«Page.notices(load.notices)»
			«ENDIF»
			«Page.signatures(#["Loaded by (name, time)", "Checked by a second person (name, time)", "Remarks"])»
		''')
	}

	private def CharSequence rackBlock(RackLoad rack) '''
		<h2>Rack «rack.name.text» <span class="aside">«rack.facts.text»«IF !rack.used» · stays empty«ENDIF»</span></h2>
		«IF rack.used»
			«FOR line : rack.tubes.inLines.filter[exists[!loads.empty]]»
				«line.picture»
			«ENDFOR»
			<table class="grid">
			<colgroup><col style="width: 11mm"/><col style="width: 13mm"/><col style="width: 16mm"/><col/><col style="width: 42mm"/><col style="width: 24mm"/><col style="width: 22mm"/></colgroup>
			<thead><tr><th colspan="7" class="big">Rack «rack.name.text»</th></tr><tr><th class="c">Done</th><th class="c">Tube</th><th class="n">Cue</th><th>Load</th><th>Set the tube</th><th>Module · pin</th><th>Lot</th></tr></thead>
			<tbody>
			«FOR tube : rack.tubes.filter[!loads.empty].indexed»
				«tube.value.rows(tube.key % 2 == 1, rack.fixedFan)»
			«ENDFOR»
			«IF !rack.empty.empty»
				<tr><td></td><td colspan="6"><b>Leave empty: «rack.empty.text»</b></td></tr>
			«ENDIF»
			</tbody>
			</table>
		«ENDIF»
	'''

	private def CharSequence rows(TubeLoad tube, boolean shade, boolean fixedFan) '''
		«FOR load : tube.loads»
			<tr«IF shade» class="shade"«ENDIF»><td class="c"><span class="box"></span></td><td class="c huge">«tube.number»</td><td class="n huge">«load.cue»</td><td>«IF tube.loads.size > 1»<b>«tube.loads.size» CUES WANT THIS TUBE.</b> «ENDIF»<b>«load.effect.text»</b> <span class="small">«load.kind.text», «load.calibre.text»«IF !load.chainPart.empty», chain item «load.chainPart.text»«ENDIF»«load.slot.slotWords»</span></td><td>«load.lean.words.text»«IF fixedFan» <span class="small">(the rack is fixed)</span>«ENDIF»</td><td class="big">«load.pin.text»</td><td class="small">«IF load.lot.empty»any«ELSE»«load.lot.text»«ENDIF»</td></tr>
		«ENDFOR»
	'''

	private def CharSequence picture(List<TubeLoad> tubes) {
		val cell = Math.min(WIDEST_TUBE_MM, (page.paper.contentWidthMm - LABEL_MM - 1) / tubes.size)
		'''
			<table class="rack" style="width: «(LABEL_MM + cell * tubes.size).mm»">
			<colgroup><col style="width: «LABEL_MM.mm»"/>«FOR tube : tubes»<col style="width: «cell.mm»"/>«ENDFOR»</colgroup>
			<tr><td class="label"></td><td class="picture" colspan="«tubes.size»">«RackPicture.svg(tubes, cell)»</td></tr>
			<tr><td class="label">tube</td>«FOR tube : tubes»<td class="tube">«tube.number»</td>«ENDFOR»</tr>
			<tr><td class="label"><b>cue</b></td>«FOR tube : tubes»<td class="cue«IF tube.loads.size > 1 || (tube.loads.exists[cue > 999] && cell < 16)» many«ENDIF»«IF tube.loads.empty» empty«ENDIF»">«FOR load : tube.loads SEPARATOR '<br/>'»«load.cue»«ENDFOR»</td>«ENDFOR»</tr>
			<tr><td class="label">set</td>«FOR tube : tubes»<td class="lean«IF tube.loads.empty» empty«ENDIF»">«FOR load : tube.loads SEPARATOR '<br/>'»«load.lean.mark.text»«ENDFOR»</td>«ENDFOR»</tr>
			<tr><td class="label">load</td>«FOR tube : tubes»<td«IF tube.loads.empty» class="empty"«ENDIF»>«IF tube.loads.empty»empty«ENDIF»«FOR load : tube.loads SEPARATOR '<br/>'»«load.effect.text»«IF !load.chainPart.empty»<br/>«load.chainPart.text»«ENDIF»«ENDFOR»</td>«ENDFOR»</tr>
			<tr><td class="label">pin</td>«FOR tube : tubes»<td«IF tube.loads.empty» class="empty"«ENDIF»>«FOR load : tube.loads SEPARATOR '<br/>'»<b>«load.pin.text»</b>«ENDFOR»</td>«ENDFOR»</tr>
			</table>
		'''
	}

	/** Lines of about equal length, none longer than paper allows. */
	private static def List<List<TubeLoad>> inLines(List<TubeLoad> tubes) {
		val lines = (tubes.size + TUBES_A_LINE - 1) / TUBES_A_LINE
		Lists.partition(tubes, (tubes.size + lines - 1) / lines)
	}

	private def String slotWords(int slot) {
		if(severalSlots) ''', slot «slot»''' else ""
	}

	private static def String mm(double value) {
		Svg.number(value) + "mm"
	}
}
