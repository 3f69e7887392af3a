package org.girandole.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;

/** Runs the built jar in a process of its own, as a user does. */
final class Cli {
    private static final Path JAR = Path.of("../org.girandole.cli/target/girandole.jar").toAbsolutePath().normalize();
    /** Runs take seconds; what the virtual machine would win by compiling better comes too late, and hundreds of runs add up. */
    static final List<String> JAVA_OPTIONS = List.of("-Xmx1g", "-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC");
    /** Far beyond what anything here takes; a run that hangs fails its test instead of the build. */
    private static final long LONGEST_MINUTES = 3;

    private final Path folder;
    private final List<String> prefix = new ArrayList<>();
    private final List<String> javaOptions = new ArrayList<>(JAVA_OPTIONS);
    private final Map<String, String> environment = new TreeMap<>();

    private Cli(Path folder) {
        this.folder = folder;
        // What is heard in music is kept between runs, but not in the cache of whoever runs the tests.
        environment.put("GIRANDOLE_CACHE", Path.of("target/cache").toAbsolutePath().toString());
    }

    /** With this current folder. */
    static Cli in(Path folder) {
        return new Cli(folder);
    }

    /** Another JVM option. */
    Cli java(String... options) {
        javaOptions.addAll(Arrays.asList(options));
        return this;
    }

    /** Another environment variable. */
    Cli env(String name, String value) {
        environment.put(name, value);
        return this;
    }

    /** A command that starts the program, such as one that gives up rights. */
    Cli by(String... command) {
        prefix.addAll(Arrays.asList(command));
        return this;
    }

    Run run(String... args) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(prefix);
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(javaOptions);
        command.add("-jar");
        command.add(JAR.toString());
        command.addAll(Arrays.asList(args));
        Path out = Files.createTempFile("cli", ".out");
        Path err = Files.createTempFile("cli", ".err");
        try {
            ProcessBuilder builder = new ProcessBuilder(command).directory(folder.toFile())
                    .redirectOutput(out.toFile()).redirectError(err.toFile());
            builder.environment().putAll(environment);
            // What the build sets for itself must not reach the program: the JVM would announce it on the error output.
            builder.environment().keySet().removeAll(List.of("JAVA_TOOL_OPTIONS", "MAVEN_OPTS", "_JAVA_OPTIONS"));
            Process process = builder.start();
            if (!process.waitFor(LONGEST_MINUTES, TimeUnit.MINUTES)) {
                process.destroyForcibly();
                throw new AssertionError("still running after " + LONGEST_MINUTES + " minutes: " + command);
            }
            return new Run(process.exitValue(), Files.readString(out, StandardCharsets.UTF_8),
                    Files.readString(err, StandardCharsets.UTF_8));
        } finally {
            Files.delete(out);
            Files.delete(err);
        }
    }

    /** What came of a run. */
    record Run(int code, String out, String err) {
        /** The exit code, with the outputs in the message when it is another; and never a stack trace. */
        Run exits(int expected) {
            assertThat(code).as("exit code; output:%n%s%nerrors:%n%s", out, err).isEqualTo(expected);
            return staysCivil();
        }

        /** No stack trace, no name of an exception, no chatter of libraries. */
        Run staysCivil() {
            assertThat(out + err).doesNotContain("\tat ").doesNotContain("Exception").doesNotContain("WARN").doesNotContain("log4j")
                    .doesNotContain("SLF4J");
            return this;
        }
    }
}
