package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.desk.Ask;
import dev.lampwright.handbook.Page;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.tomlj.Toml;
import org.tomlj.TomlParseResult;
import picocli.CommandLine;

/** Every example in the documents is right: files pass {@code check}, commands parse, JSON is JSON. */
class DocumentExamplesTest {
    /** {@code MotionsPageTest} and {@code LooksPageTest} test those of these two, whose looks need zones from the beginning of the page. */
    private static final List<String> TESTED_ELSEWHERE = List.of("daemon/doc/motions.md", "daemon/doc/looks.md");

    /** What an example leaves out, by the key that would contain it. */
    private static final Map<String, String> REST = new LinkedHashMap<>();

    /** The same on the page about several printers. */
    private static final Map<String, String> REST_OF_SEVERAL = new LinkedHashMap<>();

    static {
        REST.put("broker", "[broker]\nurl = \"mqtt://127.0.0.1\"\n");
        REST.put(
                "printer.state",
                "[printer.state]\ntopic = \"shop/alder/job\"\nprinting = [\"RUN\"]\nfault = [\"ALARM\"]\n");
        REST.put("printer.readings", """
                [printer.readings]
                nozzle.actual_C = { topic = "shop/alder/heat", at = "/tip/now" }
                job.progress = { topic = "shop/alder/job", at = "/percent", unit = "percent" }
                """);
        REST.put("controller", "[controller]\nport = \"/dev/ttyACM0\"\n");
        REST.put("strip", "[strip]\npixels = 30\n");
        REST_OF_SEVERAL.put("broker", REST.get("broker"));
        REST_OF_SEVERAL.put("printers", """
                [printers.alder.readings]
                job.progress = { topic = "shop/alder/job", at = "/percent", unit = "percent" }
                [printers.birch.readings]
                job.progress = { topic = "shop/birch/job", at = "/percent", unit = "percent" }
                """);
        REST_OF_SEVERAL.put("controller", REST.get("controller"));
        REST_OF_SEVERAL.put("strip", "[strip]\npixels = 60\n");
        REST_OF_SEVERAL.put("dimmers", "[dimmers]\nwork = { channel = 0, volts = 24, full_mA = 800 }\n");
    }

    private static final Pattern WORD = Pattern.compile("'([^']*)'|\"([^\"]*)\"|(\\S+)");
    private static final ObjectMapper JSON = new ObjectMapper();

    @TempDir
    private Path folder;

    /** A piece of a document, and where it is from. */
    private record Example(String page, String text) {
        @Override
        public String toString() {
            return page + ": " + text.strip().lines().findFirst().orElse("");
        }
    }

    private static Stream<Example> blocks(String language) {
        return Page.all().stream()
                .flatMap(page -> page.blocks().stream()
                        .filter(block -> block.language().equals(language))
                        .map(block -> new Example(page.name(), block.text())));
    }

    private static Stream<Example> files() {
        return blocks("toml").filter(example -> !TESTED_ELSEWHERE.contains(example.page()));
    }

    @ParameterizedTest
    @MethodSource("files")
    void aFilePassesTheCheck(Example example) throws IOException, ConfigException {
        TomlParseResult keys = Toml.parse(example.text());
        StringBuilder file = new StringBuilder(example.text());
        rest(example).forEach((key, section) -> file.append(keys.contains(key) ? "" : section));
        Files.writeString(folder.resolve("alder.token"), "0123456789abcdef0123456789abcdef\n");
        Path whole = Files.writeString(folder.resolve("alder.toml"), file.toString());
        ConfigFile.examine(whole);
        if (keys.contains("looks")) {
            Run check = Run.of("check", whole.toString());
            assertEquals(0, check.status(), check.err());
        }
    }

    private static Map<String, String> rest(Example example) {
        return example.page().equals("daemon/doc/views.md") ? REST_OF_SEVERAL : REST;
    }

    private static Stream<Example> commands() {
        return blocks("sh").flatMap(DocumentExamplesTest::lines).filter(DocumentExamplesTest::isCommand);
    }

