package org.girandole.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Holds what is done with timecode. */
@Command(name = "timecode", mixinStandardHelpOptions = true, subcommands = {TimecodeWriteCommand.class, TimecodeReadCommand.class},
        header = "Writes the timecode of a show, and reads a recorded line.",
        description = {"", "'write' makes the file that the sound desk plays; 'read' says whether what arrived at the other end is good enough.",
            ""},
        footer = {"", "Examples:",
            "  girandole timecode write my-show.show -o timecode.wav",
            "  girandole timecode read recording.wav --script my-show.show",
            "  girandole timecode write --help"})
final class TimecodeCommand implements Runnable {
    @Spec
    private CommandSpec spec;

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "Say what to do: timecode write or timecode read.");
    }
}
