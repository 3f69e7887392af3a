package org.girandole.lang.ide.fixes;

import java.util.List;
import java.util.Map;
import org.eclipse.lsp4j.TextEdit;

/**
 * What can be done about a finding.
 *
 * @param title what it does, as an order
 * @param edits by the URI of the file
 */
record Fix(String title, Map<String, List<TextEdit>> edits) {
}
