package dev.lampwright.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.jar.JarFile;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** What the jar says about its libraries, compared with their own POMs, from which the bill of materials is made. */
class LibrariesIT {
    private static final Path JAR = Path.of("target", "lampwright.jar");

    private static String text(String entry) throws IOException {
        try (JarFile jar = new JarFile(JAR.toFile());
                InputStream in = jar.getInputStream(jar.getEntry(entry))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    /** Maven makes the bill of materials only while it is online. */
    private static JsonNode components() throws IOException {
        try (JarFile jar = new JarFile(JAR.toFile())) {
            assumeTrue(
                    jar.getEntry("META-INF/sbom/lampwright.cdx.json") != null
                            || !System.getProperty("lampwright.built", "offline: true")
                                    .endsWith("true"),
                    "built offline, without a bill of materials");
        }
        return new ObjectMapper()
                .readTree(text("META-INF/sbom/lampwright.cdx.json"))
                .get("components");
    }

    /** The licences that a library's POM names, shortened as in the list. */
    private static List<String> licences(JsonNode component) {
        List<String> all = new ArrayList<>();
        for (JsonNode choice : component.path("licenses")) {
            JsonNode licence = choice.path("license");
            all.add(briefly(licence.path("id")
                    .asText(licence.path("name")
                            .asText(choice.path("expression").asText()))));
        }
        return all;
    }

    private static String briefly(String licence) {
        String folded = licence.toLowerCase(Locale.ROOT);
        return folded.contains("apache") ? "Apache-2.0" : licence;
    }

    /** Paho's POM names only the EPL; the about.html that comes with it also allows the EDL, which is the BSD licence of three clauses. */
    @Test
    void eachIsListedUnderALicenceThatItsPomNames() throws IOException {
        List<String> lines = text("META-INF/licences/LIBRARIES.txt").lines().toList();
        for (JsonNode component : components()) {
            String group = component.get("group").asText();
            String name = component.get("name").asText();
            if (group.equals("dev.lampwright")) {
                continue;
            }
            String line = lines.stream()
                    .filter(each -> each.startsWith(group + ":" + name + " ") || each.startsWith(group + ":* "))
                    .findFirst()
                    .orElseThrow(() -> new AssertionError(group + ":" + name + " is not listed"));
            boolean named = licences(component).stream().anyMatch(line::contains);
            assertTrue(named || name.contains("paho"), () -> line + " but its POM has " + licences(component));
        }
    }

    @Test
    void theTextsThatAreNamedAreThere() throws IOException {
        List<String> entries;
        try (JarFile jar = new JarFile(JAR.toFile())) {
            entries = jar.stream().map(entry -> entry.getName()).toList();
        }
        for (String text : List.of(
                "Apache-2.0",
                "EPL-2.0",
                "SLF4J",
                "qrcodegen",
                "Paho",
                "JNA",
                "libffi",
                "Jackson-NOTICE",
                "Prometheus-NOTICE")) {
            assertTrue(entries.contains("META-INF/licences/" + text + ".txt"), text);
        }
        assertTrue(entries.containsAll(List.of(
                "META-INF/FastDoubleParser-LICENSE",
                "META-INF/FastDoubleParser-ThirdParty-LICENSE",
                "META-INF/Schubfach-LICENSE",
                "about.html")));
        assertTrue(text("META-INF/NOTICE").startsWith("Lampwright\nCopyright 2026 The Lampwright authors\n"));
        assertFalse(text("META-INF/NOTICE").contains("Apache Software Foundation"));
    }

    @Test
    void nothingOfNettyIsThereThatTheDemoHasNoUseFor() throws IOException {
        try (JarFile jar = new JarFile(JAR.toFile())) {
            assertEquals(
                    List.of(),
                    jar.stream()
                            .map(entry -> entry.getName())
                            .filter(name ->
                                    name.matches("io/netty/handler/codec/(compression|protobuf|marshalling)/.*"))
                            .collect(Collectors.toList()));
        }
    }

    /** The copyright file next to the jar has a stanza for each library's folder. */
    @Test
    void thePackageTellsOfTheSame() throws IOException {
        String copyright = Files.readString(Path.of("../systemd/copyright"));
        for (String folder : List.of(
                "picocli",
                "io/nayuki/qrcodegen",
                "com/fazecast",
                "org/eclipse/paho",
                "com/fasterxml/jackson",
                "org/slf4j",
                "ch/qos/logback",
                "com/sun/jna",
                "io/prometheus",
                "io/moquette",
                "io/netty",
                "com/codahale",
                "com/librato")) {
            assertTrue(copyright.contains("\nFiles: " + folder + "/"), folder);
        }
        assertTrue(copyright.contains("License: EPL-2.0 or LGPL-2.1\n"), "Logback's POM: EPL-2.0, LGPL-2.1-only");
    }
}
