package org.girandole.sheets.print.html

import org.eclipse.xtend.lib.annotations.Data
import org.girandole.sheets.print.values.ShooterRows

import static extension org.girandole.sheets.print.html.Html.*

/** Sheet 13: what the shooter does when timecode fails. */
@Data
class ShooterSheet {
	Page page

	def String html(ShooterRows rows) {
		page.document("13", '''When timecode fails, slot «rows.slot»''', '''slot «rows.slot»''', '''«rows.soundtrack» · for the shooter, beside the running sheet''', "", '''
			«page.cautions(#["Computed with a model of the controller, from what the script says of it. Try it with all modules off, and write down what yours shows and sounds like."])»
			<div class="line-kind"><span class="word">IN DOUBT, LET GO.</span> A cue that is not fired stays in its tube and can be dealt with afterwards. A cue at the wrong moment cannot be taken back.</div>
			<h2>What the controller says <span class="aside">common practice, no source; the maker's words come first</span></h2>
			<table class="grid">
			<colgroup><col style="width: 26mm"/><col/><col/><col/></colgroup>
			<thead><tr><th>State</th><th>What it means</th><th>What it looks and sounds like</th><th>What you do</th></tr></thead>
			<tbody>
			<tr><td class="big">no signal</td><td>No code has come yet. It knows no time and fires nothing.</td><td>No running time on the display; nothing on the timecode line.</td><td>Do not start the show. Once the pre-roll should be running: call “no timecode”.</td></tr>
			<tr><td class="big">acquiring</td><td>Code is there, but not yet believed. Takes «rows.lock.text». After a loss it goes on by its own clock meanwhile.</td><td>The code's harsh, even buzz is on the line; the display's time begins to run or to jump.</td><td>Wait. At the start: do not press before it is locked and slot and time agree with this sheet.</td></tr>
			<tr><td class="big">locked</td><td>It goes by the code.</td><td>The display counts evenly with the running sheet.</td><td>Press while cues are to fire; compare time and running sheet at every section.</td></tr>
			<tr><td class="big">holdover</td><td>Code is gone, said after «rows.loss.text». It goes on by its own clock: good enough for «rows.holdover.text».</td><td>The display goes on counting and shows the loss; the line is silent.</td><td>Stay pressed as long as picture and music agree. Call “timecode lost”. Let go when they drift apart or when it is longer than that.</td></tr>
			</tbody>
			</table>
			<h2>Let go at once</h2>
			<ul class="plain">
			<li><span class="box small"></span> when anything is not as it should be on the site, in the air, or at the audience;</li>
			<li><span class="box small"></span> when the first cue of this sheet is due and something else flies, or nothing: the slot may be wrong;</li>
			<li><span class="box small"></span> when the displayed time jumps, goes back, or disagrees with the running sheet;</li>
			<li><span class="box small"></span> in every box LET GO of the running sheet.</li>
			</ul>
			<p class="how">What comes due while you have let go is not fired, and not fired later either. A cue that the controller itself finds overdue, as after a jump, may still fire if it is late by no more than «rows.late.text». Press again only when the reason is gone and the next cue is the right one.</p>
			<h2>What a released second costs</h2>
			«IF rows.parts.empty»
				<p class="missing">The score has no sections.</p>
			«ELSE»
				<table class="grid">
				<colgroup><col/><col style="width: 27mm"/><col style="width: 27mm"/><col style="width: 12mm"/><col style="width: 22mm"/><col style="width: 38mm"/><col style="width: 26mm"/></colgroup>
				<thead><tr><th>Section</th><th>From</th><th>To</th><th class="n">Cues</th><th class="n">Cues a second</th><th>The dearest second</th><th class="n">Off at its end if code is lost at its beginning</th></tr></thead>
				<tbody>
				«FOR part : rows.parts»
					<tr><td class="big">«part.name.text»</td><td>«part.from.text»</td><td>«part.to.text»</td><td class="n">«part.cues»</td><td class="n big">«part.mean.text»</td><td><b>«part.most.text»</b></td><td class="n">«part.alone.text»</td></tr>
					«IF !part.holds.empty»<tr class="hold"><td colspan="7">LET GO «part.holds.text»</td></tr>«ENDIF»
				«ENDFOR»
				</tbody>
				</table>
			«ENDIF»
			<h2>Rehearsed on paper</h2>
			«IF rows.nights.empty»
				<p class="missing">The script rehearses no night of this soundtrack.</p>
			«ELSE»
				<ul class="plain">«FOR night : rows.nights»<li>«night.text»</li>«ENDFOR»</ul>
			«ENDIF»
			«Page.signatures(#["Shooter (name), read and understood", "Show caller (name)", "Words agreed for “let go”"])»
		''')
	}
}
