package org.girandole.lang.ide.server;

import com.google.inject.AbstractModule;
import com.google.inject.Provides;
import com.google.inject.Singleton;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.ThreadFactory;
import java.util.concurrent.atomic.AtomicInteger;
import org.eclipse.lsp4j.services.LanguageServer;
import org.eclipse.xtext.ide.server.ILanguageServerShutdownAndExitHandler;
import org.eclipse.xtext.ide.server.LanguageServerImpl;
import org.eclipse.xtext.ide.server.WorkspaceManager;
import org.eclipse.xtext.resource.IResourceServiceProvider;
import org.eclipse.xtext.resource.impl.ResourceServiceProviderRegistryImpl;

/**
 * What differs from a server that Xtext would start: the one language is given, not looked for on the class path (which finds nothing
 * inside Eclipse), the end of a session does not end the process, and the workspace is our own.
 */
final class ShowServerModule extends AbstractModule {
    private static final String EXTENSION = "show";

    private final Language language;
    private final ShowBoard board;
    private final WarmUp warmUp;

    ShowServerModule(Language language, ShowBoard board, WarmUp warmUp) {
        this.language = language;
        this.board = board;
        this.warmUp = warmUp;
    }

    @Override
    protected void configure() {
        bind(LanguageServer.class).to(ShowLanguageServer.class);
        bind(LanguageServerImpl.class).to(ShowLanguageServer.class);
        bind(WorkspaceManager.class).to(ShowWorkspace.class);
        bind(ILanguageServerShutdownAndExitHandler.class).to(ILanguageServerShutdownAndExitHandler.NullImpl.class);
        bind(ShowBoard.class).toInstance(board);
        bind(Language.class).toInstance(language);
        bind(WarmUp.class).toInstance(warmUp);
        bind(ShowLanguageServer.class).in(Singleton.class);
        bind(ShowWorkspace.class).in(Singleton.class);
    }

    @Provides
    @Singleton
    IResourceServiceProvider.Registry registry() {
        ResourceServiceProviderRegistryImpl registry = new ResourceServiceProviderRegistryImpl();
        registry.getExtensionToFactoryMap().put(EXTENSION, language.get(IResourceServiceProvider.class));
        return registry;
    }

    /** Threads that do not keep a process alive whose client has gone. */
    @Provides
    @Singleton
    ExecutorService executor() {
        AtomicInteger count = new AtomicInteger();
        ThreadFactory threads = work -> {
            Thread thread = new Thread(work, "girandole-reader-" + count.incrementAndGet());
            thread.setDaemon(true);
            return thread;
        };
        return Executors.newCachedThreadPool(threads);
    }
}
