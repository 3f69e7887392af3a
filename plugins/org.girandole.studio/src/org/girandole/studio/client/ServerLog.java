package org.girandole.studio.client;

import org.apache.log4j.AppenderSkeleton;
import org.apache.log4j.Level;
import org.apache.log4j.Logger;
import org.apache.log4j.spi.LoggingEvent;
import org.apache.log4j.varia.NullAppender;
import org.girandole.studio.StudioPlugin;

/** Takes what goes wrong inside of the server into the log of the workbench, where it can be found; on the console nobody would read it. */
final class ServerLog extends AppenderSkeleton {
    private static final String PRODUCT = "org.girandole";
    private static final String NAME = "org.girandole.studio";

    /** From now on; once is enough. */
    static void listen() {
        if (!Logger.getRootLogger().getAllAppenders().hasMoreElements()) {
            // Else the library complains on the console that nobody listens.
            Logger.getRootLogger().addAppender(new NullAppender());
        }
        Logger product = Logger.getLogger(PRODUCT);
        if (product.getAppender(NAME) == null) {
            ServerLog log = new ServerLog();
            log.setName(NAME);
            log.setThreshold(Level.ERROR);
            product.addAppender(log);
        }
    }

    @Override
    protected void append(LoggingEvent event) {
        StudioPlugin.log(event.getRenderedMessage(), event.getThrowableInformation() == null ? null : event.getThrowableInformation().getThrowable());
    }

    @Override
    public void close() {
        // Nothing is held.
    }

    @Override
    public boolean requiresLayout() {
        return false;
    }
}
