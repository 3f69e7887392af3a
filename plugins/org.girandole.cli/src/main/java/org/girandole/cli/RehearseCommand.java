package org.girandole.cli;

import java.io.ByteArrayOutputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.girandole.lang.check.CheckedShow;
import org.girandole.lang.check.ShowPipeline;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.rehearse.ImpossibleNight;
import org.girandole.plan.rehearse.RecordedNight;
import org.girandole.plan.rehearse.RehearsalException;
import org.girandole.plan.rehearse.Rehearsals;
import org.girandole.plan.rehearse.Sweep;
import org.girandole.plan.script.Rehearsal;
import org.girandole.sheets.print.PaperSize;
import org.girandole.sheets.print.PdfWriter;
import org.girandole.sheets.print.RehearsalPages;
import org.girandole.sheets.print.values.NightReport;
import org.girandole.sheets.print.values.SweepWords;
import org.girandole.timecode.ltc.ReleaseMark;
import org.girandole.timecode.reader.ChannelReport;
import org.girandole.timecode.reader.LineReport;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Goes through nights on which timecode, controller or shooter fail. */
@Command(name = "rehearse", mixinStandardHelpOptions = true, header = "Lets the night go wrong on paper.",
        description = {"", "Goes through the rehearsals of a script, or through a recorded timecode line, with a model of the controller: which cues"
                + " fire, which do not, how late, what the audience would notice, and what is left in the tubes. The controller is as the script's"
                + " firing system says; how the real one behaves, its maker says.", ""},
        footer = {"", "Examples:",
            "  girandole rehearse my-show.show",
            "  girandole rehearse my-show.show --scenario \"Lost code\" --svg night.svg --pdf night.pdf",
            "  girandole rehearse my-show.show --recording line.wav",
            "  girandole rehearse my-show.show --sweep",
            "", "Exit code 1: an expectation is not met, a rehearsal contradicts itself, or a recording says less than the whole night.",
            "Exit code 2: the recording cannot be read, or is at another rate or of another show."})
