package org.girandole.lang.scoping;

import org.eclipse.xtext.diagnostics.DiagnosticMessage;
import org.eclipse.xtext.linking.impl.LinkingDiagnosticMessageProvider;

/** Linking says nothing of names that lead nowhere: the compiler does, once, and with what was meant. */
public class QuietLinking extends LinkingDiagnosticMessageProvider {
    @Override
    public DiagnosticMessage getUnresolvedProxyMessage(ILinkingDiagnosticContext context) {
        return null;
    }
}
