package org.girandole.sheets.print.html

import org.eclipse.xtend.lib.annotations.Data
import org.girandole.sheets.diff.Since

import static extension org.girandole.sheets.print.html.Html.*

/** Sheet 14: what changed since an earlier release, for the reviewer to sign. */
@Data
class ChangeSheet {
	Page page

	/** The earlier stamp is called just that: the word “release” stands before this release's own stamp and nowhere else. */
	def String html(Since since) {
		page.document("14", "What changed", "", "since the release with stamp " + since.stampPrinted, "", '''
			«page.cautions(#["Sheets with stamp " + since.stampPrinted + " are void once this release is agreed to. Collect them."])»
			<p>Before: «since.report.before.text»<br/>Now: «since.report.after.text»</p>
			<p><b>«since.report.headline.text»</b></p>
			«IF since.caution.present»<div class="alarm">«since.caution.get.text»</div>«ENDIF»
			«FOR part : since.report.parts»
				<h2>«part.title.text»</h2>
				<table class="grid">
				<tbody>
				«FOR entry : part.entries»
					<tr><td style="width: 7mm"><span class="box small"></span></td><td>«entry.text.text»«IF !entry.details.empty»<div class="small">«FOR detail : entry.details SEPARATOR "<br/>"»«detail.text»«ENDFOR»</div>«ENDIF»</td></tr>
				«ENDFOR»
				</tbody>
				</table>
			«ENDFOR»
			«Page.signatures(#["Changed by (name, date)", "Reviewed by (name, licence, date)", "Agreed to: yes / no, because"])»
		''')
	}
}