final class RehearseCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;
    @Parameters(index = "0", paramLabel = "SCRIPT", description = "The script of the show.")
    private Path script;
    @Option(names = "--scenario", paramLabel = "NAME", description = "Only this rehearsal of the script. Default: all of them.")
    private String scenario;
    @Option(names = "--recording", paramLabel = "FILE", description = "Rehearse with the timecode of this WAV file instead.")
    private Path recording;
    @Option(names = "--soundtrack", paramLabel = "NAME", description = "With --recording: what was recorded; default: the one whose slot it tells,"
            + " or the only one. With --sweep: only this one.")
    private String soundtrack;
    @Option(names = "--sweep", description = "Lose the code at every second, for several lengths and clocks, and say where it hurts most.")
    private boolean sweep;
    @Option(names = "--svg", paramLabel = "FILE", description = "Draw the night, if it is a single one.")
    private Path svg;
    @Option(names = "--html", paramLabel = "FILE", description = "Write a page.")
    private Path html;
    @Option(names = "--pdf", paramLabel = "FILE", description = "Write the page as PDF.")
    private Path pdf;
    @Option(names = "--root", paramLabel = "FOLDER", description = "The project folder; see check.")
    private Path root;

    @Override
    public Integer call() {
        Quiet.libraries();
        if (scenario != null && recording != null) {
            throw new UserException(ExitCode.USAGE, "--scenario and --recording exclude each other: a recording is a night of its own.");
        }
        Scripts place = Scripts.of(script, root);
        CheckedShow show = new ShowPipeline().check(place.script(), place.root());
        ShowLines lines = new ShowLines(show, place);
        CheckedPlan checked = show.plan().orElseThrow();
        PrintWriter out = spec.commandLine().getOut();
        out.println(lines.plan().script().show().label() + ", release " + lines.plan().stamp().printed());
        List<String> impossible = new ArrayList<>();
        List<NightReport> nights = recording == null ? written(lines.plan(), impossible) : List.of(recorded(lines));
        boolean wrong = !impossible.isEmpty();
        for (NightReport night : nights) {
            out.println();
            RehearsalPages.lines(night).forEach(out::println);
            wrong |= night.troubled();
        }
        List<String> swept = new ArrayList<>();
        if (sweep) {
            wrong |= sweep(lines, swept);
            out.println();
            swept.forEach(out::println);
        }
        out.flush();
        impossible.forEach(spec.commandLine().getErr()::println);
        write(checked, nights, swept);
        if (!show.loaded().problems().isEmpty()) {
            spec.commandLine().getErr().println("The script has mistakes, and what they concern is left out above. Check it: girandole check " + script);
            wrong = true;
        }
        return wrong ? ExitCode.ERRORS_FOUND : ExitCode.OK;
    }

    private List<NightReport> written(Plan plan, List<String> impossible) {
        List<Rehearsal> all = plan.script().rehearsals();
        List<Rehearsal> chosen = scenario == null ? all : all.stream().filter(each -> each.name().equals(scenario)).toList();
        if (chosen.isEmpty() && (scenario != null || !sweep)) {
            throw new UserException(ExitCode.USAGE, (scenario == null ? "the script has no rehearsal. Write one, such as rehearse \"Lost code\""
                    + " { timecode lost from 1:00 to 1:25 }, or use --recording or --sweep." : "the script has no rehearsal '" + scenario + "'. It has "
                    + (all.isEmpty() ? "none." : all.stream().map(each -> "'" + each.name() + "'").collect(Collectors.joining(", ")) + ".")));
        }
        List<NightReport> nights = new ArrayList<>();
        for (Rehearsal each : chosen) {
            try {
                nights.add(NightReport.of(Rehearsals.of(plan, each), Optional.of(each), plan.script().show().syncWithinUs(), List.of(), List.of()));
            } catch (ImpossibleNight e) {
                impossible.add(told(e));
            }
        }
        return nights;
    }

    private static String told(ImpossibleNight e) {
        return e.source().file() + ":" + e.source().line() + ": " + e.getMessage() + ". Found: " + e.found() + "; expected: " + e.allowed() + ". To mend it, "
                + e.remedy() + ".";
    }

    private NightReport recorded(ShowLines lines) {
        LineReport report = RecordedLine.read(recording);
        PlannedSoundtrack track = soundtrack != null ? lines.named(soundtrack) : told(report, lines);
        Plan plan = lines.plan();
        long lastCueUs = plan.cues().stream().filter(cue -> cue.slot() == track.slot()).mapToLong(cue -> cue.timing().fireUs()).max().orElse(0);
        try {
            RecordedNight night = RecordedNight.of(report, track, plan.stamp(), lastCueUs);
            return NightReport.of(Rehearsals.of(plan, track, recording.getFileName().toString(), night.signal()), Optional.empty(),
                    plan.script().show().syncWithinUs(), night.notes(), night.doubts());
        } catch (RehearsalException e) {
            throw new UserException(ExitCode.USAGE, e.getMessage() + ".");
        } catch (ImpossibleNight e) {
            throw new UserException(ExitCode.ERRORS_FOUND, told(e));
        }
    }

    /** The soundtrack whose slot the recording tells, or the only one; any of them, when there is no timecode that would have to be that of one. */
    private static PlannedSoundtrack told(LineReport report, ShowLines lines) {
        Optional<Integer> slot = report.timecodeChannel().flatMap(ChannelReport::timecode).flatMap(reading -> reading.userBits().mark())
                .map(ReleaseMark::slot);
        if (slot.isEmpty() && (lines.soundtracks().size() == 1 || report.timecodeChannel().isEmpty())) {
            return lines.soundtracks().get(0);
        }
        return lines.soundtracks().stream().filter(each -> slot.filter(found -> found == each.slot()).isPresent()).findFirst()
                .orElseThrow(() -> new UserException(ExitCode.USAGE, slot.map(found -> "the recording is timecode of slot " + found
                        + ", and the show has nothing in that slot. Is it of another show?").orElse("the recording does not tell its slot. Say which"
                        + " soundtrack it is, with --soundtrack NAME.")));
    }

    private boolean sweep(ShowLines lines, List<String> told) {
        boolean wrong = false;
        List<PlannedSoundtrack> tracks = soundtrack == null ? lines.soundtracks() : List.of(lines.named(soundtrack));
        for (PlannedSoundtrack track : tracks) {
            try {
                Sweep swept = Sweep.of(lines.plan(), track);
                told.addAll(SweepWords.lines(lines.plan(), track, swept));
                wrong |= !swept.disagreements().isEmpty() || swept.holdover().stream().anyMatch(each -> !each.agree());
            } catch (ImpossibleNight e) {
                throw new UserException(ExitCode.ERRORS_FOUND, told(e));
            }
        }
        return wrong;
    }

    private void write(CheckedPlan checked, List<NightReport> nights, List<String> swept) {
        if (svg != null) {
            if (nights.size() != 1) {
                throw new UserException(ExitCode.USAGE, "there are " + nights.size() + " nights, and '" + svg + "' holds one drawing. Name one with --scenario.");
            }
            String drawing = RehearsalPages.svg(checked, nights.get(0));
            OutputFile.write(svg, file -> file.write(drawing.getBytes(StandardCharsets.UTF_8)));
        }
        if (html == null && pdf == null) {
            return;
        }
        PaperSize paper = PaperSize.of(checked.plan().script());
        String page = RehearsalPages.html(checked, nights, swept, paper, Version.tool());
        if (html != null) {
            OutputFile.write(html, file -> file.write(page.getBytes(StandardCharsets.UTF_8)));
        }
        if (pdf != null) {
            OutputFile.write(pdf, file -> {
                ByteArrayOutputStream bytes = new ByteArrayOutputStream();
                PdfWriter.write(page, bytes);
                bytes.writeTo(file);
            });
        }
    }
}
