package org.girandole.cli;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaAccess.Predicates.target;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.assignableTo;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.equivalentTo;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.properties.HasName.Predicates.nameMatching;
import static com.tngtech.archunit.core.domain.properties.HasOwner.Predicates.With.owner;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.nio.charset.Charset;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.Date;
import java.util.Locale;
import java.util.TimeZone;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Future;
import org.girandole.lang.ide.server.ShowServer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Holds the laws of the architecture; docs/architecture.md names them. */
class LayersTest {
    private static final String[] PLAIN = {"org.girandole.timecode..", "org.girandole.music..", "org.girandole.physics..",
        "org.girandole.plan.."};
    private static final String[] OUTPUTS = {"org.girandole.timecode..", "org.girandole.music..", "org.girandole.physics..",
        "org.girandole.plan..", "org.girandole.sheets..", "org.girandole.lang.check.."};

    private static final String SERVER_LINK = "org.girandole.studio.client.ServerLink";
    private static final String[] BEHIND_THE_SERVER = {"org.girandole.lang..", "org.girandole.plan..", "org.girandole.music..",
        "org.girandole.timecode..", "org.girandole.physics..", "org.girandole.sheets..", "org.eclipse.xtext..", "org.eclipse.emf..",
        "com.google.inject..", "org.antlr.."};

    private static JavaClasses classes;

    @BeforeAll
    static void read() {
        classes = new ClassFileImporter().withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                .importPackages("org.girandole");
    }

    @Test
    void allBundlesAreLookedAt() {
        for (String bundle : new String[] {"timecode", "music", "physics", "plan", "lang", "protocol", "sheets", "cli", "studio"}) {
            assertThat(classes.stream().anyMatch(c -> c.getPackageName().startsWith("org.girandole." + bundle))).as(bundle).isTrue();
        }
    }

    @Test
    void plainPlan() {
        noClasses().that().resideInAnyPackage(PLAIN).should().dependOnClassesThat()
                .resideInAnyPackage("org.eclipse..", "org.osgi..", "com.google.inject..", "org.antlr..").check(classes);
    }

    @Test
    void oneWay() {
        String[] order = {"timecode", "music", "physics", "plan"};
        for (String lower : order) {
            noClasses().that().resideInAPackage("org.girandole." + lower + "..").should().dependOnClassesThat()
                    .resideInAnyPackage("org.girandole.lang..", "org.girandole.sheets..", "org.girandole.cli..", "org.girandole.studio..")
                    .check(classes);
        }
        noClasses().that().resideInAnyPackage("org.girandole.timecode..", "org.girandole.music..", "org.girandole.physics..").should()
                .dependOnClassesThat().resideInAPackage("org.girandole.plan..").check(classes);
        // Like the command line, the server's answers for views hand out sheets.
        noClasses().that().resideInAPackage("org.girandole.lang..").and().resideOutsideOfPackage("org.girandole.lang.ide.show..").should()
                .dependOnClassesThat().resideInAnyPackage("org.girandole.sheets..", "org.girandole.cli..").check(classes);
        noClasses().that().resideInAPackage("org.girandole.protocol..").should().dependOnClassesThat()
                .resideInAnyPackage("org.girandole.plan..", "org.girandole.lang..", "org.girandole.sheets..", "org.girandole.cli..")
                .check(classes);
        noClasses().that().resideInAPackage("org.girandole.sheets..").should().dependOnClassesThat()
                .resideInAnyPackage("org.girandole.lang..", "org.girandole.cli..", "org.eclipse.emf..", "org.eclipse.xtext.resource..")
                .check(classes);
    }

    /** The editor speaks to the language only through the protocol; one class knows how the server is started. */
    @Test
    void studioThroughTheServerOnly() {
        noClasses().that().resideInAPackage("org.girandole.studio..").and().doNotHaveFullyQualifiedName(SERVER_LINK).should()
                .dependOnClassesThat().resideInAnyPackage(BEHIND_THE_SERVER).check(classes);
        noClasses().that().haveFullyQualifiedName(SERVER_LINK).should().dependOnClassesThat(
                resideInAnyPackage(BEHIND_THE_SERVER).and(not(equivalentTo(ShowServer.class)))).check(classes);
    }

    /** Waits for the server in one place, which keeps account of them. */
    @Test
    void studioNeverWaits() {
        noClasses().that().resideInAPackage("org.girandole.studio..").and()
                .doNotHaveFullyQualifiedName("org.girandole.studio.client.Waiting").should()
                .callMethodWhere(target(owner(assignableTo(Future.class))).and(target(nameMatching("get|join|resultNow"))))
                .orShould().callMethodWhere(target(owner(assignableTo(CountDownLatch.class))).and(target(nameMatching("await"))))
                .orShould().callMethod(Thread.class, "sleep", long.class).check(classes);
    }

    @Test
    void noClock() {
        noClasses().that().resideInAnyPackage(OUTPUTS).should()
                .callMethod(System.class, "currentTimeMillis")
                .orShould().callMethod(Instant.class, "now")
                .orShould().callMethod(LocalDate.class, "now")
                .orShould().callMethod(LocalDateTime.class, "now")
                .orShould().callMethod(ZonedDateTime.class, "now")
                .orShould().callMethod(Clock.class, "systemUTC")
                .orShould().callMethod(Clock.class, "systemDefaultZone")
                .orShould().callConstructor(Date.class)
                .orShould().callMethod(ZoneId.class, "systemDefault")
                .orShould().callMethod(TimeZone.class, "getDefault")
                .orShould().callMethod(Locale.class, "getDefault")
                .orShould().callMethod(Charset.class, "defaultCharset")
                .orShould().callMethod(String.class, "toLowerCase")
                .orShould().callMethod(String.class, "toUpperCase")
                .orShould().callMethod(String.class, "getBytes")
                .check(classes);
    }

    @Test
    void recordsOfThePlanAreImmutable() {
        classes().that().resideInAnyPackage("org.girandole.plan", "org.girandole.plan.script").and().areRecords()
                .should().haveOnlyFinalFields().check(classes);
    }
}
