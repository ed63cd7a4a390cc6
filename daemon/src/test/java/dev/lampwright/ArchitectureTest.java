package dev.lampwright;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.core.importer.Location;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** The arrows between the packages, as DEVELOPERS.md draws them. */
@AnalyzeClasses(packages = "dev.lampwright", importOptions = ArchitectureTest.MainTree.class)
class ArchitectureTest {
    /** Not the tests, wherever the build puts them: ArchUnit's own option knows only Maven's usual folder. */
    static final class MainTree implements ImportOption {
        @Override
        public boolean includes(Location location) {
            return !location.contains("/test-classes/");
        }
    }

    private static final String[] PURE = {"..look..", "..colour..", "..signal..", "..cue..", "..guard.."};

    @ArchTest
    static final ArchRule LIGHT_KNOWS_NEITHER_FILES_NOR_WIRES = noClasses()
            .that()
            .resideInAnyPackage(PURE)
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(
                    "java.net..",
                    "java.nio.file..",
                    "java.util.concurrent..",
                    "org.eclipse.paho..",
                    "com.fazecast..",
                    "com.fasterxml..",
                    "picocli..",
                    "io.moquette..",
                    "org.slf4j..",
                    "..config..",
                    "..cli..",
                    "..page..",
                    "..link..",
                    "..engine..",
                    "..demo..");

    @ArchTest
    static final ArchRule ONLY_CLI_KNOWS_PICOCLI = only("picocli..", "..cli..");

    /** Tools that change the user's file edit its text. */
    @ArchTest
    static final ArchRule ONLY_WHO_READS_OR_EDITS_THE_FILE_KNOWS_TOML = noClasses()
            .that()
            .resideOutsideOfPackages("..config..", "..toml..", "..tool.fit..", "..tool.survey..", "..tool.bench..")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("..toml..");

    @ArchTest
    static final ArchRule THE_TOML_READER_STANDS_ALONE = classes()
            .that()
            .resideInAPackage("..toml..")
            .should()
            .onlyDependOnClassesThat()
            .resideInAnyPackage("..toml..", "java.lang..", "java.math..", "java.time..", "java.util..");

    /** Behind {@code payload} there are {@code Value}s; the others read what is not a printer's. */
    @ArchTest
    static final ArchRule ONLY_WHO_READS_JSON_KNOWS_ITS_PARSER = only(
            "com.fasterxml..",
            "..payload..",
            "..json..",
            "..desk..",
            "..history..",
            "..page..",
            "..shelf..",
            "..cli..",
            "..tool.fit..",
            "..tool.bench..");

    /** Code that holds a parsed node has it from {@code json}, and writes through it. */
    @ArchTest
    static final ArchRule ONLY_JSON_AND_PAYLOAD_MAKE_READERS_AND_WRITERS_OF_JSON = noClasses()
            .that()
            .resideOutsideOfPackages("..json..", "..payload..", "..config..")
            .should()
            .dependOnClassesThat()
            .haveNameMatching("com\\.fasterxml\\.jackson\\..*(Mapper|Factory|Generator|Parser|ObjectNode|ArrayNode)");

    @ArchTest
    static final ArchRule ONLY_BROKER_AND_THE_DEMO_KNOW_MQTT = only("org.eclipse.paho..", "..broker..", "..demo..");

    @ArchTest
    static final ArchRule ONLY_LINK_KNOWS_THE_SERIAL_LIBRARY = only("com.fazecast..", "..link..");

    @ArchTest
    static final ArchRule ONLY_PAGE_KNOWS_THE_LIBRARY_FOR_CODES = only("io.nayuki..", "..page..");

    @ArchTest
    static final ArchRule ONLY_DEMO_KNOWS_THE_EMBEDDED_BROKER = only("io.moquette..", "..demo..");

    @ArchTest
    static final ArchRule ONLY_METRICS_KNOWS_PROMETHEUS = only("io.prometheus..", "..metrics..");

    @ArchTest
    static final ArchRule NOTHING_BUT_THE_COMMAND_LINE_KNOWS_THE_METRICS = noClasses()
            .that()
            .resideOutsideOfPackages("..metrics..", "..cli..")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("..metrics..");

    @ArchTest
    static final ArchRule ONLY_PICTURE_KNOWS_THE_DRAWING_LIBRARY = only("java.awt..", "..picture..");

