package org.girandole.maven;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.StringWriter;
import java.lang.reflect.Field;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.maven.plugin.MojoExecutionException;
import org.apache.maven.plugin.MojoFailureException;
import org.girandole.lang.check.ShowPipeline;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.diff.Comparison;
import org.girandole.sheets.diff.DiffFormat;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The difference since a revision of git, with a small invented show. Git itself makes the revisions. */
class DiffMojoTest {
    private static final String SHOW = """
            use "stock.show"
            show Quay "Quay night" {
              on 2027-06-19 at 22:30 zone "UTC"
              site Pier
            }
            site Pier {
              position A at (0 m, 0 m)
            }
            soundtrack Tides { length 1:00.000  timecode 25 fps from 10:00:00:00  preroll 60 s }
            score Tides in slot 0 {
              at 0:20.000  A  Peony
            }
            """;
    private static final String STOCK = "shell Peony \"Red peony\" { calibre 75 mm  rise 2.4 s +- 0.1 s  apex 105 m }\n";

    @TempDir
    private Path project;
    @TempDir
    private Path out;

    @BeforeEach
    void commitAShow() throws Exception {
        Files.writeString(project.resolve("quay.show"), SHOW);
        Files.writeString(project.resolve("stock.show"), STOCK);
        git("init", "-q");
        commit("Before");
    }

    private void git(String... words) throws Exception {
        List<String> command = new ArrayList<>(List.of("git", "-c", "user.name=T. Example", "-c", "user.email=t@example.invalid", "-C", project.toString()));
        command.addAll(List.of(words));
        assertThat(new ProcessBuilder(command).inheritIO().start().waitFor()).isZero();
    }

    private void commit(String message) throws Exception {
        git("add", ".");
        git("commit", "-q", "-m", message);
    }

    /** The goal with the values that Maven would inject. */
    private DiffMojo goal(String revision, boolean failOnSafety) throws ReflectiveOperationException {
        DiffMojo goal = new DiffMojo();
        set(AbstractShowMojo.class, goal, "script", project.resolve("quay.show").toFile());
        set(AbstractShowMojo.class, goal, "root", project.toFile());
        set(DiffMojo.class, goal, "revision", revision);
        set(DiffMojo.class, goal, "diffInto", out.resolve("diff").toFile());
        set(DiffMojo.class, goal, "failOnSafety", failOnSafety);
        return goal;
    }

    private static void set(Class<?> owner, Object goal, String field, Object value) throws ReflectiveOperationException {
        Field found = owner.getDeclaredField(field);
        found.setAccessible(true);
        found.set(goal, value);
    }

    private String written(String name) throws Exception {
        return Files.readString(out.resolve("diff").resolve(name));
    }

    @Test
    void theDifferenceIsThatOfTheCommandLine() throws Exception {
        CheckedPlan before = new ShowPipeline().check(project.resolve("quay.show"), project).wholePlan().orElseThrow();
        Files.writeString(project.resolve("stock.show"), STOCK.replace("rise 2.4 s", "rise 2.6 s"));
        goal("HEAD", false).execute();

        CheckedPlan after = new ShowPipeline().check(project.resolve("quay.show"), project).wholePlan().orElseThrow();
        for (var form : List.of(DiffFormat.MARKDOWN, DiffFormat.HTML, DiffFormat.JSON)) {
            StringWriter expected = new StringWriter();
            form.write(Comparison.of(before, after).report(), expected);
            assertThat(written("diff." + (form == DiffFormat.MARKDOWN ? "md" : form.name().toLowerCase(java.util.Locale.ROOT)))).isEqualTo(expected.toString());
        }
        // 2.6 s - 2.4 s = 0.2 s, by hand.
        assertThat(written("diff.md")).contains("0.200 s earlier");
    }

    @Test
    void aChangeOfSafetyFailsTheBuildOnlyWhereThatIsWanted() throws Exception {
        Files.writeString(project.resolve("quay.show"), SHOW.replace("0:20.000", "0:59.000"));
        Files.writeString(project.resolve("stock.show"), STOCK.replace("calibre 75 mm", "calibre 200 mm"));
        assertThatCode(() -> goal("HEAD", false).execute()).doesNotThrowAnyException();
        assertThatThrownBy(() -> goal("HEAD", true).execute()).isInstanceOf(MojoFailureException.class)
                .hasMessage("Something that bears on safety changed since 'HEAD': see above.");
        assertThat(written("diff.md")).isNotEmpty();
    }

    @Test
    void twoDifferentShowsAreNotCompared() throws Exception {
        Files.writeString(project.resolve("quay.show"), SHOW.replace("show Quay", "show Harbour"));
        assertThatThrownBy(() -> goal("HEAD", false).execute()).isInstanceOf(MojoFailureException.class)
                .hasMessage("There is nothing to compare: 'Quay' and 'Harbour' are two different shows; only two states of one show can be compared.");
        assertThat(out.resolve("diff")).doesNotExist();
    }

    @Test
    void theSideThatCannotBeReadIsNamed() throws Exception {
        Files.writeString(project.resolve("stock.show"), "shell {\n");
        assertThatThrownBy(() -> goal("HEAD", false).execute()).isInstanceOf(MojoFailureException.class)
                .hasMessageStartingWith("There is nothing to compare: the script '").hasMessageContaining("cannot be read whole: stock.show:1: ");
        commit("Torn");
        Files.writeString(project.resolve("stock.show"), STOCK);
        assertThatThrownBy(() -> goal("HEAD", false).execute()).isInstanceOf(MojoFailureException.class)
                .hasMessageStartingWith("There is nothing to compare: 'quay.show' as it was in revision 'HEAD' cannot be read whole: stock.show:1: ");
        assertThatThrownBy(() -> goal("nowhere", false).execute()).isInstanceOf(MojoExecutionException.class).hasMessageContaining("no revision 'nowhere'");
        assertThat(out.resolve("diff")).doesNotExist();
    }
}
