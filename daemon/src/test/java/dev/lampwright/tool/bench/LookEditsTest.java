package dev.lampwright.tool.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.config.LightSpec;
import dev.lampwright.toml.TomlEditor;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.lifecycle.AfterProperty;
import net.jqwik.api.lifecycle.BeforeProperty;

/**
 * Random edits of a file full of comments, one after the other. After each the file can be read, everything outside the look is as it was,
 * byte for byte, and the look in the file draws what its preview drew.
 */
class LookEditsTest {
    private static final List<String> NAMES =
            List.of("plain-one", "headers", "braced", "dotted", "new-1", "new-2", "done");
    /** They stay where they are, so that it is known what is outside. */
    private static final Set<String> NEVER_REMOVED = Set.of("plain-one", "braced", "dotted");

    /** Where there is one, thousands of files are written there sooner. */
    private static final Path IN_MEMORY = Path.of("/dev/shm");

    private static final String FILE = """
            # Everything here was written by hand.
            frames_per_s = 4 # enough for a test

            [broker]
            url = "mqtt://127.0.0.1:1883"
            [printer.state]
            topic = "shop/rowan/job"
            printing = ["RUN"]
            [controller]
            port = "memory"
            [supply]
            ceiling_mA = 900
            [strip]
            pixels = 12 # a short one

            [looks] # some are short
            # from here: braced
            braced = { layers = [{ colour = "teal" }], steady_for_camera = true } # in braces
            # until here: braced
            # from here: dotted
            dotted.layers = [ # one
              { colour = 'olive' }, # calm
            ]
            dotted . steady_for_camera = false
            # until here: dotted

            # The first.
            [looks.plain-one]
            # how it lies
            layers = [
              { colour = "maroon" }, # the ground
              # and on top
              { zone = "job", colour = 'gold', extent = "bar", by = "job.progress" },
            ]

            # Not for now.
            #[looks.gone]
            #layers = []

            [looks.headers]
            [[looks.headers.layers]]
            colour = "teal" # calm
            opacity = 0.5

            [[looks.headers.layers]]
            zone = "bed"
            colour = "plum"

            # Cues come last.
            [[cues]]
            look = "plain-one"
            state = "idle" # nothing to do
            """;

    private Path folder;
    private BenchFiles files;
    private BenchWorker worker;
    private LookSaver saver;

    @BeforeProperty
    void begin() throws IOException, ConfigException {
        folder = Files.isWritable(IN_MEMORY)
                ? Files.createTempDirectory(IN_MEMORY, "looks")
                : Files.createTempDirectory("looks");
        files = new BenchFiles(folder.resolve("rowan.toml"), folder.resolve("rowan.looks.toml"));
        Files.writeString(files.file(), FILE);
        Config config = ConfigFile.read(files.file());
        worker = new BenchWorker();
        saver = new LookSaver(files, () -> config, worker, new SeenLooks());
    }

    @AfterProperty
    void end() throws IOException {
        worker.close();
        for (Path file : List.of(files.file(), files.versions())) {
            Files.deleteIfExists(file);
        }
        Files.delete(folder);
    }

    @Property(tries = 1000, shrinking = ShrinkingMode.OFF, edgeCases = EdgeCasesMode.NONE)
    void anEditIsOfTheLookAlone(@ForAll long seed) throws IOException, ConfigException, BenchRefusal {
        Random random = new Random(seed);
        String before = Files.readString(files.file());
        String name = NAMES.get(random.nextInt(NAMES.size()));
        BenchLook look = new BenchLook(name, Map.of("layers", layers(random)));
        String base = version(name);
        boolean own = TomlEditor.of(before).get(look.path()).isPresent();
        if (own && !NEVER_REMOVED.contains(name) && random.nextInt(4) == 0) {
            saver.remove(name, base, false);
            assertEquals(outside(before, name), outside(Files.readString(files.file()), name), "without " + name);
            ConfigFile.read(files.file());
            return;
        }
        if (own && !name.equals("done") && random.nextInt(8) == 0) {
            renameThereAndBack(name, before);
            return;
        }
        Config drawn = files.examine(look).config();
        saver.save(look, base, false);
        String after = Files.readString(files.file());
        assertEquals(outside(before, name), outside(after, name), before + "\n--- became\n" + after);
        Config read = ConfigFile.read(files.file());
        assertEquals(drawn.looks().get(name), read.looks().get(name), after);
        assertEquals(film(drawn, name), film(read, name), after);
    }

