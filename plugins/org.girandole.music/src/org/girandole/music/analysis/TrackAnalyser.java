package org.girandole.music.analysis;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.girandole.music.audio.AudioException;
import org.girandole.music.audio.AudioFacts;
import org.girandole.music.audio.AudioFiles;
import org.girandole.music.audio.AudioSource;

/**
 * Listens to a track. The file is decoded twice: once for loudness, peaks and length, once, brought to a common loudness, for
 * everything else; only curves are kept, so that a track of hours needs little memory.
 */
public final class TrackAnalyser {
    /** The loudness the curves are computed at. */
    private static final double COMMON_LUFS = -16;
    /** No gain beyond this: it would only bring up the noise of a silent track. */
    private static final double MOST_GAIN_DB = 40;
    /** Mixed channels with less than this part of their power cancel each other; then the first one is listened to. */
    private static final double CANCELLED = 0.02;
    private static final int FEWEST_BEATS = 8;

    private TrackAnalyser() {
    }

    /**
     * Analyses a sound file.
     *
     * @throws AudioException if it is not sound, or has no sample
     * @throws IOException    if the file cannot be read at all
     */
    public static TrackAnalysis analyse(Path audio) throws IOException {
        Overview overview = overview(audio);
        return listen(overview, features(audio, overview));
    }

    /** What the first decoding tells. */
    private record Overview(AudioFacts facts, Loudness loudness, Peaks peaks, boolean cancels) {
    }

    private static Overview overview(Path audio) throws IOException {
        try (AudioSource source = AudioFiles.open(audio)) {
            LoudnessMeter meter = new LoudnessMeter(source.sampleRate(), source.channels());
            Peaks.Builder peaks = new Peaks.Builder(source.sampleRate());
            MixCheck mix = new MixCheck();
            long frames = SampleSink.play(source, List.of(meter, peaks, mix));
            if (frames == 0) {
                throw new AudioException(AudioException.Kind.EMPTY, "The file (" + source.format() + ") holds no sound at all");
            }
            AudioFacts facts = new AudioFacts(source.format(), source.sampleRate(), source.channels(), frames,
                    AudioFiles.lengthUs(frames, source.sampleRate()), AudioFiles.sha256(audio), source.remarks());
            return new Overview(facts, meter.loudness(), peaks.peaks(), mix.mixed < CANCELLED * mix.single);
        }
    }

    /** Power of the mix against that of the channels. */
    private static final class MixCheck implements SampleSink {
        private double mixed;
        private double single;

        @Override
        public void take(float[][] channels, int count) {
            // Every eighth sample is enough to tell.
            for (int i = 0; i < count; i += 8) {
                double sum = 0;
                for (float[] channel : channels) {
                    sum += channel[i];
                    single += (double) channel[i] * channel[i] / channels.length;
                }
                mixed += sum * sum / ((double) channels.length * channels.length);
            }
        }
    }

    static Features features(Path audio) throws IOException {
        return features(audio, overview(audio));
    }

    private static Features features(Path audio, Overview overview) throws IOException {
        double lufs = overview.loudness.integratedLufs();
        double gainDb = Double.isInfinite(lufs) ? 0 : Math.min(MOST_GAIN_DB, COMMON_LUFS - lufs);
        try (AudioSource source = AudioFiles.open(audio)) {
            FeatureExtractor extractor = new FeatureExtractor(source.sampleRate(), Math.pow(10, gainDb / 20),
                    overview.cancels ? 0 : -1);
            SampleSink.play(source, List.of(extractor));
            return extractor.features();
        }
    }

    /**
     * The beats from the first onset to the last: the tracker carries on into the silence, and leaves out a first beat that
     * stands at the very start of the file, where nothing rises.
     */
    private static double[] sounding(double[] beats, List<Onset> onsets) {
        if (beats.length < 2 || onsets.isEmpty()) {
            return beats;
        }
        List<Double> all = new ArrayList<>(Arrays.stream(beats).boxed().toList());
        double first = (double) onsets.get(0).timeUs() / Features.STEP_US;
        double last = (double) onsets.get(onsets.size() - 1).timeUs() / Features.STEP_US;
        double period = all.get(1) - all.get(0);
        while (all.get(0) - period / 2 > first && all.get(0) - period > -period / 4) {
            all.add(0, Math.max(0, all.get(0) - period));
        }
        double endPeriod = all.get(all.size() - 1) - all.get(all.size() - 2);
        while (all.get(all.size() - 1) + endPeriod / 2 < last) {
            all.add(all.get(all.size() - 1) + endPeriod);
        }
        return all.stream().mapToDouble(Double::doubleValue).filter(b -> b >= first - period / 2 && b <= last + endPeriod / 2)
                .toArray();
    }

    private static TrackAnalysis listen(Overview overview, Features f) {
        List<Onset> onsets = OnsetFinder.find(f);
        Accents accents = new Accents(f);
        float[] observed = BeatTracker.observation(f);
        double[] frames = sounding(MetricalLevel.beats(observed, accents), onsets);
        if (frames.length < FEWEST_BEATS || onsets.size() < FEWEST_BEATS) {
            return new TrackAnalysis(overview.facts, overview.loudness, overview.peaks, onsets, List.of(), 0, 0, 0,
                    Optional.empty(), SectionFinder.find(f, List.of()), SilenceFinder.find(f));
        }
        BarFinder.Bars bars = BarFinder.find(frames, accents);
        BarRepair.Mended mended = BarRepair.mend(frames, bars.inBar(), bars.beatsPerBar());
        long[] times = BeatTimes.refine(mended.frames(), onsets);
        List<Beat> beats = new ArrayList<>();
        for (int i = 0; i < times.length; i++) {
            int n = (int) Math.min(observed.length - 1L, Math.round(mended.frames()[i]));
            beats.add(new Beat(times[i], mended.inBar()[i], observed[n]));
        }
        List<Long> barLines = beats.stream().filter(Beat::isDownbeat).map(Beat::timeUs).toList();
        double confidence = BeatConfidence.of(beats, onsets);
        return new TrackAnalysis(overview.facts, overview.loudness, overview.peaks, onsets, beats, confidence,
                bars.beatsPerBar(), Math.min(bars.confidence(), confidence), TempoFit.fit(beats, bars.beatsPerBar()),
                SectionFinder.find(f, barLines), SilenceFinder.find(f));
    }
}
