package org.girandole.studio.client;

import org.eclipse.core.filebuffers.IDocumentSetupParticipant;
import org.eclipse.jface.text.IDocument;

/** The first script that is opened starts the client; from then on the client hears of every file by itself. */
public final class ConnectParticipant implements IDocumentSetupParticipant {
    @Override
    public void setup(IDocument document) {
        ShowClient.get();
    }
}
