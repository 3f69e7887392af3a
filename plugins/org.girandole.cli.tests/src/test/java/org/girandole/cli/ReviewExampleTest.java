package org.girandole.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The worked example of the page about reviewing, line by line as it is printed there, in a repository of git. */
class ReviewExampleTest {
    private static final Path PAGE = Path.of("../../docs/review.md");

    @TempDir
    private Path temp;

    @Test
    void everyLineOfTheWorkedExampleDoesWhatThePageSays() throws Exception {
        Path work = Files.createDirectory(temp.resolve("work"));
        Git git = Git.init(work);
        String asAuthor = "export GIT_AUTHOR_NAME='T. Example' GIT_AUTHOR_EMAIL=t@example.invalid GIT_COMMITTER_NAME='T. Example'"
                + " GIT_COMMITTER_EMAIL=t@example.invalid\n";
        git.shell(asAuthor + block("The show as it is")).exits(0);
        // 2.52 s - 2.40 s by hand; scatter 0.25 s and half a step of 10 ms are more than the 100 ms that the show allows
        assertThat(git.shell("cd my-show\n" + block("On a branch")).exits(0).out())
                .contains("3 cues fire 0.120 s earlier and are seen when they were before: the lot's measured rise is another (L1)")
                .contains("New: warning rise-uncertain: RedPeony75 of lot L1 may be seen 255 ms off").contains("bears on safety");
        assertThat(git.shell(asAuthor + "cd my-show\n" + block("The reviewer agrees")).exits(0).out()).contains("by:      R. Example");
        assertThat(Files.readString(work.resolve("pull-request.md"))).contains("- New: waived warning rise-uncertain")
                .contains("- New waiver: rise-uncertain for RedPeony75");
        assertThat(git.shell("cd my-show\n" + block("Merged and released")).exits(0).out()).contains("whole and unaltered");
        assertThat(Files.readString(work.resolve("second/sheets/14-changes.html"))).contains("3 cues fire 0.120 s earlier")
                .contains("New waiver: rise-uncertain");
    }

    private static String block(String after) throws Exception {
        return Git.block(PAGE, after);
    }
}
