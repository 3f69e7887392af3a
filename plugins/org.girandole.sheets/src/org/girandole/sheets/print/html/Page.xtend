package org.girandole.sheets.print.html

import java.util.List
import org.eclipse.xtend.lib.annotations.Data
import org.girandole.sheets.print.PaperSize
import org.girandole.sheets.print.values.Cautions
import org.girandole.sheets.print.values.Head
import org.girandole.sheets.print.values.Notice
import org.girandole.sheets.print.values.Quantities

import static extension org.girandole.sheets.print.html.Html.*

/** What all sheets have in common: the page with its head and foot, the masthead, the cautions. */
@Data
class Page {
	/** Longer words do not fit into a page's margin; the masthead has them in full. */
	static val LONGEST_TITLE = 36
	static val LONGEST_SHOW = 44
	/** A frame reaches this far into the side margins. */
	static val FRAME_MM = 4

	Head head
	PaperSize paper

	/**
	 * A whole document.
	 *
	 * @param number number of the sheet
	 * @param title what the sheet is
	 * @param name the one name a person looks for, may be empty
	 * @param under a line under the title
	 * @param frame CSS border of every page, may be empty
	 */
	def String document(String number, String title, String name, String under, String frame, CharSequence body) {
		document(number, title, name, under, frame, "", body)
	}

	/** A whole document with styles of its own, which come after those of all sheets. */
	def String document(String number, String title, String name, String under, String frame, CharSequence styles, CharSequence body) '''
		<!DOCTYPE html>
		<html xmlns="http://www.w3.org/1999/xhtml" lang="en">
		<head>
		<meta charset="UTF-8" />
		<title>«head.show.text» – «title.text» – «head.stamp.text»</title>
		<meta name="generator" content="Girandole «head.toolVersion.text»" />
		<style>
		«Html.styles»
		«pageRule(number, title, frame)»
		«styles»
		</style>
		</head>
		<body>
		<table class="masthead"><tr>
		<td class="number"><div>«number.text»</div></td>
		<td><h1>«title.text»</h1><div class="under">«head.show.text» · «head.when.text» · «head.slots.text» · release <b class="nowrap">«head.stamp.text»</b>«IF !under.empty»<br/>«under.text»«ENDIF»</div></td>
		«IF !name.empty»<td class="name«IF name.length > 7» long«ENDIF»">«name.text»</td>«ENDIF»
		</tr></table>
		«body»
		</body>
		</html>
	'''

	/** The box that opens every document a crew uses. */
	def CharSequence cautions(List<String> more) '''
		<div class="cautions">
		<p class="first">«Cautions.FIRST.text»</p>
		<ul>
		«FOR caution : Cautions.ALWAYS»
			<li>«caution.text»</li>
		«ENDFOR»
		«FOR caution : more»
			<li>«caution.text»</li>
		«ENDFOR»
		</ul>
		</div>
		«IF head.standing.errors > 0»
			<div class="alarm"><span class="word">This release has «Quantities.count(head.standing.errors, "unresolved error", "unresolved errors").text».</span> Do not load, wire or fire from it until the person in charge has read sheet 1.</div>
		«ENDIF»
	'''

	/** Findings in a table. */
	static def CharSequence notices(List<Notice> notices) '''
		<table class="grid notices">
		<colgroup><col style="width: 17mm"/><col/><col style="width: 32mm"/></colgroup>
		<thead><tr><th>How grave</th><th>What was found</th><th>Rule and place</th></tr></thead>
		<tbody>
		«FOR notice : notices»
			<tr><td><b>«notice.heading.text»</b></td>
			<td>«notice.message.text»«IF !notice.limit.empty»<div class="small">«notice.limit.text»</div>«ENDIF»«IF !notice.agreement.empty»<div><b>«notice.agreement.text»</b></div>«ENDIF»</td>
			<td class="small">«notice.rule.text»<br/>«notice.source.text»</td></tr>
		«ENDFOR»
		</tbody>
		</table>
	'''

	/** Boxes for the people who did and who checked the work. */
	static def CharSequence signatures(List<String> who) '''
		<table class="sign"><tr>
		«FOR each : who»
			<td>«each.text»</td>
		«ENDFOR»
		</tr></table>
	'''

	private def CharSequence pageRule(String number, String title, String frame) '''
		@page {
		  size: «paper.cssName»; margin: 19mm «PaperSize.SIDE_MARGIN_MM»mm 17mm «PaperSize.SIDE_MARGIN_MM»mm;
		  «IF !frame.empty»border: «frame»; padding: 3mm; margin: 18mm «PaperSize.SIDE_MARGIN_MM - FRAME_MM»mm 16mm «PaperSize.SIDE_MARGIN_MM - FRAME_MM»mm;«ENDIF»
		  @top-left { content: «title.brief(LONGEST_TITLE).css»; «marginBox» font-size: 12pt; font-weight: bold; text-align: left; vertical-align: bottom; padding-bottom: 2mm; }
		  @top-center { content: «topCentre.css»; «marginBox» font-weight: bold; text-align: center; vertical-align: bottom; padding-bottom: 2mm; }
		  @top-right { content: «('''release «head.stamp»''').toString.css»; «marginBox» font-size: 12pt; font-weight: bold; text-align: right; vertical-align: bottom; padding-bottom: 2mm; }
		  @bottom-left { content: «('''«head.show.brief(LONGEST_SHOW)», sheet «number»''').toString.css»; «marginBox» text-align: left; vertical-align: top; padding-top: 1.5mm; }
		  @bottom-center { content: «head.slots.css»; «marginBox» text-align: center; vertical-align: top; padding-top: 1.5mm; }
		  @bottom-right { content: "page " counter(page) " of " counter(pages); «marginBox» font-weight: bold; text-align: right; vertical-align: top; padding-top: 1.5mm; }
		}
	'''

	private def String topCentre() {
		if (head.standing.errors > 0)
			"NOT CLEAN: " + Quantities.count(head.standing.errors, "unresolved error", "unresolved errors")
		else if (!head.standing.gaps.empty)
			"DATA MISSING, see sheet 1"
		else
			""
	}

	private static def String marginBox() '''font-family: "DejaVu Sans Condensed", "DejaVu Sans", Verdana, Arial, sans-serif; font-size: 9pt;'''
}
