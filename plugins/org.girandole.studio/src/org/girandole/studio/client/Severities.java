package org.girandole.studio.client;

import org.eclipse.core.resources.IMarker;
import org.eclipse.core.runtime.Platform;
import org.eclipse.lsp4j.DiagnosticSeverity;
import org.girandole.studio.StudioPlugin;

/**
 * How severe a finding is shown. The user may have a rule shown as more severe than the check takes it, never as less: what is to be
 * lived with is waived in the script, where the reviewer can read it.
 */
public final class Severities {
    /** Preference keys are this and the id of a rule. */
    public static final String PREFIX = "severity.";
    public static final String AS_CHECKED = "";
    public static final String WARNING = "warning";
    public static final String ERROR = "error";

    private Severities() {
    }

    /** Severity of a marker. */
    static int of(String rule, DiagnosticSeverity checked) {
        int severity = of(checked);
        String wanted = Platform.getPreferencesService().getString(StudioPlugin.ID, PREFIX + rule, AS_CHECKED, null);
        return Math.max(severity, switch (wanted) {
            case ERROR -> IMarker.SEVERITY_ERROR;
            case WARNING -> IMarker.SEVERITY_WARNING;
            default -> IMarker.SEVERITY_INFO;
        });
    }

    private static int of(DiagnosticSeverity severity) {
        if (severity == null || severity == DiagnosticSeverity.Error) {
            return IMarker.SEVERITY_ERROR;
        }
        return severity == DiagnosticSeverity.Warning ? IMarker.SEVERITY_WARNING : IMarker.SEVERITY_INFO;
    }
}
