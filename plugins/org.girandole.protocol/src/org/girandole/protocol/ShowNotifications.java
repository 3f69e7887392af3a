package org.girandole.protocol;

import org.eclipse.lsp4j.jsonrpc.services.JsonNotification;
import org.eclipse.lsp4j.jsonrpc.services.JsonSegment;

/** What the server says unasked to a client that has asked for a plan before. */
@JsonSegment("girandole")
public interface ShowNotifications {
    /** A script was checked after a change: what was drawn of it may be old. */
    @JsonNotification
    void checked(ScriptParams script);
}
