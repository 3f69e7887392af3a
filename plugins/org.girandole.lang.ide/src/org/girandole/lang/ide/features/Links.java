package org.girandole.lang.ide.features;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.eclipse.lsp4j.DocumentLink;
import org.eclipse.xtext.EcoreUtil2;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.girandole.lang.files.DiskFile;
import org.girandole.lang.files.ProjectRoot;
import org.girandole.lang.show.AudioField;
import org.girandole.lang.show.MarksField;
import org.girandole.lang.show.Script;
import org.girandole.lang.show.SoundtrackDef;
import org.girandole.lang.show.UseLine;

/** The files that a script names: other scripts, audio, marks. Only those inside of the project. */
public final class Links {
    private Links() {
    }

    public static List<DocumentLink> of(ScriptView view) {
        List<DocumentLink> links = new ArrayList<>();
        view.script().ifPresent(script -> {
            for (UseLine use : script.getUses()) {
                link(view, use, eINSTANCE.getUseLine_Path(), use.getPath(), links);
            }
            soundtracks(view, script, links);
        });
        return links;
    }

    private static void soundtracks(ScriptView view, Script script, List<DocumentLink> links) {
        for (SoundtrackDef soundtrack : EcoreUtil2.typeSelect(script.getElements(), SoundtrackDef.class)) {
            for (EObject field : soundtrack.getFields()) {
                if (field instanceof AudioField audio) {
                    link(view, audio, eINSTANCE.getAudioField_File(), audio.getFile(), links);
                } else if (field instanceof MarksField marks) {
                    link(view, marks, eINSTANCE.getMarksField_File(), marks.getFile(), links);
                }
            }
        }
    }

    private static void link(ScriptView view, EObject owner, EStructuralFeature feature, String path, List<DocumentLink> links) {
        if (path == null || !view.resource().getURI().isFile()) {
            return;
        }
        Optional<Path> file = DiskFile.beside(ProjectRoot.path(view.resource().getURI()), path);
        file.filter(found -> ProjectRoot.contains(ProjectRoot.of(view.resource()), found) && DiskFile.readable(found))
                .ifPresent(found -> NodeModelUtils.findNodesForFeature(owner, feature)
                        .forEach(node -> links.add(new DocumentLink(view.range(node), found.toUri().toString()))));
    }
}
