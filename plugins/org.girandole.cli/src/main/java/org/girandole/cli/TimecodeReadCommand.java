package org.girandole.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.girandole.lang.check.ShowPipeline;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.sheets.sound.ShowLine;
import org.girandole.timecode.ltc.ReleaseMark;
import org.girandole.timecode.reader.ChannelReport;
import org.girandole.timecode.reader.LineDemands;
import org.girandole.timecode.reader.LineExpectation;
import org.girandole.timecode.reader.LineJudge;
import org.girandole.timecode.reader.LinePlot;
import org.girandole.timecode.reader.LineReport;
import org.girandole.timecode.reader.LineReportHtml;
import org.girandole.timecode.reader.LineReportJson;
import org.girandole.timecode.reader.LineReportText;
import org.girandole.timecode.reader.LineVerdict;
import org.girandole.timecode.reader.TimecodeReading;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Says whether a recorded line is good enough for the night. */
@Command(name = "read", mixinStandardHelpOptions = true, header = "Reads a recorded timecode line and judges it.",
        description = {"", "Reads every channel, at any level and polarity, half to twice the speed, forwards and backwards, through noise and"
                + " drop-outs, and says what was found and whether it is fit for the night. With a script it also says whether it is that"
                + " show's timecode, and of this very version.", ""},
        footer = {"", "Examples:",
            "  girandole timecode read recording.wav",
            "  girandole timecode read recording.wav --script my-show.show --plot line.svg",
            "", "Exit code 0: fit, perhaps with care; 1: not fit; 2: the recording cannot be read."})
final class TimecodeReadCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;
    @Parameters(paramLabel = "RECORDING", description = "A WAV file.")
    private Path recording;
    @Option(names = "--script", paramLabel = "SCRIPT", description = "The show whose timecode it should be.")
    private Path script;
    @Option(names = "--soundtrack", paramLabel = "NAME", description = "With --script: which soundtrack it should be. Default: the one whose slot"
            + " the recording tells, or else whose labels it begins with.")
    private String soundtrack;
    @Option(names = "--channel", paramLabel = "NUMBER", description = "Judge this channel, counted from 1. Default: the one with most timecode.")
    private Integer channel;
    @Option(names = "--plot", paramLabel = "FILE", description = "Draw lock, level and speed against time into this SVG file.")
    private Path plot;
    @Option(names = "--output", paramLabel = "FORM", defaultValue = "text",
            description = "${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE}).")
    private Form form;
    @Option(names = "--root", paramLabel = "FOLDER",
            description = "The project folder of the script. Default: the nearest folder upward with a pom.xml, else the script's own folder.")
    private Path root;

    @Override
    public Integer call() {
        Quiet.libraries();
        Optional<ShowLines> lines = script == null ? Optional.empty() : Optional.of(lines());
        LineReport report = chosen(RecordedLine.read(recording));
        Optional<ShowLine> line = lines.map(all -> expected(all, report));
        LineVerdict verdict = LineJudge.judge(report, line.map(ShowLine::expectation).orElse(LineExpectation.none()), LineDemands.usual());
        PrintWriter out = spec.commandLine().getOut();
        if (form == Form.json) {
            out.print(LineReportJson.write(report, verdict, false));
        } else {
            String title = recording + line.map(each -> " beside " + lines.orElseThrow().plan().script().show().label() + ", "
                    + ShowLines.name(each.soundtrack()) + ", stamp " + lines.orElseThrow().plan().stamp().printed()).orElse("");
            if (form == Form.html) {
                out.print(LineReportHtml.page(title, report, verdict));
            } else {
                tell(title, report, verdict, out);
            }
        }
        out.flush();
        draw(report);
        return verdict.fitness() == LineVerdict.Fitness.UNFIT ? ExitCode.ERRORS_FOUND : ExitCode.OK;
    }

    private void tell(String title, LineReport report, LineVerdict verdict, PrintWriter out) {
        out.println(title);
        LineReportText.lines(report, verdict).forEach(out::println);
        if (script == null) {
            out.println("Whether it is the timecode of a show and of its latest version, --script SCRIPT tells.");
        }
    }

    private ShowLines lines() {
        Scripts place = Scripts.of(script, root);
        return new ShowLines(new ShowPipeline().check(place.script(), place.root()), place);
    }

    /** The report of one channel alone, if one was named. */
    private LineReport chosen(LineReport all) {
        if (channel == null) {
            return all;
        }
        List<ChannelReport> one = all.channels().stream().filter(each -> each.channel() == channel).toList();
        if (one.isEmpty()) {
            throw new UserException(ExitCode.USAGE, "the recording has no channel " + channel + "; it has " + all.channels().size() + ".");
        }
        return new LineReport(all.sampleRate(), all.sampleFrames(), all.warnings(), one);
    }

    /** The line that the recording should hold: the named one, else that of the slot it tells, else that of its labels, else the first. */
    private ShowLine expected(ShowLines lines, LineReport report) {
        if (soundtrack != null) {
            return lines.line(lines.named(soundtrack));
        }
        Optional<TimecodeReading> reading = report.timecodeChannel().flatMap(ChannelReport::timecode);
        Optional<Integer> slot = reading.flatMap(each -> each.userBits().mark()).map(ReleaseMark::slot);
        for (PlannedSoundtrack each : lines.soundtracks()) {
            if (slot.filter(found -> found == each.slot()).isPresent()) {
                return lines.line(each);
            }
        }
        for (PlannedSoundtrack each : lines.soundtracks()) {
            if (each.line().isPresent() && reading.filter(found -> begins(found, lines.line(each))).isPresent()) {
                return lines.line(each);
            }
        }
        return lines.line(lines.soundtracks().get(0));
    }

    private static boolean begins(TimecodeReading reading, ShowLine line) {
        return reading.first().label(line.line().rate())
                .filter(label -> label.framesAfter(line.line().start()) <= line.line().rate().framesIn(line.line().prerollUs() + line.lengthUs()))
                .isPresent();
    }

    private void draw(LineReport report) {
        if (plot == null) {
            return;
        }
        Optional<ChannelReport> best = report.timecodeChannel();
        if (best.isEmpty()) {
            throw new UserException(ExitCode.ERRORS_FOUND, "there is nothing to draw into '" + plot + "': no timecode was found.");
        }
        String svg = LinePlot.svg(report, best.get().timecode().orElseThrow(), recording.getFileName() + ", channel " + best.get().channel());
        OutputFile.write(plot, out -> out.write(svg.getBytes(StandardCharsets.UTF_8)));
    }

    /** How the reading is told; the names are the words of the command line. */
    enum Form {
        text, html, json
    }
}
