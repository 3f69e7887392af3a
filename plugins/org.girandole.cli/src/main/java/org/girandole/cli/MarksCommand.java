package org.girandole.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Holds what is done with marks and tempo. */
@Command(name = "marks", mixinStandardHelpOptions = true,
        subcommands = {MarksFindCommand.class, MarksAlignCommand.class, MarksImportCommand.class, MarksExportCommand.class},
        header = "Finds marks in music, moves them to a new edit, and exchanges them with other programs.",
        description = {"", "What is heard is a proposal, with a confidence beside it. Nothing that a person wrote is changed unless that is asked"
                + " for.", ""},
        footer = {"", "Examples:",
            "  girandole marks find tides.wav --click click.wav    listen to a track, and to what was found",
            "  girandole marks find tides.wav --into my-show.show  write tempo and marks into the script",
            "  girandole marks align old.wav new.wav --into my-show.show",
            "                                                      the band has sent a new edit",
            "  girandole marks import tides.mid --into my-show.show",
            "  girandole marks export my-show.show -o tides.txt"})
final class MarksCommand implements Runnable {
    @Spec
    private CommandSpec spec;

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "Say what to do: marks find, marks align, marks import or marks export.");
    }
}
