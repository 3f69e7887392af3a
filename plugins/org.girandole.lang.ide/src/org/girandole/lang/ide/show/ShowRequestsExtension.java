package org.girandole.lang.ide.show;

import com.google.inject.Inject;
import com.google.inject.Singleton;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.eclipse.lsp4j.jsonrpc.Endpoint;
import org.eclipse.xtext.ide.server.ILanguageServerAccess;
import org.eclipse.xtext.ide.server.ILanguageServerExtension;
import org.girandole.lang.ide.server.CheckedScript;
import org.girandole.lang.ide.server.ShowBoard;
import org.girandole.protocol.PlanView;
import org.girandole.protocol.RehearsalParams;
import org.girandole.protocol.RehearsalView;
import org.girandole.protocol.ScriptParams;
import org.girandole.protocol.SheetFile;
import org.girandole.protocol.SheetFileParams;
import org.girandole.protocol.SheetList;
import org.girandole.protocol.SheetPage;
import org.girandole.protocol.SheetPageParams;
import org.girandole.protocol.ShowNotifications;
import org.girandole.protocol.ShowRequests;
import org.girandole.protocol.SiteParams;
import org.girandole.protocol.SiteView;
import org.girandole.protocol.WaveParams;
import org.girandole.protocol.WaveView;

/**
 * Adds {@link ShowRequests} to the language server. An answer waits until the check has caught up with the text and takes its plan; what
 * takes long after that (fallout, audio, sheets) runs beside the server's own threads, so that it holds up nobody's typing.
 */
@Singleton
public final class ShowRequestsExtension implements ILanguageServerExtension, ShowRequests {
    private final ShowBoard board;
    private volatile ILanguageServerAccess access;
    private volatile boolean asked;
    private final Waveforms waveforms = new Waveforms();
    private final SheetShelf sheets = new SheetShelf();

    @Inject
    public ShowRequestsExtension(ShowBoard board) {
        this.board = board;
    }

    @Override
    public void initialize(ILanguageServerAccess languageServerAccess) {
        access = languageServerAccess;
        board.onChecked(this::tell);
    }

    /** Only who draws wants to hear of it: other clients would log a message that they do not know. */
    private void tell(CheckedScript script) {
        ScriptParams checked = new ScriptParams(script.uri());
        if (asked && access.getLanguageClient() instanceof ShowNotifications drawing) {
            drawing.checked(checked);
        } else if (asked && access.getLanguageClient() instanceof Endpoint remote) {
            remote.notify("girandole/checked", checked);
        }
    }

    @Override
    public CompletableFuture<PlanView> plan(ScriptParams params) {
        asked = true;
        return show(params.uri()).thenApplyAsync(show -> show.plan().map(plan -> PlanViews.of(plan, show))
                .orElseGet(() -> PlanView.nothing(params.uri(), show.why())));
    }

    @Override
    public CompletableFuture<SiteView> site(SiteParams params) {
        return show(params.uri()).thenApplyAsync(show -> show.plan().map(plan -> SiteViews.of(params, plan, show))
                .orElseGet(() -> SiteView.nothing(params.uri(), show.why())));
    }

    @Override
    public CompletableFuture<WaveView> waveform(WaveParams params) {
        return show(params.uri()).thenApplyAsync(show -> show.plan().map(plan -> waveforms.of(params, plan, show))
                .orElseGet(() -> WaveView.nothing(show.why())));
    }

    @Override
    public CompletableFuture<RehearsalView> rehearsal(RehearsalParams params) {
        return show(params.uri()).thenApplyAsync(show -> show.plan().map(plan -> Nights.of(params, plan.plan()))
                .orElseGet(() -> RehearsalView.nothing(List.of(), show.why())));
    }

    @Override
    public CompletableFuture<SheetList> sheets(ScriptParams params) {
        return show(params.uri()).thenApplyAsync(show -> show.plan().map(plan -> sheets.list(params, plan))
                .orElseGet(() -> SheetList.nothing(params.uri(), show.why())));
    }

    @Override
    public CompletableFuture<SheetPage> sheetPage(SheetPageParams params) {
        return show(params.uri()).thenApplyAsync(show -> show.plan().map(plan -> sheets.page(params, plan))
                .orElseGet(() -> SheetPage.nothing(params.id(), show.why())));
    }

    @Override
    public CompletableFuture<SheetFile> sheetFile(SheetFileParams params) {
        return show(params.uri()).thenApplyAsync(show -> show.plan().map(plan -> sheets.file(params, plan))
                .orElseGet(() -> SheetFile.nothing(show.why())));
    }

    /** Changes wait in a queue: what was sent before this request has come out of it when a read comes out, even one that is cancelled. */
    private CompletableFuture<EditedShow> show(String uri) {
        return access.doRead(uri, context -> null).handle((read, cancelled) -> null).thenCompose(queued -> board.fresh(uri))
                .thenApply(EditedShow::new);
    }
}
