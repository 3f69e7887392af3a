package org.girandole.studio.tests;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.eclipse.core.resources.IMarker;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.core.runtime.preferences.InstanceScope;
import org.eclipse.jface.preference.PreferenceDialog;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.ui.dialogs.PreferencesUtil;
import org.girandole.studio.StudioPlugin;
import org.girandole.studio.client.Severities;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** The preference page for severities, used as somebody uses it; markers follow at once. */
class SeverityTest {
    private static final String RULE = "unused-effect";
    private static final String GRAVE = "unresolved-name";

    @RegisterExtension
    final ShowProject shows = new ShowProject();

    @AfterEach
    void forget() {
        InstanceScope.INSTANCE.getNode(StudioPlugin.ID).remove(Severities.PREFIX + RULE);
        InstanceScope.INSTANCE.getNode(StudioPlugin.ID).remove(Severities.PREFIX + GRAVE);
    }

    @Test
    void aRaisedSeverityReachesTheMarkersAndGoesBack() throws Exception {
        shows.edit("wire Twin", "shell Spare like RedPeony75 { colour green }\n\nwire Twin");
        Ui.marker(shows.show(), RULE);
        int checked = severity();
        assertThat(checked).isNotEqualTo(IMarker.SEVERITY_ERROR);
        choose(RULE, "an error");
        Ui.until("an error", () -> severity() == IMarker.SEVERITY_ERROR);
        Ui.open(shows.catalogue());
        Ui.open(shows.show());
        choose(RULE, "at least a warning");
        Ui.until("a warning", () -> severity() == IMarker.SEVERITY_WARNING);
        choose(RULE, "as checked");
        Ui.until("as checked", () -> severity() == checked);
    }

    @Test
    void aSeverityIsNeverLowered() throws Exception {
        shows.edit("cue First at Start  B       RedPeony75", "cue First at Start  B       RedPeony57");
        Ui.marker(shows.show(), GRAVE);
        IMarker[] before = Ui.markers(shows.show()).toArray(IMarker[]::new);
        choose(GRAVE, "at least a warning");
        Ui.until("all findings were shown again", () -> Job.getJobManager().isIdle());
        assertThat(Ui.markers(shows.show())).as("nothing has changed").containsExactlyInAnyOrder(before);
        assertThat(Ui.marker(shows.show(), GRAVE).getAttribute(IMarker.SEVERITY, -1)).isEqualTo(IMarker.SEVERITY_ERROR);
    }

    private int severity() throws Exception {
        return Ui.marker(shows.show(), RULE).getAttribute(IMarker.SEVERITY, -1);
    }

    private static void choose(String rule, String severity) {
        PreferenceDialog dialog = PreferencesUtil.createPreferenceDialogOn(Ui.window().getShell(), "org.girandole.studio.severities", null, null);
        dialog.setBlockOnOpen(false);
        dialog.open();
        Ui.settle();
        Combo combo = combo(dialog, rule);
        combo.select(List.of(combo.getItems()).indexOf(severity));
        combo.notifyListeners(SWT.Selection, new Event());
        Widgets.press(Widgets.button(dialog.getShell(), "Apply and Close").orElseThrow());
        Ui.settle();
    }

    /** The choice beside the name of a rule. */
    private static Combo combo(PreferenceDialog dialog, String rule) {
        Label label = Widgets.all(dialog.getShell(), Label.class).stream().filter(one -> one.getText().equals(rule)).findFirst().orElseThrow();
        List<Control> siblings = List.of(label.getParent().getChildren());
        return (Combo) siblings.get(siblings.indexOf(label) + 1);
    }
}
