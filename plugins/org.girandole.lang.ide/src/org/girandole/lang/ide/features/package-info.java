/** What an editor can ask of a script: one class a feature, each reading the parsed script, and the last check where it tells of the plan. */
package org.girandole.lang.ide.features;
