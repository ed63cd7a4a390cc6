package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.cli.BenchRig.Answer;
import dev.lampwright.colour.ScreenPixels;
import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.engine.Chain;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.protocol.Frame;
import java.io.ByteArrayOutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What the bench says through the page's server, without a browser. */
@Timeout(120)
class BenchPageTest {
    private static final Map<String, Object> CALM =
            Map.of("layers", List.of(Map.of("colour", "seagreen"), Map.of("zone", "shelf", "colour", "gold")));
    private static final Map<String, Object> FLASHING = Map.of(
            "layers",
            List.of(
                    Map.of("colour", "#102030"),
                    Map.of("colour", "pink", "hidden", true),
                    Map.of("colour", "white", "rhythm", "on 0.1s off 0.1s", "edge_s", 0)));

    @TempDir
    private static Path folder;

    private static BenchRig rig;

    @BeforeAll
    static void open() {
        rig = new BenchRig(folder);
    }

    @AfterAll
    static void close() {
        rig.close();
    }

    private static List<String> names(JsonNode array) {
        return StreamSupport.stream(array.spliterator(), false)
                .map(one -> one.path("name").asText())
                .toList();
    }

    private static JsonNode named(JsonNode array, String name) {
        return StreamSupport.stream(array.spliterator(), false)
                .filter(one -> one.path("name").asText().equals(name))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void theVocabularyIsThatOfTheFileAndOfTheseLights() {
        JsonNode words = rig.get("vocabulary").json();
        JsonNode softness = named(words.at("/keys/layer"), "softness_px");
        assertEquals("number", softness.get("kind").asText());
        assertEquals(0, softness.get("low").asDouble());
        assertEquals(0, softness.get("usual").asDouble());
        assertEquals(
                "[\"bar\",\"pointer\",\"band\"]", softness.at("/when/extent").toString());
        assertTrue(named(words.at("/keys/layer"), "edge_s").at("/when/rhythm").asBoolean());
        assertEquals(
                "solid", named(words.at("/keys/layer"), "paint").get("usual").asText());
        assertEquals(
                "[\"solid\",\"ramp\",\"scale\",\"palette\",\"ember\"]",
                words.get("paints").toString());
        assertTrue(names(words.get("zones")).containsAll(List.of("strip", "bed", "shelf")));
        assertEquals(10, named(words.get("zones"), "shelf").get("pixels").asInt());
        assertEquals(List.of("work"), names(words.get("dimmers")));
        assertTrue(named(words.get("signals"), "bed.heat").get("share").asBoolean());
        assertTrue(named(words.get("signals"), "bed.heat").get("now").isNull(), "unknown");
        assertEquals(24, words.get("swatches").size());
        assertTrue(words.get("rhythms").toString().startsWith("[\"on 0.5s off 1.5s\",\"swell 4s\",\"F\","));
    }

    @Test
    void everyLookIsListedWithWhereItStands() {
        JsonNode looks = rig.get("looks").json().get("looks");
        assertEquals("file", named(looks, "waiting").get("from").asText());
        assertEquals("[\"idle\"]", named(looks, "waiting").get("states").toString());
        assertEquals("built-in", named(looks, "printing").get("from").asText());
        assertEquals("swatch", named(looks, "sea-mist").get("from").asText());
        assertTrue(named(looks, "fault").get("fault").asBoolean());
        assertTrue(named(looks, "fault-over").get("fault").asBoolean());
        assertTrue(named(looks, "fault").get("flashes").asBoolean());
        assertFalse(named(looks, "printing").get("fault").asBoolean());
        assertTrue(named(looks, "silent").get("on").asBoolean());
    }

    @Test
    void aLookOfTheFileIsTextAndValuesAlike() {
        JsonNode look = rig.get("looks/waiting").json();
        assertEquals("""
                # Waiting for the next job.
                [looks.waiting]
                dimmers = { work = 0.4 }
                layers = [
                  { colour = "midnightblue", opacity = 0.3 }, # the ground
                  { zone = "shelf", colour = "orange", extent = "bar", by = "job.progress" },
                ]
                """, look.get("toml").asText());
        assertEquals(0.3, look.at("/look/layers/0/opacity").asDouble());
        assertEquals(
                "midnightblue on the whole strip, 30 %", look.at("/sentences/0").asText());
        assertEquals(
                "orange as a bar on shelf, follows job.progress",
                look.at("/sentences/1").asText());
        assertEquals(64, look.get("version").asText().length());
    }

    @Test
    void whatIsReadyCanBeBegunWithAsItIsOnTheseLights() {
        for (String name : List.of("printing", "fault-over", "sea-mist", "wet-slate")) {
            JsonNode look = rig.get("looks/" + name).json();
            Answer verdict = rig.send("POST", "check", "{\"name\":\"mine\",\"look\":" + look.get("look") + "}");
            assertTrue(verdict.json().get("ok").asBoolean(), name + ": " + verdict.json());
        }
    }

    @Test
    void aCalmLookIsGoodAndMeasured() {
        JsonNode verdict =
                rig.post("check", Map.of("name", "mine", "look", CALM)).json();
        assertTrue(verdict.get("ok").asBoolean());
        assertEquals(0, verdict.at("/flashes/most").asInt());
        assertEquals(600, verdict.at("/current/ceiling_mA").asInt());
        assertTrue(verdict.at("/current/peak_mA").asInt() > 100, verdict.toString());
        assertTrue(verdict.at("/current/peak_mA").asInt() <= 600);
    }

    @Test
    void theGuardsDimmingIsToldBeforehand() {
        Map<String, Object> white = Map.of("layers", List.of(Map.of("colour", "white")));
        JsonNode current =
                rig.post("check", Map.of("name", "mine", "look", white)).json().get("current");
        assertTrue(current.get("asked_mA").asInt() > 600, current.toString());
        assertTrue(current.get("peak_mA").asInt() <= 600, current.toString());
        assertEquals(1, current.get("dimmed_share").asDouble());
    }

    @Test
    void whatFlashesIsRefusedInTheWordsOfCheckAtItsLayer() throws Exception {
        JsonNode verdict =
                rig.post("check", Map.of("name", "mine", "look", FLASHING)).json();
        assertFalse(verdict.get("ok").asBoolean());
        JsonNode mistake = verdict.at("/mistakes/0");
        assertEquals(2, mistake.get("layer").asInt(), "the hidden one counts, as in the file");
        assertEquals("rhythm", mistake.get("key").asText());
        assertEquals("[2]", verdict.at("/flashes/layers").toString());
        String toml = rig.post("toml", Map.of("name", "mine", "look", FLASHING))
                .json()
                .get("toml")
                .asText();
        Path file = folder.resolve("flashing.toml");
        Files.writeString(file, rig.text() + "\n" + toml);
        Run check = Run.of("check", file.toString());
        assertEquals(1, check.status());
        assertTrue(check.err().strip().endsWith(mistake.get("text").asText()), check.err());
    }

    @Test
    void aMistakeIsAtTheKeyThatHasIt() {
        Map<String, Object> wrong =
                Map.of("layers", List.of(Map.of("colour", "red"), Map.of("colour", "rde", "glow", 3)));
        JsonNode verdict =
                rig.post("check", Map.of("name", "mine", "look", wrong)).json();
        assertFalse(verdict.get("ok").asBoolean());
        List<String> keys = new ArrayList<>();
        verdict.get("mistakes")
                .forEach(one ->
                        keys.add(one.get("layer").asInt() + one.get("key").asText()));
        assertEquals(List.of("1colour", "1glow"), keys.stream().sorted().toList());
        assertEquals("red on the whole strip", verdict.at("/sentences/0").asText());
    }

    @Test
    void whatLooksLikeAnotherStateIsNamed() {
        String body = "{\"name\":\"waiting\",\"alike\":true,\"look\":"
                + rig.get("looks/done").json().get("look") + "}";
        JsonNode alike = rig.send("POST", "check", body).json().get("alike");
        assertEquals("done", alike.at("/0/other").asText(), alike.toString());
        assertEquals("[\"protan\",\"deutan\",\"tritan\"]", alike.at("/0/to").toString());
    }

    @Test
    void thePreviewIsWhatTheChainMakes() throws Exception {
        Map<String, Object> played = Map.of("state", "printing", "signals", Map.of("job.progress", 0.5));
        JsonNode film = rig.post(
                        "preview",
                        Map.of("name", "mine", "look", CALM, "printer", played, "seconds", 2, "rate", 10, "from_s", 1))
                .json();
        assertEquals(20, film.get("frames").asInt());
        assertEquals(30, film.get("pixels").asInt());
        String toml = rig.post("toml", Map.of("name", "mine", "look", CALM))
                .json()
                .get("toml")
                .asText();
        Config config = ConfigFile.read(rig.text() + "\n" + toml, "birch.toml");
        Chain chain =
                Chain.of(config.setup(), config.light().showing(config.looks().get("mine")), 10);
        Frame frame = new Frame(config.setup().stripBytes(), 1);
        ScreenPixels screen = new ScreenPixels(config.setup().order(), 30);
        ByteArrayOutputStream wanted = new ByteArrayOutputStream();
        PrinterStatus status = PrinterStatus.nothingHeard().withState(PrinterState.PRINTING, 0);
        for (int i = 0; i < 30; i++) {
            chain.make(status, TimeUnit.SECONDS.toNanos(i) / 10, frame);
            if (i >= 10) {
                wanted.writeBytes(screen.of(frame.strip()));
            }
        }
        assertArrayEquals(
                wanted.toByteArray(),
                Base64.getDecoder().decode(film.get("strip").asText()));
        assertEquals(chain.guard().stripMilliamps(), film.at("/mA/19").asInt());
    }

    /** A bar of ten pixels that follows a signal, with the signal at a value that no reading could give so simply. */
    @Test
    void anySignalCanBePlayed() {
        Map<String, Object> bar = Map.of(
                "layers",
                List.of(Map.of(
                        "zone", "shelf", "colour", "white", "extent", "bar", "by", "bed.cooling", "opacity", 0.1)));
        for (int lit : List.of(0, 3, 10)) {
            byte[] strip = frame(bar, Map.of("signals", Map.of("bed.cooling", lit / 10.0)));
            int count = 0;
            for (int pixel = 0; pixel < 30; pixel++) {
                count += strip[3 * pixel] == 0 ? 0 : 1;
            }
            assertEquals(lit, count);
        }
    }

    private static byte[] frame(Map<String, Object> look, Map<String, Object> played) {
        JsonNode film = rig.post("preview", Map.of("name", "mine", "look", look, "printer", played, "seconds", 0))
                .json();
        return Base64.getDecoder().decode(film.get("strip").asText());
    }

    @Test
    void aLayerAloneIsItsZone() {
        JsonNode film = rig.post(
                        "preview",
                        Map.of(
                                "name", "mine", "look", CALM, "layer", 1, "pixels", 12, "seconds", 0, "printer",
                                Map.of()))
                .json();
        assertEquals(12, film.get("pixels").asInt());
        byte[] strip = Base64.getDecoder().decode(film.get("strip").asText());
        assertEquals(36, strip.length);
        assertEquals(255, strip[0] & 0xFF, "gold is full of red");
        assertEquals(0, strip[35] & 0xFF, "and has no blue");
    }

    @Test
    void withoutGuardsTheLightIsAsItIsAskedFor() {
        Map<String, Object> white = Map.of("layers", List.of(Map.of("colour", "white")));
        Map<String, Object> asked = Map.of("name", "mine", "look", white, "seconds", 0, "printer", Map.of());
        byte[] held = Base64.getDecoder()
                .decode(rig.post("preview", asked).json().get("strip").asText());
        Map<String, Object> open = new HashMap<>(asked);
        open.put("guards", false);
        byte[] free = Base64.getDecoder()
                .decode(rig.post("preview", open).json().get("strip").asText());
        assertEquals(255, free[0] & 0xFF);
        assertTrue((held[0] & 0xFF) < 255, "600 mA do not light 30 pixels in full");
    }

    @Test
    void theCuesChooseInAPreviewToo() {
        Map<String, Object> played = Map.of("state", "idle");
        JsonNode film = rig.post(
                        "preview",
                        Map.of("name", "waiting", "look", CALM, "states", true, "printer", played, "seconds", 0.1))
                .json();
        assertEquals("waiting", film.get("look").asText());
        played = Map.of("state", "done");
        film = rig.post(
                        "preview",
                        Map.of("name", "waiting", "look", CALM, "states", true, "printer", played, "seconds", 0.1))
                .json();
        assertEquals("done", film.get("look").asText());
    }

    @Test
    void theVocabularyFollowsTheZones(@TempDir Path other) throws Exception {
        try (BenchRig changed = new BenchRig(other)) {
            String before = changed.get("vocabulary").json().get("version").asText();
            assertEquals(before, changed.get("vocabulary").json().get("version").asText());
            Files.writeString(
                    changed.files().file(),
                    changed.text().replace("shelf = \"20-29\"", "shelf = \"20-29\"\nrim = \"0-4\""));
            changed.reload();
            JsonNode words = changed.get("vocabulary").json();
            assertEquals(5, named(words.get("zones"), "rim").get("pixels").asInt());
            assertFalse(before.equals(words.get("version").asText()), "the page sees that it has to ask again");
        }
    }

    private static JsonNode recorded(Map<String, Object> look, String id, double at, double speed, double seconds) {
        Map<String, Object> recording = Map.of("id", id, "at_s", at, "speed", speed);
        return rig.post("preview", Map.of("name", "mine", "look", look, "recording", recording, "seconds", seconds))
                .json();
    }

    /** How many of the ten pixels of the shelf are lit in a frame. */
    private static int lit(JsonNode film, int frame) {
        byte[] strip = Base64.getDecoder().decode(film.get("strip").asText());
        int count = 0;
        for (int pixel = 20; pixel < 30; pixel++) {
            count += strip[3 * (30 * frame + pixel)] == 0 ? 0 : 1;
        }
        return count;
    }

    /** The invented job is at 0 % after 12 s, and gains 5.5 % a second. */
    @Test
    void aRecordingIsPlayedFromAnyTimeAtAnySpeed() {
        Map<String, Object> bar = Map.of(
                "layers",
                List.of(Map.of(
                        "zone", "shelf", "colour", "white", "extent", "bar", "by", "job.progress", "opacity", 0.1)));
        JsonNode list = rig.get("recordings").json();
        JsonNode example = list.get("recordings").get(list.get("recordings").size() - 1);
        assertEquals("example", example.get("id").asText());
        assertTrue(example.get("seconds").asDouble() > 30);
        JsonNode slow = recorded(bar, "example", 17, 1, 2);
        assertEquals(40, slow.get("frames").asInt());
        assertEquals(3, lit(slow, 0), "27.5 %: two pixels and a part of one");
        assertEquals(4, lit(slow, 39), "33 % from second 18 on");
        JsonNode fast = recorded(bar, "example", 12, 5, 2);
        assertEquals(0, lit(fast, 0));
        assertEquals(3, lit(fast, 20), "after one second of film it is five seconds later");
        assertEquals(recorded(bar, "example", 12, 5, 2), fast, "the same each time");
        assertEquals("printing", fast.at("/shown/0/state").asText());
        assertEquals("fault", fast.at("/shown/1/state").asText(), "which begins after 20 s");
        assertEquals(32, fast.at("/shown/1/frame").asInt(), "eight seconds at five times the speed");
    }

    @Test
    void theLookKeepsItsRhythmAtEverySpeed() {
        Map<String, Object> blink = Map.of(
                "layers", List.of(Map.of("zone", "shelf", "colour", "#202020", "rhythm", "Iso 2s", "edge_s", 0)));
        List<List<Integer>> seen = new ArrayList<>();
        for (double speed : List.of(1.0, 12.0)) {
            JsonNode film = recorded(blink, "example", 0, speed, 4);
            List<Integer> frames = new ArrayList<>();
            for (int frame = 0; frame < 80; frame++) {
                frames.add(lit(film, frame));
            }
            seen.add(frames);
        }
        assertEquals(seen.get(0), seen.get(1));
        assertTrue(seen.get(0).contains(0) && seen.get(0).contains(10), "it blinks");
    }

    @Test
    void theCuesFollowARecordingToo() {
        Map<String, Object> recording = Map.of("id", "example", "at_s", 0, "speed", 6);
        JsonNode shown = rig.post(
                        "preview", Map.of("name", "printing", "states", true, "recording", recording, "seconds", 6))
                .json()
                .get("shown");
        List<String> states = new ArrayList<>();
        shown.forEach(one ->
                states.add(one.get("state").asText() + " " + one.get("look").asText()));
        assertTrue(
                states.containsAll(List.of("idle waiting", "warming warming", "printing printing")), states.toString());
    }

    @Test
    void aRecordingCanBeUploaded() {
        String text = """
                {"at_s":0,"state":"printing","readings":{"job.progress":0.5}}
                {"tick":3,"left_out":2}
                {"at_s":7.5,"state":"done"}
                """;
        Answer kept = rig.put("recordings/monday", Map.of("text", text));
        assertEquals(200, kept.status(), kept.json().toString());
        assertEquals(7.5, kept.json().get("seconds").asDouble());
        JsonNode shown = recorded(CALM, "monday", 5, 1, 5).get("shown");
        assertEquals("printing", shown.at("/0/state").asText());
        assertEquals("done", shown.at("/1/state").asText());
        assertEquals(50, shown.at("/1/frame").asInt());
        Answer bad = rig.put("recordings/monday", Map.of("text", text + "{\"at_s\":2}\n"));
        assertRefused(422, "bad_recording", bad);
        assertEquals(4, bad.json().at("/values/line").asInt());
        assertRefused(422, "bad_recording", rig.put("recordings/none", Map.of("text", "\n")));
        assertRefused(422, "bad_recording", rig.put("recordings/none", Map.of("text", "no JSON")));
        assertRefused(409, "recording_name", rig.put("recordings/example", Map.of("text", text)));
        assertRefused(413, "recording_too_long", rig.put("recordings/long", Map.of("text", " ".repeat(262_145))));
        assertRefused(413, "too_long", rig.put("recordings/long", Map.of("text", " ".repeat(400_000))));
        rig.put("recordings/second", Map.of("text", text));
        rig.put("recordings/third", Map.of("text", text));
        assertRefused(409, "too_many_recordings", rig.put("recordings/fourth", Map.of("text", text)));
        for (String name : List.of("monday", "second", "third")) {
            assertEquals(200, rig.send("DELETE", "recordings/" + name, "").status());
        }
        Map<String, Object> gone = Map.of("id", "monday");
        assertRefused(404, "no_recording", rig.post("preview", Map.of("look", CALM, "recording", gone)));
        assertRefused(
                400,
                "bad_request",
                rig.post("preview", Map.of("look", CALM, "recording", Map.of("id", "example", "speed", 0))));
    }

    @Test
    void whatMakesNoSenseIsRefusedInOneLine() {
        assertRefused(400, "bad_request", rig.send("POST", "check", "[]"));
        assertRefused(400, "bad_request", rig.send("POST", "check", "{\"look\":7}"));
        assertRefused(400, "bad_request", rig.send("POST", "check", "{\"look\":{\"layers\":null}}"));
        assertRefused(400, "bad_request", rig.post("preview", Map.of("look", CALM, "rate", 21)));
        assertRefused(400, "bad_request", rig.post("preview", Map.of("look", CALM, "from_s", -1)));
        assertRefused(400, "bad_request", rig.post("preview", Map.of("look", CALM, "layer", 9)));
        assertRefused(
                400, "bad_request", rig.post("preview", Map.of("look", CALM, "printer", Map.of("state", "sleepy"))));
        assertRefused(404, "no_look", rig.get("looks/nowhere"));
        assertRefused(404, "no_look", rig.post("preview", Map.of("name", "nowhere")));
        assertRefused(404, "nothing", rig.get("vocabulary/x"));
        assertRefused(422, "mistakes", rig.post("preview", Map.of("name", "mine", "look", Map.of("layers", 3))));
        assertRefused(413, "too_long", rig.send("POST", "check", "{\"look\":\"" + "x".repeat(70_000) + "\"}"));
        assertEquals(
                415,
                rig.send("POST", "check", "{}", "Content-Type", "text/plain").status());
        assertEquals(403, rig.get("looks", "Origin", "http://elsewhere.example").status());
        assertEquals(405, rig.send("PATCH", "looks/waiting", "{}").status());
        String deep = "{\"look\":" + "{\"a\":".repeat(500) + "1" + "}".repeat(500) + "}";
        assertRefused(400, "bad_request", rig.send("POST", "check", deep));
    }

    private static void assertRefused(int status, String code, Answer answer) {
        assertEquals(status, answer.status(), answer.json().toString());
        assertEquals(code, answer.code());
        assertFalse(answer.json().get("done").asBoolean());
        assertFalse(answer.json().get("why").asText().contains("\n"));
    }
}
