/** Answers the requests for drawing a show: the plan, the site, the waveform and the sheets of the script in the editor. */
package org.girandole.lang.ide.show;
