package org.girandole.studio.project;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import org.girandole.studio.StudioPlugin;
import org.osgi.framework.Version;

/** The small show to start from: the same files that the command line writes. */
public final class StartFiles {
    private StartFiles() {
    }

    /** A file name without ending made of what the user typed; empty when there is no letter in it. */
    public static String fileName(String typed) {
        return typed.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^[-0-9]+|-+$", "");
    }

    /** Names and contents of the files of a new project. */
    static Map<String, String> project(String file) {
        Map<String, String> files = new LinkedHashMap<>();
        files.put(file + ".show", show(file));
        files.put("catalogue.show", template("catalogue.show", file));
        files.put("pom.xml", template("pom.xml", file));
        files.put("README.md", template("README.md", file));
        files.put(".gitignore", template("gitignore", file));
        return files;
    }

    /** Without the click track, which the command line writes beside it. */
    static String show(String file) {
        return template("show.show", file).replaceFirst("(?m)^ *audio .*\\R", "");
    }

    private static String template(String resource, String file) {
        try (InputStream in = StartFiles.class.getResourceAsStream("start/" + resource)) {
            String label = Character.toUpperCase(file.charAt(0)) + file.substring(1).replace('-', ' ');
            StringBuilder name = new StringBuilder();
            for (String part : file.split("-")) {
                name.append(Character.toUpperCase(part.charAt(0))).append(part.substring(1));
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).replace("@FILE@", file).replace("@LABEL@", label)
                    .replace("@NAME@", name).replace("@VERSION@", version());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String version() {
        Version version = StudioPlugin.get().getBundle().getVersion();
        String plain = version.getMajor() + "." + version.getMinor() + "." + version.getMicro();
        return version.getQualifier().isEmpty() ? plain : plain + "-SNAPSHOT";
    }
}