    private static Stream<Example> mentions() {
        return Page.all().stream()
                .flatMap(page -> page.inlineCode().stream().map(code -> new Example(page.name(), code)))
                .filter(DocumentExamplesTest::isCommand);
    }

    private static boolean isCommand(Example example) {
        return example.text().matches("(sudo )?lampwright \\S.*");
    }

    private static Stream<Example> lines(Example block) {
        return Stream.of(block.text().split("\\n|&&", -1))
                .map(line -> new Example(
                        block.page(), line.replaceFirst("(^|\\s)#.*", "").strip()));
    }

    @ParameterizedTest
    @MethodSource("commands")
    void aCommandIsUnderstood(Example example) {
        assertFalse(parsed(example).subcommands().isEmpty());
    }

    /** Within a line of text, a command may omit required arguments; but every option must exist. */
    @ParameterizedTest
    @MethodSource("mentions")
    void aMentionedCommandExists(Example example) {
        try {
            assertFalse(parsed(example).subcommands().isEmpty());
        } catch (CommandLine.MissingParameterException e) {
            assertFalse(e.getMissing().isEmpty());
        }
    }

    private static CommandLine.ParseResult parsed(Example example) {
        List<String> words = words(example.text());
        words.removeIf(word -> word.equals("sudo"));
        return Lampwright.commandLine().parseArgs(words.subList(1, words.size()).toArray(String[]::new));
    }

    private static List<String> words(String command) {
        List<String> words = new ArrayList<>();
        Matcher word = WORD.matcher(command.replaceFirst(" (>>?|\\|) .*", ""));
        while (word.find()) {
            words.add(Stream.of(word.group(1), word.group(2), word.group(3))
                    .filter(found -> found != null)
                    .findFirst()
                    .orElseThrow());
        }
        return words;
    }

    @ParameterizedTest
    @MethodSource("messages")
    void aMessageIsWhatAnAskTakes(Example example) throws IOException {
        List<String> words = words(example.text());
        String payload = words.get(words.indexOf("-m") + 1);
        String topic = words.get(words.indexOf("-t") + 1);
        String ask = topic.substring(topic.lastIndexOf('/') + 1);
        assertTrue(Stream.of(Ask.values()).anyMatch(each -> each.word().equals(ask)), example.text());
        assertTrue(!payload.startsWith("{") || JSON.readTree(payload).has(ask), example.text());
    }

    private static Stream<Example> messages() {
        return blocks("sh")
                .flatMap(DocumentExamplesTest::lines)
                .filter(example -> example.text().startsWith("mosquitto_pub")
                        && example.text().contains(" -m "));
    }

    /** One value after the other, or a part of an object. */
    @ParameterizedTest
    @MethodSource("json")
    void jsonIsJson(Example example) throws IOException {
        String text = example.text().startsWith("\"") ? "{" + example.text() + "}" : example.text();
        try (MappingIterator<JsonNode> values = JSON.readerFor(JsonNode.class).readValues(text)) {
            assertFalse(values.readAll().isEmpty());
        }
    }

    private static Stream<Example> json() {
        return Stream.concat(blocks("json"), blocks("jsonl"));
    }

    @Test
    void aRecordingByHandCanBeDrawn() throws IOException {
        List<Example> recordings = blocks("jsonl").toList();
        assertFalse(recordings.isEmpty());
        for (Example example : recordings) {
            Path status = Files.writeString(folder.resolve("status.jsonl"), example.text());
            Run drawn = Run.of("render", "--status=" + status, "--out=" + folder.resolve("drawn.png"));
            assertEquals(0, drawn.status(), drawn.err());
        }
    }

    @ParameterizedTest
    @MethodSource("shell")
    void theShellUnderstandsABlockOfCommands(Example example) throws IOException, InterruptedException {
        Process shell = new ProcessBuilder("sh", "-nc", example.text())
                .redirectErrorStream(true)
                .start();
        assertTrue(shell.waitFor(10, TimeUnit.SECONDS));
        assertEquals(0, shell.exitValue(), new String(shell.getInputStream().readAllBytes(), StandardCharsets.UTF_8));
    }

    private static Stream<Example> shell() {
        return blocks("sh");
    }
}