    /** Not of one that has the name of a built-in look, which then exists. */
    private void renameThereAndBack(String name, String before) throws IOException, ConfigException, BenchRefusal {
        saver.rename(name, "another", version(name), false);
        assertEquals(comments(before), comments(Files.readString(files.file())), "renamed " + name);
        Config read = ConfigFile.read(files.file());
        assertTrue(read.looks().containsKey("another") && !read.looks().containsKey(name), "renamed " + name);
        saver.rename("another", name, version("another"), false);
        assertEquals(before, Files.readString(files.file()), "there and back");
    }

    private static List<String> comments(String text) {
        return text.lines()
                .filter(line -> line.contains("#"))
                .map(line -> line.substring(line.indexOf('#')))
                .toList();
    }

    private String version(String name) throws BenchRefusal, ConfigException {
        return saver.plans()
                .shelves()
                .find(name)
                .map(LookShelves.Found::version)
                .orElse("");
    }

    /** The lines that are not the look's, whether there is one or not. Empty lines are nobody's. */
    private static String outside(String text, String name) {
        TomlEditor editor = TomlEditor.of(text);
        Optional<String> section = editor.section(List.of("looks", name));
        String rest = section.map(lines -> text.replace(lines, ""))
                .orElseGet(() -> text.replaceFirst(
                        "(?s)# from here: " + name + "\\n.*# until here: " + name + "\\n", "# here: " + name + "\n"));
        return rest.lines()
                .filter(line -> !line.isBlank())
                .filter(line -> !COMMENTS.contains(line))
                .collect(Collectors.joining("\n"));
    }

    /** Those directly above the looks, which go or stay with them. */
    private static final List<String> COMMENTS = List.of("# The first.");

    private static Object film(Config config, String name) throws BenchRefusal {
        LightSpec light = config.light().showing(config.looks().get(name));
        BenchBody printer =
                BenchBody.read("{\"state\":\"printing\",\"signals\":{\"job.progress\":0.4,\"bed.heat\":0.7}}");
        BenchBody cut = BenchBody.read("{\"seconds\":1,\"rate\":5,\"from_s\":1}");
        return LookFilm.of(config, light, PlayedPrinter.of(config, printer), LookFilm.Cut.of(cut), () -> {});
    }

    private static List<Map<String, Object>> layers(Random random) {
        List<Map<String, Object>> layers = new ArrayList<>();
        for (int i = random.nextInt(4); i >= 0; i--) {
            layers.add(layer(random));
        }
        return layers;
    }

    private static Map<String, Object> layer(Random random) {
        Map<String, Object> layer = new LinkedHashMap<>();
        if (random.nextBoolean()) {
            layer.put("zone", List.of("bed", "nozzle", "job").get(random.nextInt(3)));
        }
        if (random.nextInt(3) == 0) {
            layer.put("paint", "scale");
            layer.put("colours", List.of("slateblue", "gold"));
            layer.put("by", "bed.heat");
        } else {
            layer.put("colour", String.format("#%06x", random.nextInt(1 << 24)));
        }
        if (random.nextInt(3) == 0) {
            layer.put("extent", "bar");
            layer.put("by", "job.progress");
            layer.put("softness_px", random.nextInt(3));
        }
        if (random.nextInt(3) == 0) {
            layer.put("rhythm", "swell 4s");
        }
        if (random.nextBoolean()) {
            layer.put("opacity", random.nextInt(100) / 100.0);
        }
        if (random.nextInt(5) == 0) {
            layer.put("hidden", true);
        }
        return layer;
    }

    /** So that the property above is about something. */
    @Example
    void whatIsOutsideIsFound() {
        assertTrue(outside(FILE, "headers").contains("# Cues come last."));
        assertTrue(!outside(FILE, "headers").contains("plum"));
        assertTrue(outside(FILE, "headers").contains("# how it lies"));
        assertTrue(outside(FILE, "braced").contains("dotted.layers"));
        assertTrue(!outside(FILE, "braced").contains("# in braces"));
    }
}
