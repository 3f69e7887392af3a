package org.girandole.plan.allocate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.girandole.plan.Finding;
import org.girandole.plan.Plan;
import org.girandole.plan.Show;
import org.girandole.plan.schedule.Planner;
import org.girandole.plan.script.ScoreItem;
import org.girandole.plan.script.ScoreItem.PinRef;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LockFileTest {
    private final Show show = new Show();

    @Test
    void whatIsWrittenIsReadBack(@TempDir Path folder) throws Exception {
        LockFile lock = LockFile.of(field(20).plan());
        Path path = LockFile.pathBeside(folder.resolve("night.show"));
        lock.write(path);

        assertThat(path.getFileName()).hasToString("night.lock");
        assertThat(LockFile.beside(folder.resolve("night.show"))).contains(lock);
        assertThat(Files.list(folder)).containsExactly(path);
        assertThat(LockFile.beside(folder.resolve("other.show"))).isEmpty();
    }

    @Test
    void itIsSortedWithALineForEachCueAndPlace() {
        assertThat(LockFile.of(field(2).plan()).text()).endsWith("""
                show Test
                Tides/-/Peony@C/1 R1:1 M1:1
                Tides/-/Peony@C/2 R1:2 M1:2
                """).startsWith("# Girandole lock file: ");
    }

    @Test
    void aCueInsertedInTheMiddleIsOneMoreLine() throws Exception {
        field(40);
        List<String> before = lines(LockFile.of(show.plan()));
        LockFile lock = LockFile.parse(String.join("\n", before));
        show.effects.add(Show.shell("Willow", 2_000_000, 0));
        show.items.add(20, show.cue(Show.clock(25_500_000), "Willow", "C").done());

        List<String> after = lines(LockFile.of(new Planner().plan(show.script(), Optional.of(lock))));

        assertThat(after).containsAll(before).hasSize(before.size() + 1);
        assertThat(after.stream().filter(line -> !before.contains(line)).toList()).containsExactly("Tides/-/Willow@C/1 R1:41 M2:9");
    }

    @Test
    void withoutAnEditNothingChangesAndNothingIsSaid() throws Exception {
        Plan plan = field(40).plan();
        LockFile lock = LockFile.of(plan);

        Plan again = new Planner().plan(show.script(), Optional.of(LockFile.parse(lock.text())));

        assertThat(LockFile.of(again)).isEqualTo(lock);
        assertThat(again.troubles()).isEmpty();
    }

    @Test
    void newGoneAndOverriddenLinesAreSaid() throws Exception {
        LockFile lock = LockFile.of(field(3).plan());
        show.items.remove(0);
        show.items.remove(0);
        show.add(show.cue(Show.clock(50_000_000), "Peony", "A").done());
        ScoreItem.Cue byHand = show.cue(Show.clock(10_000_000), "Peony", "C").pins(new PinRef("M2", 5, Show.at(1))).done();
        show.items.set(0, byHand);

        Plan plan = new Planner().plan(show.script(), Optional.of(lock));

        assertThat(plan.troubles()).filteredOn(f -> f.rule().equals("lock-stale")).extracting(Finding::message).containsExactlyInAnyOrder(
                "In the lock file of Test, 1 cue has no line: Tides/-/Peony@A/1",
                "In the lock file of Test, 2 cues are no longer in the script: Tides/-/Peony@C/2, Tides/-/Peony@C/3",
                "In the lock file of Test, 1 cue has another tube or pin in the script: Tides/-/Peony@C/1");
    }

    @Test
    void aLineThatCannotStayIsAnError() throws Exception {
        LockFile lock = LockFile.parse(LockFile.of(field(2).plan()).text().replace("M1:2", "M9:2"));

        Plan plan = new Planner().plan(show.script(), Optional.of(lock));

        assertThat(plan.troubles()).filteredOn(f -> f.rule().equals("lock-broken")).singleElement().satisfies(finding -> {
            assertThat(finding.allowed()).isEqualTo("R1:2 M9:2");
            assertThat(finding.found()).isEqualTo("R1:2 M1:2");
        });
    }

    @Test
    void aMergeThatGaveOnePinTwiceKeepsTheEarlierCue() throws Exception {
        LockFile lock = LockFile.parse(LockFile.of(field(2).plan()).text().replace("R1:2 M1:2", "R1:1 M1:1"));

        assertThat(lines(LockFile.of(new Planner().plan(show.script(), Optional.of(lock)))))
                .contains("Tides/-/Peony@C/1 R1:1 M1:1", "Tides/-/Peony@C/2 R1:2 M1:2");
    }

    @Test
    void aFreshPlanRemembersNothing() throws Exception {
        LockFile lock = LockFile.parse(LockFile.of(field(2).plan()).text().replace("M1:2", "M2:7"));

        assertThat(lines(LockFile.of(Planner.fresh().plan(show.script(), Optional.of(lock))))).contains("Tides/-/Peony@C/2 R1:2 M1:2");
    }

    @Test
    void nonsenseIsNamedWithItsLine(@TempDir Path folder) throws Exception {
        refuses("", "there is no line 'show NAME'");
        refuses("show A\n<<<<<<< HEAD\nk R:1 M:1\n", "line 2: the file is half merged");
        refuses("show A\nk R:1\n", "line 2: found 'k R:1', expected 'KEY RACK:TUBE MODULE:PIN'");
        refuses("k R:1 M:1\n", "line 1: found 'k R:1 M:1', expected 'show NAME'");
        refuses("show A\nk R:0 M:1\n", "line 2: found 'R:0', expected RACK:TUBE, counted from 1, or -");
        refuses("show A\nk R:1 M:99999999999\n", "expected MODULE:PIN");
        refuses("show A\nk R:1 M:1\nk R:2 M:1\n", "line 3: cue k is there twice");
        refuses("show A\nshow B\n", "line 2: found 'show B'");
        Path binary = Files.write(folder.resolve("b.lock"), new byte[] {(byte) 0xff, (byte) 0xfe, 0});
        assertThatThrownBy(() -> LockFile.read(binary)).isInstanceOf(LockException.class).hasMessageContaining("not UTF-8");
        assertThatThrownBy(() -> LockFile.parse("show A\n").requireShow("B")).isInstanceOf(LockException.class)
                .hasMessageContaining("belongs to the show A, not to B");
        assertThat(LockFile.parse("show A\r\nk R:1 M:1\r\nk R:1 M:1\r\n").lines()).hasSize(1);
    }

    @Test
    void aFailedWriteLeavesTheOldFile(@TempDir Path folder) throws Exception {
        Path path = folder.resolve("night.lock");
        Files.writeString(path, "old", StandardCharsets.UTF_8);
        // a folder stands where the new file would be written
        Files.createDirectories(folder.resolve("night.lock.new").resolve("x"));

        assertThatThrownBy(() -> LockFile.of(field(2).plan()).write(path)).isInstanceOf(java.io.IOException.class);
        assertThat(path).hasContent("old");
    }

    @Test
    void changesAreReadable() throws Exception {
        LockFile before = LockFile.parse("show A\na R:1 M:1\nb R:2 M:2\n");
        LockFile after = LockFile.parse("show A\nb R:2 M:3\nc - M:4\n");

        assertThat(before.changesTo(after)).extracting(LockFile.Change::text).containsExactly("a: R:1 M:1 -> gone", "b: R:2 M:2 -> R:2 M:3",
                "c: new -> - M:4");
    }

    private static void refuses(String text, String message) {
        assertThatThrownBy(() -> LockFile.parse(text)).as(text).isInstanceOf(LockException.class).hasMessageContaining(message);
    }

    private Show field(int cues) {
        show.rack("R1", "C", 60, 0.075).rack("R2", "A", 5, 0.075).module("M1", 32, "C").module("M2", 32, "C", "A");
        for (int i = 0; i < cues; i++) {
            show.add(show.cue(Show.clock(5_000_000 + i * 1_000_000L), "Peony", "C").done());
        }
        return show;
    }

    private static List<String> lines(LockFile lock) {
        return new ArrayList<>(lock.text().lines().toList());
    }
}
