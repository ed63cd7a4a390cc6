package dev.lampwright.config;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.toml.Toml;
import java.io.IOException;
import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The table of keys is consistent, and everything generated from it is up to date. With {@code -Dkeys.write=true} the example and the
 * reference are written again.
 */
class KeysTest {
    private static final Path EXAMPLE = Path.of("src/main/resources/dev/lampwright/config/example.toml");
    private static final Path REFERENCE = Path.of("doc/keys.md");

    @Test
    void theExampleIsWrittenFromTheTable() throws IOException, ConfigException {
        assertWritten(EXAMPLE, KeyExample.text());
        ConfigFile.read(KeyExample.text(), "example.toml");
    }

    @Test
    void theReferenceIsWrittenFromTheTable() throws IOException {
        assertWritten(REFERENCE, KeyReference.text());
    }

    private static void assertWritten(Path file, String text) throws IOException {
        if (Boolean.getBoolean("keys.write")) {
            Files.createDirectories(file.getParent());
            Files.writeString(file, text);
        }
        assertEquals(text, Files.readString(file), file + " is out of date: run this test with -Dkeys.write=true");
    }

    @Test
    void everySectionIsInTheList() throws IOException, URISyntaxException, ReflectiveOperationException {
        Path classes = Path.of(ConfigFile.class
                .getProtectionDomain()
                .getCodeSource()
                .getLocation()
                .toURI());
        List<Section> found = new ArrayList<>();
        try (Stream<Path> files = Files.list(classes.resolve("dev/lampwright/config"))) {
            for (Path file :
                    files.filter(each -> each.toString().endsWith(".class")).toList()) {
                String name = file.getFileName().toString().replace(".class", "");
                for (Field field :
                        Class.forName("dev.lampwright.config." + name).getDeclaredFields()) {
                    if (Modifier.isStatic(field.getModifiers()) && field.getType() == Section.class) {
                        field.setAccessible(true);
                        found.add((Section) field.get(null));
                    }
                }
            }
        }
        Comparator<Section> byPath = Comparator.comparing(Section::path);
        assertEquals(
                Keys.SECTIONS.stream().sorted(byPath).map(Section::path).toList(),
                found.stream().sorted(byPath).map(Section::path).toList());
    }

    private static List<Arguments> keys() {
        return Keys.SECTIONS.stream()
                .flatMap(section -> section.keys().stream()
                        .map(key -> Arguments.of(section.path() + "." + key.name(), section, key)))
                .toList();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("keys")
    void isDescribed(String path, Section section, Key<?> key) {
        boolean holdsOthers = key.type().startsWith("table")
                || key.type().startsWith("array of tables")
                || key.type().equals("place");
        assertTrue(holdsOthers || !key.help().isEmpty(), "has no help");
        assertTrue(holdsOthers || !key.example().isEmpty(), "has no example");
        assertFalse(key.type().isEmpty());
    }

    /** A table with only this key. */
    private static Table table(Section section, Key<?> key, Object value, Mistakes mistakes) {
        return Table.root(Map.of(key.name(), value), mistakes).as(section);
    }

    private static Mistakes mistakes() {
        return new Mistakes("t.toml", Toml.read(""));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("keys")
    void itsExampleReadsWithoutAMistake(String path, Section section, Key<?> key) throws ConfigException {
        if (!key.example().isEmpty()) {
            Map<String, Object> read = Toml.read("value = " + key.example()).values();
            Mistakes mistakes = mistakes();
            table(section, key, read.get("value"), mistakes).find(key);
            mistakes.throwIfMistaken();
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("keys")
    void aDefaultThatIsReportedIsAValueOfTheKey(String path, Section section, Key<?> key) throws ConfigException {
        if (key.reported()) {
            String toml = key.type().startsWith("`") ? '"' + key.without() + '"' : key.without();
            Mistakes mistakes = mistakes();
            Object value = Toml.read("value = " + toml).values().get("value");
            assertEquals(key.usual(), table(section, key, value, mistakes).find(key));
            mistakes.throwIfMistaken();
        }
    }

    private static List<Arguments> readHere() {
        return keys().stream()
                .filter(arguments -> {
                    Key<?> key = (Key<?>) arguments.get()[2];
                    boolean ranged =
                            key.type().startsWith("number, ") && key.type().contains(" to ");
                    return (ranged || key.type().startsWith("whole number, ")) && !isOwn(key);
                })
                .toList();
    }

    private static boolean isOwn(Key<?> key) {
        Mistakes mistakes = mistakes();
        Table.root(Map.of(key.name(), List.of()), mistakes).find(key);
        return !mistakes.isMistaken();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("readHere")
    void aNumberIsWithinItsRange(String path, Section section, Key<?> key) {
        String range = key.type().replaceAll("^[a-z ]+, ", "");
        double least = Double.parseDouble(range.substring(0, range.indexOf(" to ")));
        double most = Double.parseDouble(range.substring(range.indexOf(" to ") + 4));
        for (Object wrong : List.of(least - 1, most + 1, "text", true, List.of())) {
            Mistakes mistakes = mistakes();
            table(section, key, wrong, mistakes).find(key);
            ConfigException e = assertThrows(ConfigException.class, mistakes::throwIfMistaken, () -> path + wrong);
            assertEquals(1, e.mistakes().size());
            assertEquals(key.name(), e.mistakes().get(0).key());
            assertTrue(e.getMessage().startsWith("t.toml: " + key.name() + ": is "), e.getMessage());
        }
    }

    @Test
    void aSectionNamesEachKeyOnce() {
        for (Section section : Keys.SECTIONS) {
            Set<String> names = new HashSet<>(section.names());
            assertEquals(names.size(), section.keys().size(), section.path());
        }
    }

    @Test
    void whatIsNotDescribedCannotBeRead() {
        Table table = Table.root(Map.of("fuse", 1), mistakes()).as(SupplySection.SECTION);
        assertThrows(IllegalStateException.class, () -> table.has("fuse"));
    }

    @Test
    void whatAKeyGoesWithAreKeysOfItsSection() {
        for (Section section : Keys.SECTIONS) {
            section.goesWith().forEach((name, with) -> {
                String other = with.replaceAll(" .*", "");
                assertTrue(
                        section.key(other).isPresent() || name.equals("clockwise"),
                        () -> section.path() + "." + name + " goes with " + other);
            });
        }
    }
}
