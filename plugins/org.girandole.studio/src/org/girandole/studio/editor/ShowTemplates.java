package org.girandole.studio.editor;

import java.io.IOException;
import org.eclipse.jface.preference.IPreferenceStore;
import org.eclipse.jface.text.IRegion;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.contentassist.ICompletionProposal;
import org.eclipse.jface.text.templates.ContextTypeRegistry;
import org.eclipse.jface.text.templates.GlobalTemplateVariables;
import org.eclipse.jface.text.templates.Template;
import org.eclipse.jface.text.templates.TemplateCompletionProcessor;
import org.eclipse.jface.text.templates.TemplateContextType;
import org.eclipse.jface.text.templates.persistence.TemplateStore;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Image;
import org.eclipse.ui.editors.text.templates.ContributionContextTypeRegistry;
import org.eclipse.ui.editors.text.templates.ContributionTemplateStore;
import org.eclipse.ui.texteditor.templates.TemplatePreferencePage;
import org.girandole.studio.StudioPlugin;

/** Templates that the user can change, besides the snippets that the server proposes by place. */
public final class ShowTemplates extends TemplateCompletionProcessor {
    /** Id of the context type. */
    public static final String CONTEXT = "org.girandole.studio.templates.show";
    private static final String STORE = "org.girandole.studio.templates";

    private static ContextTypeRegistry registry;
    private static TemplateStore store;

    /** Where a template can stand: anywhere in a script. */
    public static final class Context extends TemplateContextType {
        /** For the extension point. */
        public Context() {
            addResolver(new GlobalTemplateVariables.Cursor());
            addResolver(new GlobalTemplateVariables.WordSelection());
            addResolver(new GlobalTemplateVariables.LineSelection());
            addResolver(new GlobalTemplateVariables.Dollar());
        }
    }

    /** The page on which the user changes them. */
    public static final class Page extends TemplatePreferencePage {
        /** For the extension point. */
        public Page() {
            setPreferenceStore(StudioPlugin.get().getPreferenceStore());
            setTemplateStore(store());
            setContextTypeRegistry(registry());
        }
    }

    private static synchronized ContextTypeRegistry registry() {
        if (registry == null) {
            ContributionContextTypeRegistry created = new ContributionContextTypeRegistry();
            created.addContextType(CONTEXT);
            registry = created;
        }
        return registry;
    }

    /** All templates, with the user's changes. */
    public static synchronized TemplateStore store() {
        if (store == null) {
            IPreferenceStore preferences = StudioPlugin.get().getPreferenceStore();
            TemplateStore created = new ContributionTemplateStore(registry(), preferences, STORE);
            try {
                created.load();
            } catch (IOException e) {
                StudioPlugin.log("The changed templates cannot be read; the original ones are used.", e);
            }
            store = created;
        }
        return store;
    }

    /** Proposals are asked for on a thread of their own, but what is selected only the thread of the display may ask. */
    @Override
    public ICompletionProposal[] computeCompletionProposals(ITextViewer viewer, int offset) {
        ICompletionProposal[][] proposals = {new ICompletionProposal[0]};
        StyledText text = viewer.getTextWidget();
        if (text == null || text.isDisposed()) {
            return proposals[0];
        }
        text.getDisplay().syncExec(() -> {
            if (!text.isDisposed()) {
                proposals[0] = super.computeCompletionProposals(viewer, offset);
            }
        });
        return proposals[0];
    }

    @Override
    protected Template[] getTemplates(String context) {
        return store().getTemplates(context);
    }

    @Override
    protected TemplateContextType getContextType(ITextViewer viewer, IRegion region) {
        return registry().getContextType(CONTEXT);
    }

    @Override
    protected Image getImage(Template template) {
        return null;
    }
}
