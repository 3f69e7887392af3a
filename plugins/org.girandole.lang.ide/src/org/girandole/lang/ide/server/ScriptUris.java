package org.girandole.lang.ide.server;

import java.net.URISyntaxException;
import java.nio.file.FileSystemNotFoundException;
import java.nio.file.Path;
import java.util.Optional;
import org.eclipse.emf.common.util.URI;

/** One spelling for each file, however a client writes its URI. */
final class ScriptUris {
    private ScriptUris() {
    }

    /** The file of a URI; empty when it is none of the file system, such as that of a text never saved. */
    static Optional<Path> path(String uri) {
        if (!uri.startsWith("file:")) {
            return Optional.empty();
        }
        try {
            return Optional.of(Path.of(new java.net.URI(uri)).toAbsolutePath().normalize());
        } catch (URISyntaxException | IllegalArgumentException | FileSystemNotFoundException e) {
            return pathOfUnescaped(uri);
        }
    }

    /** Some clients leave spaces in a URI as they are. */
    private static Optional<Path> pathOfUnescaped(String uri) {
        try {
            String file = URI.createURI(uri).toFileString();
            return file == null ? Optional.empty() : Optional.of(Path.of(file).toAbsolutePath().normalize());
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    /** The URI of the model. */
    static URI model(String uri) {
        return path(uri).map(ScriptUris::model).orElseGet(() -> URI.createURI(uri));
    }

    static URI model(Path file) {
        return URI.createFileURI(file.toString());
    }

    /** The one spelling of a client's URI. */
    static String client(String uri) {
        return path(uri).map(ScriptUris::protocol).orElse(uri);
    }

    /** As the protocol writes it. */
    static String protocol(URI model) {
        return model.isFile() ? protocol(Path.of(model.toFileString())) : model.toString();
    }

    static String protocol(Path file) {
        return file.toUri().toString();
    }
}
