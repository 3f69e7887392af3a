package org.girandole.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.girandole.lang.check.CheckedShow;
import org.girandole.lang.check.ShowPipeline;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.Severity;
import org.girandole.plan.script.AudioFile;
import org.girandole.sheets.sound.MusicSource;
import org.girandole.sheets.sound.ShowLine;
import org.girandole.timecode.TimecodeException;
import org.girandole.timecode.TimecodeLine;
import org.girandole.timecode.ltc.ChannelFeed;
import org.girandole.timecode.ltc.TimecodeFile;
import org.girandole.timecode.ltc.TimecodeWavWriter;
import org.girandole.timecode.ltc.TimecodeWavWriter.Written;
import org.girandole.timecode.wav.SampleDepth;
import org.girandole.timecode.wav.SampleSource;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Writes the file that the sound desk plays. */
@Command(name = "write", mixinStandardHelpOptions = true, header = "Writes the timecode of a soundtrack as a WAV file.",
        description = {"", "The file begins with the pre-roll and ends a run-out after the last effect. Its user bits carry the slot and the"
                + " release stamp, so that a recording can be told from that of another show or another day.", ""},
        footer = {"", "Examples:",
            "  girandole timecode write my-show.show -o timecode.wav",
            "  girandole timecode write my-show.show -o desk.wav --music left --bits 24",
            "  girandole timecode write my-show.show -o desk.wav --channels 1,2,silent,timecode"})
final class TimecodeWriteCommand implements Callable<Integer> {
    private static final List<Integer> RATES = List.of(44_100, 48_000, 96_000);
    private static final double LEAST_LEVEL_DBFS = -60;

    @Spec
    private CommandSpec spec;
    @Parameters(paramLabel = "SCRIPT", description = "The script of the show.")
    private Path script;
    @Option(names = {"-o", "--into"}, required = true, paramLabel = "FILE", description = "The WAV file to write; an older one is replaced.")
    private Path into;
    @Option(names = "--soundtrack", paramLabel = "NAME", description = "Which soundtrack. Default: the one in the first slot.")
    private String soundtrack;
    @Option(names = "--rate", paramLabel = "HZ", defaultValue = "48000", description = "44100, 48000 or 96000 (default: ${DEFAULT-VALUE}).")
    private int rate;
    @Option(names = "--bits", paramLabel = "BITS", defaultValue = "16", description = "16 or 24 (default: ${DEFAULT-VALUE}).")
    private int bits;
    @Option(names = "--level", paramLabel = "DBFS", defaultValue = "-12",
            description = "Peak level of the timecode, decibels relative to full scale, -60 to 0 (default: ${DEFAULT-VALUE}).")
    private double level;
    @Option(names = "--music", paramLabel = "WHERE", defaultValue = "none",
            description = "none: timecode alone. left or right: music there, timecode on the other channel. stereo: music on 1 and 2, timecode on"
                    + " 3 (default: ${DEFAULT-VALUE}).")
    private ChannelPlan.Music music;
    @Option(names = "--channels", paramLabel = "LIST", description = "Instead of --music: what each channel carries, separated by commas:"
            + " timecode, mix, silent, or the number of a music channel.")
    private String channels;
    @Option(names = "--root", paramLabel = "FOLDER",
            description = "The project folder. Default: the nearest folder upward with a pom.xml, else the script's own folder.")
    private Path root;

    @Override
    public Integer call() {
        Quiet.libraries();
        List<ChannelFeed> feeds = channels == null ? music.feeds() : ChannelPlan.parse(channels);
        checkOptions();
        Scripts place = Scripts.of(script, root);
        CheckedShow show = new ShowPipeline().check(place.script(), place.root());
        ShowLines lines = new ShowLines(show, place);
        PlannedSoundtrack played = soundtrack == null ? lines.soundtracks().get(0) : lines.named(soundtrack);
        ShowLine line = lines.line(played);
        Written written;
        TimecodeFile file;
        try {
            file = line.file(rate, bits == 16 ? SampleDepth.PCM_16 : SampleDepth.PCM_24, level, feeds);
            written = write(file, music(played, feeds, place));
        } catch (TimecodeException e) {
            throw new UserException(ExitCode.USAGE, e.getMessage() + ".");
        }
        report(show, lines, line, file, written);
        return ExitCode.OK;
    }

