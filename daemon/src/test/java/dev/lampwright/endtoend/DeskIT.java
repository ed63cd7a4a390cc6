package dev.lampwright.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.Child;
import dev.lampwright.testing.Recording.Entry;
import dev.lampwright.testing.RunningDaemon;
import java.io.IOException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** What people ask for, by {@code mosquitto_pub} and by {@code lampwright tell}, arrives on the strip, and is answered. */
@Tag("alone")
@Timeout(120)
class DeskIT extends SharedBench {
    private static final Duration SOON = Duration.ofSeconds(20);
    private static final String PREFIX = "lampwright/birch";
    private static final Picture IDLE = Birch.still(Birch.IDLE);

    DeskIT() {
        super(sections());
    }

    private static List<String> sections() {
        List<String> sections = new ArrayList<>(Birch.withoutFlashLimit());
        sections.addAll(List.of("[desk]", "prefix = \"" + PREFIX + "\"", "[alarm]", "sequence = \"R\""));
        return sections;
    }

    private Child tell(String... words) throws IOException, InterruptedException {
        List<String> all =
                new ArrayList<>(List.of("tell", "--broker", bench.broker().url().toString(), "--prefix", PREFIX));
        all.addAll(List.of(words));
        return Child.run(RunningDaemon.command(List.of(), all.toArray(String[]::new)));
    }

    private String told(String... words) throws IOException, InterruptedException {
        Child child = tell(words);
        assertEquals(0, child.status(), child.output());
        return child.output().strip();
    }

    private JsonNode status() throws IOException {
        return new ObjectMapper().readTree(bench.broker().read(PREFIX + "/status"));
    }

    @Test
    void aMessageSetsSeveralPixelsAndZonesInOneFrame() throws IOException, InterruptedException {
        bench.controller().recording().clear();
        String payload = "{\"pixels\": {\"bed\": \"#ff0000\", \"12\": \"#0000ff\"}, \"for_s\": 3600}";
        bench.broker().publish(PREFIX + "/ask/pixels", payload, false);
        Picture asked = Picture.all(0x202020).bar(0, 9, 1, 0xff0000).bar(12, 12, 1, 0x0000ff);
        bench.awaitPicture(asked);
        for (Entry frame : bench.controller().recording().entries()) {
            assertTrue(IDLE.isOn(frame.strip()) || asked.isOn(frame.strip()), "half of it: " + frame);
        }
        assertEquals("pixels automatic", told("pixels", "auto"));
        bench.awaitPicture(IDLE);
    }

    @Test
    void aLookForATimeAndBack() throws IOException, InterruptedException {
        assertEquals("look held for 3600 s", told("look", "held", "--for", "3600"));
        bench.awaitPicture(Birch.still(Birch.HELD));
        assertEquals("look automatic", told("look", "auto"));
        bench.awaitPicture(IDLE);
    }

    @Test
    void brightnessAndWhiteLight() throws IOException, InterruptedException {
        assertEquals("brightness 0", told("brightness", "0"));
        bench.awaitPicture(Picture.dark());
        assertEquals("work 0.5", told("work", "0.5", "--dimmer", "work"));
        bench.awaitFrame("the work light", entry -> entry.duties().equals(List.of(32_768)), SOON);
        awaitStatus("brightness 0", status -> status.path("brightness").asDouble(-1) == 0);
        told("work", "auto");
        assertEquals("brightness 1", told("brightness", "1"));
        bench.awaitPicture(IDLE);
    }

    @Test
    void lightsAreSetAndGivenBackInOneFrame() throws IOException, InterruptedException {
        bench.awaitPicture(IDLE);
        List<Integer> idle = bench.controller().recording().last().duties();
        bench.controller().recording().clear();
        assertEquals(
                "look held until changed, white light 0.5 until changed, 10 pixels until changed",
                told("lights", "look=held", "work=50%", "pixels.bed=#f00", "--until", "changed", "--fade", "0"));
        Picture asked = Birch.still(Birch.HELD).bar(0, 9, 1, 0xff0000);
        bench.awaitPicture(asked);
        awaitStatus(
                "the status lists three asks", status -> status.path("asked").size() == 3);
        assertEquals("changed", status().path("asked").get(0).path("until").asText());
        assertEquals("all lights automatic", told("lights", "auto", "--fade", "0"));
        bench.awaitPicture(IDLE);
        for (Entry frame : bench.controller().recording().entries()) {
            boolean before = IDLE.isOn(frame.strip()) && frame.duties().equals(idle);
            boolean after = asked.isOn(frame.strip()) && frame.duties().equals(List.of(32_768));
            assertTrue(before || after, "half of it: " + frame);
        }
    }

    @Test
    void aFaultIsAcknowledgedRingsBackAndIsReset() throws IOException, InterruptedException {
        birch.tellJob(Birch.FAULT, 0);
        bench.awaitPicture(Birch.still(Birch.FAULT));
        Child early = tell("reset");
        assertEquals(1, early.status());
        assertEquals(
                "refused: the fault has not been acknowledged; acknowledge it first",
                early.output().strip());
        assertEquals("fault acknowledged", told("acknowledge"));
        awaitStatus("alarm", "acknowledged");
        assertEquals(
                "refused: the fault is not over yet; reset it once it is",
                tell("reset").output().strip());
        birch.tellJob(Birch.IDLE, 0);
        awaitStatus("alarm", "ringback");
        assertEquals("fault reset", told("reset"));
        awaitStatus("alarm", "normal");
    }

    private void awaitStatus(String key, String word) {
        awaitStatus(key + " " + word, status -> status.path(key).asText().equals(word));
    }

    private void awaitStatus(String what, Predicate<JsonNode> holds) {
        Await.until(what, SOON, () -> {
            try {
                return holds.test(status());
            } catch (IOException e) {
                return false;
            }
        });
    }

    @Test
    void theStatusIsKeptByTheBroker() throws IOException, InterruptedException {
        birch.tellHeat(30, 60, 100, 200);
        birch.tellJob(Birch.WARMING, 0);
        awaitStatus("state", "warming");
        JsonNode status = new ObjectMapper().readTree(told("status"));
        assertTrue(status.path("online").asBoolean());
        assertEquals("warming", status.path("look").asText());
        assertEquals("lit", status.path("link").asText());
        assertEquals("connected", status.path("broker").asText());
        assertEquals(Birch.CEILING_MILLIAMPS, status.path("ceiling_mA").asInt());
        assertTrue(status.path("strip_mA").asInt() <= Birch.CEILING_MILLIAMPS);
        assertFalse(status.path("version").asText().isEmpty());
        assertEquals(60, status.path("signals").path("bed.setpoint_C").asDouble(), 1e-9);
    }

    @Test
    void nobodyThereIsSaidInOneLine() throws IOException, InterruptedException {
        String url = bench.broker().url().toString();
        Child nobody = Child.run(RunningDaemon.command(
                List.of(), "tell", "--broker", url, "--prefix", "lampwright/rowan", "--wait", "5", "quiet", "on"));
        assertEquals(1, nobody.status());
        assertEquals(
                "nobody answers on lampwright/rowan/answer at broker " + url
                        + "; check that the daemon is running there, that its desk.prefix is \"lampwright/rowan\","
                        + " and that the broker's access list allows this login",
                nobody.output().strip());
    }
}
