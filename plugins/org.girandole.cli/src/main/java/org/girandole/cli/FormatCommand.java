package org.girandole.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.girandole.lang.ScriptFormat;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Gives scripts their one form. */
@Command(name = "format", mixinStandardHelpOptions = true, header = "Gives scripts their one form.",
        description = {"", "Moves space alone: words and comments stay as they are, so the plan stays too. A script is written only when that"
                + " changes it, and whole or not at all. When one of the scripts has a syntax error none is written.", ""},
        footer = {"", "Examples:",
                "  girandole format my-show.show",
                "  girandole format --check my-show.show catalogue/*.show",
                "", "With --check exit code 1 says that a script is not in its form."})
final class FormatCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;
    @Parameters(arity = "1..*", paramLabel = "SCRIPT", description = "The scripts.")
    private List<Path> scripts;
    @Option(names = "--check", description = "Write nothing; name the scripts that would change.")
    private boolean check;

    @Override
    public Integer call() {
        Quiet.libraries();
        Map<Path, String> changed = changed();
        PrintWriter out = spec.commandLine().getOut();
        for (Map.Entry<Path, String> script : changed.entrySet()) {
            if (!check) {
                write(script.getKey(), script.getValue());
            }
            out.println((check ? "not in its form: " : "formatted ") + script.getKey());
        }
        out.flush();
        return check && !changed.isEmpty() ? ExitCode.ERRORS_FOUND : ExitCode.OK;
    }

    /** The new text of each script that needs one. */
    private Map<Path, String> changed() {
        ScriptFormat format = new ScriptFormat();
        Map<Path, String> changed = new LinkedHashMap<>();
        for (Path script : scripts) {
            String text = TextFile.read(script, "script");
            Optional<String> formatted = format(format, text);
            if (formatted.isEmpty()) {
                throw new UserException(ExitCode.USAGE, "'" + script + "' has a syntax error, so its words cannot be told apart; nothing was"
                        + " written. 'girandole check' says where it is.");
            }
            if (!formatted.get().equals(text)) {
                changed.put(script, formatted.get());
            }
        }
        return changed;
    }

    /** A script whose lines all end as in DOS keeps them. */
    private static Optional<String> format(ScriptFormat format, String text) {
        String plain = text.replace("\r\n", "\n");
        boolean dos = !plain.equals(text) && plain.equals(text.replace("\r", "")) && text.length() - plain.length() == lines(plain);
        return format.format(plain).map(formatted -> dos ? formatted.replace("\n", "\r\n") : formatted);
    }

    private static long lines(String text) {
        return text.chars().filter(c -> c == '\n').count();
    }

    private static void write(Path script, String text) {
        try {
            // A link stays a link: the file it leads to is written.
            Path file = script.toRealPath();
            if (!Files.isWritable(file)) {
                throw new UserException(ExitCode.NOT_WRITTEN, "'" + script + "' may not be written to. Check its permissions.");
            }
            OutputFile.write(file, out -> out.write(text.getBytes(StandardCharsets.UTF_8)));
        } catch (IOException e) {
            throw new UserException(ExitCode.NOT_WRITTEN, "'" + script + "' could not be written: " + e.getMessage());
        }
    }
}
