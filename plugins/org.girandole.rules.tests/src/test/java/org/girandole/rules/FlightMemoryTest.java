package org.girandole.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.girandole.lang.check.CheckedShow;
import org.girandole.lang.check.ShowPipeline;
import org.girandole.plan.Finding;
import org.girandole.plan.Plan;
import org.girandole.plan.fallout.FlightMemory;
import org.girandole.plan.rules.Checker;
import org.girandole.plan.script.Site;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is found with a memory of earlier flights, whatever is in it, is what is found without. */
class FlightMemoryTest {
    private static final Pattern NUMBER = Pattern.compile("(?<![\\w.])\\d+(?:\\.\\d+)?(?![\\w.:-])");
    private static final FlightMemory SHARED = new FlightMemory();
    private static final ShowPipeline PIPELINE = new ShowPipeline();

    @TempDir
    private Path folder;

    static List<Fixture> fixtures() {
        return Fixture.all();
    }

    static List<Fixture> aboutFallout() {
        return fixtures().stream().filter(fixture -> fixture.rule().startsWith("fallout")).toList();
    }

    /** One memory for all fixtures, each asked twice: what one leaves there must not show in another. */
    @ParameterizedTest
    @MethodSource("fixtures")
    void everyFixtureIsFoundAlike(Fixture fixture) {
        plan(fixture.file(), Fixture.ROOT).ifPresent(plan -> {
            foundAlike(plan);
            foundAlike(plan);
        });
    }

    @Test
    void theExamplesAreFoundAlike() throws IOException {
        for (String example : List.of("../../examples/harbour-night", "../../examples/mistakes")) {
            Path root = Path.of(example);
            try (Stream<Path> files = Files.list(root)) {
                files.filter(file -> file.toString().endsWith(".show")).sorted().forEach(file -> plan(file, root).ifPresent(this::foundAlike));
            }
        }
    }

    /** Each number of the script in turn is changed by a tenth, and back: an edit must never meet the flights of another text. */
    @ParameterizedTest
    @MethodSource("aboutFallout")
    void everyChangedNumberIsFoundAlike(Fixture fixture) throws IOException {
        String script = String.join("\n", fixture.script());
        FlightMemory memory = new FlightMemory();
        List<List<Finding>> all = new ArrayList<>();
        for (MatchResult number : NUMBER.matcher(script).results().toList()) {
            for (String value : List.of(times(number.group(), 1.1), number.group())) {
                Path file = Files.writeString(folder.resolve("edited.show"), script.substring(0, number.start()) + value
                        + script.substring(number.end()));
                plan(file, folder).ifPresent(plan -> {
                    List<Finding> found = Checker.check(plan, memory).findings();
                    assertThat(found).isEqualTo(Checker.check(plan).findings());
                    all.add(found);
                });
            }
        }
        // Some of these edits must be edits that are found, or this would prove nothing.
        assertThat(all.stream().distinct()).hasSizeGreaterThan(1);
    }

    @ParameterizedTest
    @MethodSource("aboutFallout")
    void everyWindIsFoundAlike(Fixture fixture) {
        FlightMemory memory = new FlightMemory();
        plan(fixture.file(), Fixture.ROOT).ifPresent(plan -> {
            for (double fromDeg : new double[] {0, 90, 200}) {
                for (double speedMps : new double[] {0, 4, 12}) {
                    Plan blown = plan.inWind(Optional.of(new Site.Wind(fromDeg, speedMps, Optional.empty(), plan.script().show().source())));
                    assertThat(Checker.check(blown, memory).findings()).isEqualTo(Checker.check(blown).findings());
                }
            }
        });
    }

    private void foundAlike(Plan plan) {
        assertThat(Checker.check(plan, SHARED).findings()).isEqualTo(Checker.check(plan).findings());
    }

    private static Optional<Plan> plan(Path file, Path root) {
        CheckedShow show = PIPELINE.check(file, root);
        return show.plan().map(checked -> checked.plan());
    }

    private static String times(String number, double factor) {
        return number.contains(".") ? Double.toString(Math.round(Double.parseDouble(number) * factor * 1000) / 1000.0)
                : Long.toString(Math.round(Long.parseLong(number) * factor + 0.5));
    }
}
