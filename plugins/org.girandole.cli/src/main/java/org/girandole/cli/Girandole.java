package org.girandole.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The command that holds the others. */
@Command(name = "girandole", mixinStandardHelpOptions = true, versionProvider = Version.class,
        subcommands = {
            CheckCommand.class,
            ReleaseCommand.class,
            AllocateCommand.class,
            ExplainCommand.class,
            DiffCommand.class,
            GitDiffCommand.class,
            GitTextCommand.class,
            SiteCommand.class,
            FormatCommand.class,
            WaiversCommand.class,
            VerifyCommand.class,
            SignCommand.class,
            MeterCommand.class,
            AccountCommand.class,
            ReliabilityCommand.class,
            TimecodeCommand.class,
            RehearseCommand.class,
            MarksCommand.class,
            RenderCommand.class,
            NewCommand.class,
            ServeCommand.class,
            CompletionCommand.class,
        },
        header = "Checks and releases choreographed fireworks shows.",
        description = {"", "Girandole is a planning aid for licensed people. It never arms or fires anything. Local law, the authority having"
                + " jurisdiction, the manufacturer's data and a licensed pyrotechnician's judgement come first.", ""},
        optionListHeading = "%nOptions:%n", commandListHeading = "%nCommands:%n",
        footer = {"", "Examples:",
                "  girandole new my-show                          begin a show",
                "  girandole check my-show/my-show.show           find its mistakes",
                "  girandole allocate my-show/my-show.show        give every cue its tube and pin, and remember them",
                "  girandole release my-show/my-show.show         write tables and sheets",
                "  girandole explain my-show/my-show.show Hero    see how a cue's time comes about",
                "  girandole diff --git HEAD my-show/my-show.show see what your edit changes",
                "  girandole site my-show/my-show.show --wind \"9 m/s from 200 deg\"",
                "                                                 what is clean in tonight's wind",
                "  girandole format my-show/my-show.show          give the script its one form",
                "  girandole waivers my-show/my-show.show         what somebody agreed to live with",
                "  girandole verify release                       prove that a release is whole and unaltered",
                "  girandole timecode write my-show/my-show.show -o timecode.wav",
                "                                                 the file that the sound desk plays",
                "  girandole timecode read recording.wav          whether a recorded line is fit for the night",
                "  girandole marks find tides.wav                 tempo and marks as they are heard in a track",
                "  girandole rehearse my-show/my-show.show        let the night go wrong on paper",
                "  girandole help check                           more about a command",
                "", "Exit codes:",
                "  0  done, nothing grave found",
                "  1  the script has errors that nobody has agreed to; a waiver has expired; a release is not whole;",
                "     a recorded line is not fit",
                "  2  wrong command line, or a file that cannot be read",
                "  3  the output could not be written",
                " 70  a mistake of the program itself"})
final class Girandole implements Runnable {
    @Spec
    private CommandSpec spec;

    /** The whole command line. */
    static CommandLine commandLine() {
        CommandLine line = new CommandLine(new Girandole());
        line.addSubcommand(new CommandLine.HelpCommand());
        line.setUsageHelpWidth(100);
        line.setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF));
        line.getCommandSpec().exitCodeOnInvalidInput(ExitCode.USAGE);
        return line;
    }

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "Say what to do: " + String.join(", ", spec.subcommands().keySet()) + ".");
    }
}
