package org.girandole.sheets.print.html

import java.util.List
import java.util.Optional
import org.eclipse.xtend.lib.annotations.Data
import org.girandole.sheets.print.values.NightReport

import static extension org.girandole.sheets.print.html.Html.*

/** Rehearsed nights on paper, one after the other. */
@Data
class NightSheet {
	Page page
	Optional<Long> syncUs

	def String html(List<NightReport> nights, List<String> sweep) {
		page.document("R", "Rehearsal", "", "a model controller on paper: what the real one does, its maker says", "", '''
			«page.cautions(#["A rehearsal says what a controller would do that behaves as the script says. It proves nothing about the hardware: try that with all modules off."])»
			«FOR night : nights»
				«night.one»
			«ENDFOR»
			«IF !sweep.empty»
				<h2>Where losing code hurts most</h2>
				<ul class="plain">«FOR line : sweep»<li>«line.text»</li>«ENDFOR»</ul>
			«ENDIF»
		''')
	}

	private def CharSequence one(NightReport report) {
		val picture = NightPicture.of(report.night, syncUs, page.paper.contentWidthMm)
		'''
			<h2>«report.night.name.text» <span class="aside">«report.night.soundtrack.script.label.text», slot «report.night.slot»</span></h2>
			«FOR alarm : report.alarms»<div class="alarm">«alarm.text»</div>«ENDFOR»
			«report.wrong.items»
			<div class="plan" style="width: «Svg.number(picture.widthMm)»mm; height: «Svg.number(picture.heightMm)»mm">«picture.drawing»«FOR word : picture.words»<div class="word" style="left: «Svg.number(word.xMm)»mm; top: «Svg.number(word.yMm)»mm">«word.text.text»</div>«ENDFOR»</div>
			<h3>What became of the cues</h3>
			«report.counts.items»
			«report.worst.items»
			<h3>What the audience would notice</h3>
			«report.audience.items»
			«IF !report.expectations.empty»
				<h3>What the script expects</h3>
				«report.expectations.map[line].items»
			«ENDIF»
			«IF !report.notFired.empty»
				<h3>Not fired: «report.notFired.size»</h3>
				<table class="grid">
				<colgroup><col style="width: 13mm"/><col/><col style="width: 16mm"/><col style="width: 20mm"/><col style="width: 26mm"/><col style="width: 20mm"/><col style="width: 50mm"/></colgroup>
				<thead><tr><th class="n">Cue</th><th>What</th><th>Position</th><th class="n">Due</th><th>Timecode</th><th>End</th><th>Why</th></tr></thead>
				<tbody>
				«FOR line : report.notFired»
					<tr><td class="n big">«line.cue»</td><td>«line.what.text»</td><td><b>«line.position.text»</b></td><td class="n">«line.due.text»</td><td>«line.timecode.text»</td><td>«line.end.text»</td><td class="small">«line.why.text»</td></tr>
				«ENDFOR»
				</tbody>
				</table>
				<h3>Left in the tubes and on the pins, for the misfire form</h3>
				<table class="grid">
				<colgroup><col style="width: 22mm"/><col/></colgroup>
				<thead><tr><th>Position</th><th>Tube: what, cue, module and pin</th></tr></thead>
				<tbody>
				«FOR place : report.tubes»
					<tr><td class="big">«place.position.text»</td><td>«FOR piece : place.left SEPARATOR '<br/>'»«piece.text»«ENDFOR»</td></tr>
				«ENDFOR»
				</tbody>
				</table>
			«ENDIF»
			«IF !report.farthest.empty»
				<h3>Fired farthest from their moments</h3>
				<table class="grid">
				<colgroup><col style="width: 13mm"/><col/><col style="width: 16mm"/><col style="width: 21mm"/><col style="width: 24mm"/><col style="width: 26mm"/><col style="width: 22mm"/><col style="width: 20mm"/></colgroup>
				<thead><tr><th class="n">Cue</th><th>What</th><th>Position</th><th class="n">Due</th><th class="n">Fired</th><th class="n">Off</th><th class="n">Clock error</th><th>State</th></tr></thead>
				<tbody>
				«FOR line : report.farthest»
					<tr><td class="n big">«line.cue»</td><td>«line.what.text»</td><td><b>«line.position.text»</b></td><td class="n">«line.due.text»</td><td class="n">«line.fired.text»</td><td class="n">«line.off.text»</td><td class="n">«line.clockError.text»</td><td>«line.state.text»</td></tr>
				«ENDFOR»
				</tbody>
				</table>
			«ENDIF»
			<h3>What the controller said</h3>
			<table class="grid">
			<colgroup><col style="width: 30mm"/><col style="width: 34mm"/><col/></colgroup>
			<thead><tr><th class="n">From</th><th>Timecode</th><th>State</th></tr></thead>
			<tbody>
			«FOR state : report.states»
				<tr><td class="n">«state.at.text»</td><td>«state.timecode.text»</td><td>«state.words.text»</td></tr>
			«ENDFOR»
			</tbody>
			</table>
		'''
	}

	private def CharSequence items(List<String> lines) '''
		<ul class="plain">«FOR line : lines»<li>«line.text»</li>«ENDFOR»</ul>
	'''
}
