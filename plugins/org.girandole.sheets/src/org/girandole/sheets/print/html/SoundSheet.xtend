package org.girandole.sheets.print.html

import org.eclipse.xtend.lib.annotations.Data
import org.girandole.sheets.print.values.SoundDesk

import static extension org.girandole.sheets.print.html.Html.*

/** Sheet 9: what the sound engineer plays and feeds, in a frame unlike that of the firing line. */
@Data
class SoundSheet {
	Page page

	def String html(SoundDesk desk) {
		page.document("9", "Sound desk", "SOUND", "music to the audience, timecode to the controller", "2.2pt dashed #000", '''
			«page.cautions(#[])»
			<div class="line-kind audio"><span class="word">AUDIO LINE. Sound and timecode only.</span><br/>This sheet has a dashed frame. The sheets of the firing line have a solid frame. A plug of this line may fit a socket of the firing line: never plug sound into a module, a pin or a firing cable, and never let a firing cable come to the desk. The socket for timecode at the controller is marked (write it here before the show): ____________________________</div>
			«FOR track : desk.tracks»
				<h2>Slot «track.slot»: «track.name.text»</h2>
				<table class="grid">
				<colgroup><col style="width: 46mm"/><col/></colgroup>
				<tbody>
				<tr><td>Timecode rate</td><td class="huge">«track.rate.text» <span class="small">«track.counting.text»</span></td></tr>
				<tr><td>Timecode starts at</td><td class="huge">«track.start.text»</td></tr>
				<tr><td>First note at</td><td class="huge">«track.firstNote.text» <span class="small">«track.preroll.text» after the start</span></td></tr>
				<tr><td>First firing at</td><td class="big">«track.firstFire.text»</td></tr>
				<tr><td>Music ends at</td><td class="big">«track.end.text» <span class="small">length «track.length.text»</span></td></tr>
				<tr><td>Audio file</td><td>«track.file.text»</td></tr>
				<tr><td>The code sounds like</td><td>a harsh, even buzz between «track.lowHz.text» and «track.highHz.text», without gaps</td></tr>
				</tbody>
				</table>
			«ENDFOR»
			<h2>Channel plan <span class="aside">write in what the desk calls them</span></h2>
			<table class="grid">
			<colgroup><col style="width: 40mm"/><col style="width: 32mm"/><col style="width: 32mm"/><col/></colgroup>
			<thead><tr><th>Signal</th><th>Player output</th><th>Desk channel</th><th>Goes to</th></tr></thead>
			<tbody>
			<tr><td class="big">Music, left</td><td><span class="write"></span></td><td><span class="write"></span></td><td>speakers for the audience</td></tr>
			<tr><td class="big">Music, right</td><td><span class="write"></span></td><td><span class="write"></span></td><td>speakers for the audience</td></tr>
			<tr><td class="big">TIMECODE</td><td><span class="write"></span></td><td><span class="write"></span></td><td><b>the controller's timecode input, on a line of its own. Not to the main outputs, not to a group, not to monitors, not to a broadcast or recording feed.</b></td></tr>
			</tbody>
			</table>
			<h2>Before the show <span class="aside">common practice, no source; the controller's maker comes first</span></h2>
			<ul class="plain">
			<li><span class="box small"></span> Set the level by the figure of the controller's maker and by its own display of lock, not by ear: level sent ____________, lock held for ______ min.</li>
			<li><span class="box small"></span> Timecode channel flat: no equaliser, gate, compressor, limiter, pitch or speed change, effect, automatic mixing. Its fader is taped.</li>
			<li><span class="box small"></span> Music and timecode come from one file in one player, started together. Sample rate of player and file agree.</li>
			<li><span class="box small"></span> Timecode is silent in every speaker. If you ever hear the buzz there, mute that path at once and say so.</li>
			<li><span class="box small"></span> Played once from start to end with all modules off: lock never lost.</li>
			</ul>
			<h2>During the show</h2>
			<ul class="plain">
			<li>Start only on the show caller's word. Nothing is heard for the length of the pre-roll while the code already runs: do not start again.</li>
			<li>Never stop, wind, or restart the player on your own. A code that jumps can bring cues at the wrong time. Call first.</li>
			<li>If the code fails, leave the music running and call “timecode lost”.</li>
			</ul>
			«Page.signatures(#["Sound engineer (name)", "Lock seen by the shooter (name, time)", "Remarks"])»
		''')
	}
}
