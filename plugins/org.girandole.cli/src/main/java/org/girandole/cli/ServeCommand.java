package org.girandole.cli;

import java.io.FileDescriptor;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.concurrent.Callable;
import org.girandole.lang.ide.server.ShowServer;
import picocli.CommandLine.Command;

/** Runs the language server for an editor. */
@Command(name = "serve", mixinStandardHelpOptions = true, header = "Serves an editor: the language server on standard input and output.",
        description = {"", "Started by an editor that speaks the Language Server Protocol, not by hand. It ends when the editor says so or hangs"
                + " up. It writes no file of the project.", ""},
        footer = {"", "Example:", "  girandole serve                                what to enter as the server's command in the editor"})
final class ServeCommand implements Callable<Integer> {
    @Override
    public Integer call() throws InterruptedException {
        Quiet.libraries();
        InputStream in = new FileInputStream(FileDescriptor.in);
        OutputStream out = new FileOutputStream(FileDescriptor.out);
        // Whatever a library might print would break the protocol; it goes where an editor shows it as a log.
        System.setOut(System.err);
        ShowServer.serve(in, out);
        return ExitCode.OK;
    }
}
