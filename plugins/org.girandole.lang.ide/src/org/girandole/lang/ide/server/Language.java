package org.girandole.lang.ide.server;

import com.google.inject.Injector;

/** The components of the language, which have an injector of their own beside that of the server. */
record Language(Injector injector) {
    <T> T get(Class<T> type) {
        return injector.getInstance(type);
    }
}
