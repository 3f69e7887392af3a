package org.girandole.lang;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.inject.Injector;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.eclipse.emf.common.util.URI;
import org.eclipse.xtext.resource.XtextResource;
import org.eclipse.xtext.resource.XtextResourceSet;
import org.eclipse.xtext.util.CancelIndicator;
import org.eclipse.xtext.validation.CheckMode;
import org.eclipse.xtext.validation.IResourceValidator;
import org.eclipse.xtext.validation.Issue;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The editor says what the command line says, at the same place. */
class ValidatorTest {
    private static final Injector INJECTOR = new ShowStandaloneSetup().createInjectorAndDoEMFRegistration();

    static List<Fixture> fixtures() {
        return Fixture.all();
    }

    @ParameterizedTest
    @MethodSource("fixtures")
    void saysWhatTheLoaderSays(Fixture fixture) throws Exception {
        Path file = fixture.file().toAbsolutePath().normalize();
        XtextResourceSet resources = INJECTOR.getInstance(XtextResourceSet.class);
        XtextResource resource = (XtextResource) resources.getResource(URI.createFileURI(file.toString()), true);
        List<Issue> issues = INJECTOR.getInstance(IResourceValidator.class).validate(resource, CheckMode.ALL, CancelIndicator.NullImpl);
        LoadedShow loaded = new ShowLoader(INJECTOR).load(file);
        assertThat(issues).extracting(issue -> issue.getLineNumber() + ":" + issue.getColumn() + "+" + issue.getLength() + " " + issue.getCode())
                .isEqualTo(loaded.problems().stream().filter(problem -> problem.source().file().equals(loaded.file()))
                        .map(problem -> problem.source().line() + ":" + problem.source().column() + "+" + problem.source().length() + " "
                                + problem.rule()).toList());
        String text = Files.readString(file);
        assertThat(issues).allSatisfy(issue -> assertThat(issue.getOffset() + issue.getLength()).isLessThanOrEqualTo(text.length()));
    }
}
