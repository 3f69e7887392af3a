package org.girandole.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/** A git repository with the program on its path under the name that users give it. */
final class Git {
    private static final Path JAR = Path.of("../org.girandole.cli/target/girandole.jar").toAbsolutePath().normalize();
    private static final long LONGEST_MINUTES = 3;

    private final Path folder;
    private final Path bin;

    private Git(Path folder, Path bin) {
        this.folder = folder;
        this.bin = bin;
    }

    /** A new repository; nobody's own settings of git play a part in it. */
    static Git init(Path folder) throws IOException, InterruptedException {
        Path bin = Files.createTempDirectory(Files.createDirectories(folder.resolveSibling(folder.getFileName() + "-tools")), "bin");
        Path program = Files.writeString(bin.resolve("girandole"), "#!/bin/sh\nexec '" + Path.of(System.getProperty("java.home"), "bin", "java")
                + "' " + String.join(" ", Cli.JAVA_OPTIONS) + " -jar '" + JAR + "' \"$@\"\n");
        Files.setPosixFilePermissions(program, PosixFilePermissions.fromString("rwxr-xr-x"));
        Git git = new Git(folder, bin);
        git.git("init", "-q", "-b", "main").exits(0);
        git.git("config", "user.name", "T. Example").exits(0);
        git.git("config", "user.email", "t@example.invalid").exits(0);
        return git;
    }

    /** Runs git. */
    Cli.Run git(String... words) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of("git"));
        command.addAll(List.of(words));
        return run(command);
    }

    /** Runs lines of a shell, which end at the first that fails. */
    Cli.Run shell(String lines) throws IOException, InterruptedException {
        return run(List.of("sh", "-e", "-c", lines));
    }

    /** Makes an executable hook. */
    void hook(String name, String script) throws IOException {
        Path hook = Files.writeString(folder.resolve(".git/hooks").resolve(name), script);
        Files.setPosixFilePermissions(hook, PosixFilePermissions.fromString("rwxr-xr-x"));
    }

    private Cli.Run run(List<String> command) throws IOException, InterruptedException {
        Path out = Files.createTempFile("git", ".out");
        Path err = Files.createTempFile("git", ".err");
        try {
            ProcessBuilder builder = new ProcessBuilder(command).directory(folder.toFile()).redirectOutput(out.toFile())
                    .redirectError(err.toFile()).redirectInput(new File("/dev/null"));
            Map<String, String> environment = builder.environment();
            environment.keySet().removeIf(name -> name.startsWith("GIT_"));
            environment.keySet().removeAll(List.of("JAVA_TOOL_OPTIONS", "MAVEN_OPTS", "_JAVA_OPTIONS"));
            environment.put("GIT_CONFIG_GLOBAL", "/dev/null");
            environment.put("GIT_CONFIG_NOSYSTEM", "1");
            environment.put("GIT_PAGER", "cat");
            environment.put("PATH", bin + File.pathSeparator + environment.get("PATH"));
            Process process = builder.start();
            if (!process.waitFor(LONGEST_MINUTES, TimeUnit.MINUTES)) {
                process.destroyForcibly();
                throw new AssertionError("still running after " + LONGEST_MINUTES + " minutes: " + command);
            }
            return new Cli.Run(process.exitValue(), Files.readString(out, StandardCharsets.UTF_8), Files.readString(err, StandardCharsets.UTF_8));
        } finally {
            Files.delete(out);
            Files.delete(err);
        }
    }

    /** The fenced block of a page of the documentation that follows the line, so that what the page says is what is run. */
    static String block(Path page, String after) throws IOException {
        String text = Files.readString(page, StandardCharsets.UTF_8);
        int from = text.indexOf(after);
        assertThat(from).as("'%s' in %s", after, page).isNotNegative();
        int begin = text.indexOf('\n', text.indexOf("\n```", from) + 1) + 1;
        return text.substring(begin, text.indexOf("```", begin));
    }
}
