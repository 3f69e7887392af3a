package org.girandole.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
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
        description = {"", "Only space and line breaks change; comments stay. A file that is in its form already is not touched, nor is one"
                + " that cannot be read.", ""},
        footer = {"", "Examples:",
                "  girandole format my-show.show",
                "  girandole format --check shows/*.show",
                "", "Exit code 1 says, with --check, that some file is not in its form."})
final class FormatCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;
    @Parameters(arity = "1..*", paramLabel = "SCRIPT", description = "Scripts to format in place.")
    private List<Path> scripts;
    @Option(names = "--check", description = "Change nothing; list the files that are not in their form.")
    private boolean check;

    @Override
    public Integer call() {
        Quiet.libraries();
        PrintWriter out = spec.commandLine().getOut();
        ScriptFormat format = new ScriptFormat();
        int other = 0;
        for (Path script : scripts) {
            String text = read(script);
            Optional<String> formatted = format.format(text);
            if (formatted.isEmpty()) {
                throw new UserException(ExitCode.USAGE, "'" + script
                        + "' was left as it is: it cannot be read. 'girandole check' says where.");
            }
            if (!formatted.get().equals(text)) {
                other++;
                if (!check) {
                    OutputFile.write(script, file -> file.write(formatted.get().getBytes(StandardCharsets.UTF_8)));
                }
                out.println((check ? "Not in its form: " : "Formatted ") + script);
            }
        }
        out.println(other == 0 ? "All files are in their form." : other + (other == 1 ? " file " : " files ")
                + (check ? "to format." : "formatted."));
        out.flush();
        return check && other > 0 ? ExitCode.ERRORS_FOUND : ExitCode.OK;
    }

    private static String read(Path script) {
        try {
            return Files.readString(script, StandardCharsets.UTF_8);
        } catch (CharacterCodingException e) {
            throw new UserException(ExitCode.USAGE, "'" + script + "' is not UTF-8 text. Save it as UTF-8.");
        } catch (IOException e) {
            throw new UserException(ExitCode.USAGE, "'" + script + "' cannot be read. Check the name and the permissions.");
        }
    }
}