    private void checkOptions() {
        if (!RATES.contains(rate)) {
            throw new UserException(ExitCode.USAGE, "--rate " + rate + " is not written; expected 44100, 48000 or 96000.");
        }
        if (bits != 16 && bits != 24) {
            throw new UserException(ExitCode.USAGE, "--bits " + bits + " is not written; expected 16 or 24.");
        }
        if (!(level >= LEAST_LEVEL_DBFS && level <= 0)) {
            throw new UserException(ExitCode.USAGE, "--level " + level + " is not written; expected -60 to 0 dBFS, such as -12.");
        }
        if (!into.toString().toLowerCase(Locale.ROOT).endsWith(".wav")) {
            throw new UserException(ExitCode.USAGE, "'" + into + "' is no name for a WAV file; it must end in .wav.");
        }
    }

    private static boolean wantsMusic(List<ChannelFeed> feeds) {
        return feeds.stream().anyMatch(feed -> feed instanceof ChannelFeed.MusicFeed || feed instanceof ChannelFeed.MusicMixFeed);
    }

    /** The music, if a channel wants it. */
    private Optional<Path> music(PlannedSoundtrack played, List<ChannelFeed> feeds, Scripts place) {
        if (!wantsMusic(feeds)) {
            return Optional.empty();
        }
        AudioFile audio = played.script().audio().orElseThrow(() -> new UserException(ExitCode.ERRORS_FOUND, "soundtrack " + played.name()
                + " names no audio, so there is no music to write. Write 'audio \"music.wav\"' into it, or leave --music out."));
        if (audio.found().isEmpty()) {
            throw new UserException(ExitCode.ERRORS_FOUND, "the music of " + played.name() + ", '" + audio.path() + "', cannot be read"
                    + audio.trouble().map(trouble -> ": " + trouble).orElse("") + ".");
        }
        Path file = place.root().resolve(audio.path());
        if (file.normalize().equals(into.toAbsolutePath().normalize())) {
            throw new UserException(ExitCode.USAGE, "'" + into + "' is the music itself. Name another file.");
        }
        return Optional.of(file);
    }

    private Written write(TimecodeFile file, Optional<Path> music) {
        Written[] written = new Written[1];
        try (SampleSource source = music.isEmpty() ? null : open(music.get())) {
            OutputFile.write(into, out -> written[0] = TimecodeWavWriter.write(out, file, Optional.ofNullable(source)));
        } catch (IOException e) {
            throw new UserException(ExitCode.USAGE, "the music could not be closed: " + e.getMessage());
        } catch (IllegalArgumentException e) {
            throw new UserException(ExitCode.USAGE, e.getMessage() + ".");
        }
        return written[0];
    }

    private static SampleSource open(Path music) {
        try {
            return MusicSource.open(music);
        } catch (IOException e) {
            throw new UserException(ExitCode.ERRORS_FOUND, "the music '" + music + "' cannot be read: " + e.getMessage());
        }
    }

    private void report(CheckedShow show, ShowLines lines, ShowLine line, TimecodeFile file, Written written) {
        PrintWriter out = spec.commandLine().getOut();
        TimecodeLine code = line.line();
        out.println("Written: " + into);
        out.println("  show       " + lines.plan().script().show().label() + ", " + ShowLines.name(line.soundtrack()) + ", stamp "
                + lines.plan().stamp().printed());
        if (soundtrack == null && lines.soundtracks().size() > 1) {
            out.println("             the first of " + lines.soundtracks().size() + " soundtracks; --soundtrack names another, such as "
                    + lines.soundtracks().get(1).name());
        }
        out.println("  timecode   " + code.rate() + ", " + code.start() + " to " + written.last() + ", " + written.timecodeFrames() + " frames");
        out.println("  first note " + code.firstNote() + ", " + seconds(code.prerollUs()) + " s into the file");
        out.println("  last       all is over by " + code.labelAt(line.lengthUs()) + "; the run-out after it is "
                + seconds(ShowLine.RUN_OUT_US) + " s");
        out.println("  file       " + file.sampleRate() + " Hz, " + file.depth().bits() + " bit, channels: "
                + ChannelPlan.words(file.channels()) + "; timecode at " + String.format(Locale.ROOT, "%.1f", file.levelDbfs()) + " dBFS");
        if (written.clippedSamples() > 0) {
            out.println("  attention  " + written.clippedSamples() + " samples of the music exceed full scale and were cut there");
        }
        if (show.failsOn(Severity.ERROR)) {
            out.println("  attention  the show has errors that nobody has agreed to ('girandole check'): good for trying the line, not for the"
                    + " night");
        }
        out.flush();
    }

    private static String seconds(long us) {
        return String.format(Locale.ROOT, "%d.%03d", us / 1_000_000, us / 1_000 % 1_000);
    }
}
