package org.girandole.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Writes a small show to start from. */
@Command(name = "new", mixinStandardHelpOptions = true, header = "Begins a show: a small project that checks clean and can be released.",
        footer = {"", "Example:", "  girandole new my-show"})
final class NewCommand implements Callable<Integer> {
    private static final String CLICK_TRACK = "click.wav";

    @Spec
    private CommandSpec spec;
    @Parameters(paramLabel = "FOLDER", description = "A new or empty folder; its name becomes the name of the show.")
    private Path folder;

    @Override
    public Integer call() {
        Path project = folder.toAbsolutePath().normalize();
        String name = project.getFileName() == null ? "" : project.getFileName().toString();
        String file = name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^[-0-9]+|-+$", "");
        if (file.isEmpty()) {
            throw new UserException(ExitCode.USAGE, "the name of the folder becomes the name of the show; '" + folder
                    + "' has no letter from a to z. Choose a name such as my-show.");
        }
        Map<String, String> files = new LinkedHashMap<>();
        files.put(file + ".show", "show.show");
        files.put("catalogue.show", "catalogue.show");
        files.put("pom.xml", "pom.xml");
        files.put("README.md", "README.md");
        files.put(".gitignore", "gitignore");
        write(project, files, file);
        PrintWriter out = spec.commandLine().getOut();
        out.println("Written: " + folder + " with " + String.join(", ", files.keySet()) + " and " + CLICK_TRACK);
        out.println("Next: girandole check " + folder.resolve(file + ".show"));
        out.flush();
        return ExitCode.OK;
    }

    private void write(Path project, Map<String, String> files, String file) {
        try {
            if (Files.exists(project) && (!Files.isDirectory(project) || !isEmpty(project))) {
                throw new UserException(ExitCode.NOT_WRITTEN, "'" + folder + "' is there already and not empty. Choose a new folder.");
            }
            Files.createDirectories(project);
            for (Map.Entry<String, String> entry : files.entrySet()) {
                Files.writeString(project.resolve(entry.getKey()), template(entry.getValue(), file), StandardCharsets.UTF_8);
            }
            Files.write(project.resolve(CLICK_TRACK), ClickTrack.wav());
        } catch (AccessDeniedException e) {
            throw new UserException(ExitCode.NOT_WRITTEN, "'" + e.getFile() + "' may not be written. Choose a folder that is yours.");
        } catch (IOException e) {
            throw new UserException(ExitCode.NOT_WRITTEN, "'" + folder + "' could not be written: " + e.getMessage());
        }
    }

    private static String template(String resource, String file) {
        try (InputStream in = NewCommand.class.getResourceAsStream("start/" + resource)) {
            String label = Character.toUpperCase(file.charAt(0)) + file.substring(1).replace('-', ' ');
            StringBuilder name = new StringBuilder();
            for (String part : file.split("-")) {
                name.append(Character.toUpperCase(part.charAt(0))).append(part.substring(1));
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .replace("@FILE@", file).replace("@LABEL@", label).replace("@NAME@", name).replace("@VERSION@", Version.tool());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static boolean isEmpty(Path directory) throws IOException {
        try (Stream<Path> list = Files.list(directory)) {
            return list.findAny().isEmpty();
        }
    }
}
