package org.girandole.lang.ide.server;

import com.google.inject.Singleton;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.apache.log4j.Logger;

/** The pages of the rules, which come with the program. */
@Singleton
public final class RulePages {
    private static final Logger LOG = Logger.getLogger(RulePages.class);
    private static final String FOLDER = "/org/girandole/lang/ide/rules/";

    private final Map<String, Optional<String>> uris = new HashMap<>();
    private String base;
    private Path extracted;

    /** Where the pages are published, when the client knows; else they are laid out in a folder for temporary files as they are asked for. */
    synchronized void base(String uri) {
        base = uri.endsWith("/") ? uri : uri + "/";
        uris.clear();
    }

    /** Where a rule's page can be opened; empty when it has none. */
    synchronized Optional<String> uri(String rule) {
        if (base != null) {
            return Optional.of(base + rule + ".md");
        }
        return uris.computeIfAbsent(rule, this::extract);
    }

    /** The text of a rule's page, Markdown. */
    public static Optional<String> text(String rule) {
        try (InputStream page = RulePages.class.getResourceAsStream(FOLDER + rule + ".md")) {
            return page == null ? Optional.empty() : Optional.of(new String(page.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            LOG.debug("The page of " + rule + " cannot be read.", e);
            return Optional.empty();
        }
    }

    private Optional<String> extract(String rule) {
        Optional<String> page = text(rule);
        if (page.isEmpty()) {
            return Optional.empty();
        }
        try {
            if (extracted == null) {
                extracted = Files.createTempDirectory("girandole-rules-");
                extracted.toFile().deleteOnExit();
            }
            Path file = Files.writeString(extracted.resolve(rule + ".md"), page.get(), StandardCharsets.UTF_8);
            file.toFile().deleteOnExit();
            return Optional.of(ScriptUris.protocol(file));
        } catch (IOException e) {
            // A finding without a link is still a finding.
            LOG.debug("The page of " + rule + " cannot be laid out.", e);
            return Optional.empty();
        }
    }
}
