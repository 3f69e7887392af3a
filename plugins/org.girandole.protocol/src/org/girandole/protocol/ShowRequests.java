package org.girandole.protocol;

import java.util.concurrent.CompletableFuture;
import org.eclipse.lsp4j.jsonrpc.services.JsonRequest;
import org.eclipse.lsp4j.jsonrpc.services.JsonSegment;

/**
 * Requests for drawing a show. Each names a script by the URI of its document; the answer is for the text as it stands in the editor.
 * For what cannot be answered the field {@code nothing} says why and the rest is empty; a request is never refused for bad input.
 */
@JsonSegment("girandole")
public interface ShowRequests {
    /** The whole plan: soundtracks, cues, findings. */
    @JsonRequest
    CompletableFuture<PlanView> plan(ScriptParams params);

    /** The site with distances and fallout, in the wind of the script or another one. */
    @JsonRequest
    CompletableFuture<SiteView> site(SiteParams params);

    /** The waveform of a soundtrack's audio. */
    @JsonRequest
    CompletableFuture<WaveView> waveform(WaveParams params);

    /** How a rehearsed night goes, and which rehearsals there are. */
    @JsonRequest
    CompletableFuture<RehearsalView> rehearsal(RehearsalParams params);

    /** The sheets that a release of the show would hold. */
    @JsonRequest
    CompletableFuture<SheetList> sheets(ScriptParams params);

    /** A picture of one page of a sheet. */
    @JsonRequest
    CompletableFuture<SheetPage> sheetPage(SheetPageParams params);

    /** A whole sheet as a file. */
    @JsonRequest
    CompletableFuture<SheetFile> sheetFile(SheetFileParams params);
}
