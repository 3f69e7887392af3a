package org.girandole.benchmarks;

import org.eclipse.emf.common.util.URI;
import org.eclipse.emf.ecore.resource.Resource;
import org.eclipse.xtext.resource.XtextResourceSet;
import org.girandole.lang.ShowStandaloneSetup;

/** Parses one script, and does nothing more: the yardstick for the whole check. */
public final class ParseAlone {
    private ParseAlone() {
    }

    /** Expects the file; says how many top-level elements it found. */
    public static void main(String[] args) {
        XtextResourceSet set = new ShowStandaloneSetup().createInjectorAndDoEMFRegistration().getInstance(XtextResourceSet.class);
        Resource resource = set.getResource(URI.createFileURI(args[0]), true);
        if (!resource.getErrors().isEmpty()) {
            throw new IllegalStateException("the synthetic show does not parse: " + resource.getErrors().get(0).getMessage());
        }
        System.out.println(resource.getContents().get(0).eContents().size() + " elements");
    }
}
