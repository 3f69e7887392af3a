package org.girandole.lang.compile;

import static org.girandole.lang.show.ShowPackage.eINSTANCE;

import java.util.List;
import org.eclipse.xtext.resource.XtextResource;
import org.girandole.lang.files.ScriptText;
import org.girandole.lang.files.UsedFiles;
import org.girandole.plan.script.SourceRef;

/** What was wrong with files as files. */
final class FileProblems {
    private FileProblems() {
    }

    static void report(List<XtextResource> files, List<UsedFiles.UseTrouble> uses, Problems problems, Sources sources) {
        for (XtextResource file : files) {
            UsedFiles.readTrouble(file).ifPresent(trouble -> report(sources.file(file), trouble, problems));
        }
        for (UsedFiles.UseTrouble trouble : uses) {
            problems.report(trouble.rule(), trouble.message()).found(Words.shown(trouble.line().getPath()), "the path of a script in the project")
                    .remedy(trouble.remedy()).at(sources.of(trouble.line(), eINSTANCE.getUseLine_Path()));
        }
    }

    static void report(String file, ScriptText.Trouble trouble, Problems problems) {
        problems.report(trouble.rule(), trouble.message()).found(trouble.found(), trouble.allowed()).remedy(trouble.remedy())
                .at(new SourceRef(file, trouble.line(), trouble.column(), 1));
    }
}