    @ArchTest
    static final ArchRule ONLY_PICTURE_KNOWS_PICTURE_FILES = only("javax.imageio..", "..picture..");

    @ArchTest
    static final ArchRule ONLY_PAGE_AND_METRICS_KNOW_THE_HTTP_SERVER =
            only("com.sun.net.httpserver..", "..page..", "..metrics..");

    @ArchTest
    static final ArchRule ONLY_LOG_AND_PAGE_KNOW_WHAT_WRITES_THE_LOG = only("ch.qos.logback..", "..log..", "..page..");

    @ArchTest
    static final ArchRule NOTHING_BUT_WHAT_RUNS_THE_DAEMON_DEPENDS_ON_THE_PAGE = noClasses()
            .that()
            .resideOutsideOfPackages("..page..", "..cli..", "..demo..")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("..page..");

    @ArchTest
    static final ArchRule PICTURES_KNOW_LIGHT_AND_NOT_WHERE_IT_COMES_FROM = noClasses()
            .that()
            .resideInAPackage("..picture..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(
                    "java.nio.file..", "..config..", "..cli..", "..engine..", "..printer..", "..payload..", "..link..");

    @ArchTest
    static final ArchRule THE_FITTING_KNOWS_LINK_AND_GUARDS_AND_NOTHING_ABOVE = noClasses()
            .that()
            .resideInAPackage("..fit..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(
                    "..config..",
                    "..cli..",
                    "..engine..",
                    "..printer..",
                    "..broker..",
                    "..cue..",
                    "..signal..",
                    "..page..",
                    "..desk..");

    @ArchTest
    static final ArchRule THE_PROTOCOL_STANDS_ALONE = classes()
            .that()
            .resideInAPackage("..protocol..")
            .should()
            .onlyDependOnClassesThat()
            .resideInAnyPackage("..protocol..", "java.lang..", "java.util..");

    @ArchTest
    static final ArchRule NOTHING_BUT_THE_COMMAND_LINE_DEPENDS_ON_THE_DEMO = noClasses()
            .that()
            .resideOutsideOfPackages("..demo..", "..cli..")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("..demo..");

    @ArchTest
    static final ArchRule THE_DAEMON_USES_NO_TOOL = noClasses()
            .that()
            .resideOutsideOfPackages("..tool..", "..cli..")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("..tool..");

    @ArchTest
    static final ArchRule PAYLOADS_KNOW_NEITHER_BROKER_NOR_PRINTER = noClasses()
            .that()
            .resideInAPackage("..payload..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("..broker..", "..printer..");

    @ArchTest
    static final ArchRule THE_BROKER_KNOWS_NO_PRINTER = noClasses()
            .that()
            .resideInAPackage("..broker..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("..printer..", "..payload..");

    /** It is shown what happens, and asks nobody. */
    @ArchTest
    static final ArchRule THE_HISTORY_KNOWS_THE_PRINTERS_STATES_AND_FILES_ALONE = noClasses()
            .that()
            .resideInAPackage("..history..")
            .should()
            .dependOnClassesThat(resideInAPackage("dev.lampwright..")
                    .and(not(resideInAnyPackage("..history..", "..printer..", "..json..", "..file..", "..upkeep.."))));

    @ArchTest
    static final ArchRule NO_CIRCLES_AMONG_TOOLS =
            slices().matching("dev.lampwright.tool.(*)..").should().beFreeOfCycles();

    @ArchTest
    static final ArchRule NO_CIRCLES =
            slices().matching("dev.lampwright.(*)..").should().beFreeOfCycles();

    /** So that "go to class" has one answer. */
    @ArchTest
    static void noTwoTypesShareASimpleName(JavaClasses all) {
        Map<String, Set<String>> places = new TreeMap<>();
        all.stream()
                .filter(JavaClass::isTopLevelClass)
                .filter(type -> !type.getSimpleName().equals("package-info"))
                .forEach(type -> places.computeIfAbsent(type.getSimpleName(), name -> new TreeSet<>())
                        .add(type.getPackageName()));
        assertTrue(places.containsKey("MessageReader"), "protocol is among them");
        places.values().removeIf(packages -> packages.size() < 2);
        assertEquals(Map.of(), places);
    }

    private static ArchRule only(String library, String... packages) {
        return noClasses()
                .that()
                .resideOutsideOfPackages(packages)
                .should()
                .dependOnClassesThat()
                .resideInAPackage(library);
    }
}
