package org.girandole.studio.project;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Enumeration;
import java.util.List;
import org.eclipse.jface.preference.ComboFieldEditor;
import org.eclipse.jface.preference.FieldEditorPreferencePage;
import org.eclipse.ui.IWorkbench;
import org.eclipse.ui.IWorkbenchPreferencePage;
import org.girandole.studio.StudioPlugin;
import org.girandole.studio.client.Severities;
import org.girandole.studio.client.ShowClient;

/** How severe the findings of each rule are shown: as checked, or more severe. */
public final class SeverityPage extends FieldEditorPreferencePage implements IWorkbenchPreferencePage {
    private static final String FOLDER = "org/girandole/studio/project/rules";

    /** For the extension point. */
    public SeverityPage() {
        super(GRID);
        setPreferenceStore(StudioPlugin.get().getPreferenceStore());
        setDescription("The editor can show a rule's findings as more severe than the check takes them, never as less: what shall be lived "
                + "with is waived in the script, where everyone can read it.");
    }

    @Override
    public void init(IWorkbench workbench) {
        // The store is known already.
    }

    @Override
    protected void createFieldEditors() {
        String[][] choices = {{"as checked", Severities.AS_CHECKED}, {"at least a warning", Severities.WARNING}, {"an error", Severities.ERROR}};
        for (String rule : rules()) {
            addField(new ComboFieldEditor(Severities.PREFIX + rule, rule, choices, getFieldEditorParent()));
        }
    }

    /** The ids of all rules that have a page, sorted. */
    public static List<String> rules() {
        List<String> rules = new ArrayList<>();
        Enumeration<URL> pages = StudioPlugin.get().getBundle().findEntries(FOLDER, "*.md", false);
        while (pages != null && pages.hasMoreElements()) {
            URL page = pages.nextElement();
            String file = page.getPath().substring(page.getPath().lastIndexOf('/') + 1);
            String id = file.substring(0, file.length() - ".md".length());
            if (title(page).contains(id)) {
                rules.add(id);
            }
        }
        rules.sort(Comparator.naturalOrder());
        return rules;
    }

    private static String title(URL page) {
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(page.openStream(), StandardCharsets.UTF_8))) {
            String line = reader.readLine();
            return line == null ? "" : line;
        } catch (IOException e) {
            StudioPlugin.log("The page of a rule cannot be read.", e);
            return "";
        }
    }

    @Override
    public boolean performOk() {
        boolean done = super.performOk();
        ShowClient.get().showFindingsAgain();
        return done;
    }
}
