package org.girandole.cli;

import java.util.concurrent.Callable;
import picocli.AutoComplete;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Prints the script that lets a shell complete commands and options. */
@Command(name = "completion", mixinStandardHelpOptions = true, header = "Prints a completion script for bash and zsh.",
        footer = {"", "Example:", "  source <(girandole completion)"})
final class CompletionCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() {
        spec.commandLine().getOut().print(AutoComplete.bash("girandole", spec.root().commandLine()));
        spec.commandLine().getOut().flush();
        return ExitCode.OK;
    }
}
