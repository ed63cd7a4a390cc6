package dev.lampwright.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.config.Config;
import dev.lampwright.config.Swatches;
import dev.lampwright.protocol.Frame;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.Random;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;

class MessagesTest {
    private static final int FULL = 255;

    private static Frame frame(Config config, Random random) {
        Frame frame =
                new Frame(config.setup().stripBytes(), config.setup().dimmers().size());
        random.nextBytes(frame.strip());
        Arrays.setAll(frame.duties(), i -> random.nextInt(65_536));
        return frame;
    }

    private static byte[] colours(Config config, Frame frame) {
        JsonNode json = Watcher.json(new FrameMessage(1, config).of(frame, "idle", 5));
        return Base64.getDecoder().decode(json.get("strip").asText());
    }

    /** Encoded by IEC 61966-2-1:1999, 5.2, from the strip's own order, GRB. */
    @Test
    void aPixelIsShownAsItsDutiesAreLight() {
        Config config = PageRig.config("pixels = 30", "port = 0");
        Frame frame = frame(config, new Random(1));
        byte[] colours = colours(config, frame);
        int[] places = {1, 0, 2};
        for (int i = 0; i < 90; i++) {
            double light = (frame.strip()[i / 3 * 3 + places[i % 3]] & FULL) / (double) FULL;
            double encoded = light <= 0.0031308 ? 12.92 * light : 1.055 * Math.pow(light, 1 / 2.4) - 0.055;
            assertEquals(encoded * FULL, colours[i] & FULL, 0.51, "value " + i);
        }
    }

    @Test
    void whiteIsAddedToEachColour() {
        Config config = PageRig.config("pixels = 2\norder = \"GRBW\"", "port = 0");
        Frame frame = new Frame(8, 5);
        frame.strip()[3] = (byte) FULL;
        byte[] colours = colours(config, frame);
        assertEquals(3 * 2, colours.length);
        assertEquals(FULL, colours[0] & FULL);
        assertEquals(FULL, colours[1] & FULL);
        assertEquals(FULL, colours[2] & FULL);
        assertEquals(0, colours[3] & FULL);
    }

    @Test
    void aFrameThatShowsTheSameIsNotNew() {
        Config config = PageRig.config("pixels = 30", "port = 0");
        FrameMessage message = new FrameMessage(1, config);
        Frame frame = frame(config, new Random(2));
        assertTrue(message.isNew(frame, "idle"));
        message.of(frame, "idle", 0);
        assertFalse(message.isNew(frame, "idle"));
        assertTrue(message.isNew(frame, "fault"));
        frame.duties()[3] ^= 1;
        assertTrue(message.isNew(frame, "idle"));
        frame.duties()[3] ^= 1;
        frame.strip()[89] ^= 1;
        assertTrue(message.isNew(frame, "idle"));
    }

    @Test
    void theLayoutTellsZonesLampsAndLooks() {
        Config config = PageRig.config("pixels = 30\nshape = \"ring\"\nclockwise = false", "port = 0");
        JsonNode layout = Watcher.json(LayoutMessage.of(3, "1.2", false, config));
        assertEquals(3, layout.get("layout").asInt());
        assertEquals("lampwright", layout.get("prefix").asText());
        assertEquals("ring", layout.get("shape").asText());
        assertFalse(layout.get("clockwise").asBoolean());
        assertEquals("[[0,29]]", named(layout.get("zones"), "strip").get("runs").toString());
        assertEquals(
                "[[29,15]]", named(layout.get("zones"), "nozzle").get("runs").toString());
        assertEquals("[0]", named(layout.get("lamps"), "work").get("dimmers").toString());
        assertTrue(named(layout.get("lamps"), "work").get("white").asBoolean());
        assertEquals(
                "[1,2,3]", named(layout.get("lamps"), "glow").get("dimmers").toString());
        assertFalse(named(layout.get("lamps"), "glow").get("white").asBoolean());
        assertTrue(named(layout.get("looks"), "fault").get("flashes").asBoolean(), "Q is a flash a second");
        assertFalse(named(layout.get("looks"), "held").get("flashes").asBoolean(), "it swells and sinks");
        assertTrue(layout.get("flash_limit").asBoolean());
        assertEquals("above", named(layout.get("lamps"), "work").get("hangs").asText());
        assertEquals("behind", named(layout.get("lamps"), "glow").get("hangs").asText());
        assertEquals(2, layout.get("lamps").size(), "an output without a light is no lamp");
        assertEquals("dots", layout.get("seen_as").asText());
        assertFalse(layout.has("quiet_hours"), "none are set");
    }

    /** A look that says something is wrong is not offered: using it would raise a false alarm. */
    @Test
    void looksThatWarnAreTold() {
        JsonNode looks = Watcher.json(LayoutMessage.of(1, "1.2", true, PageRig.config("pixels = 30", "port = 0")))
                .get("looks");
        for (String name : List.of("fault", "fault-seen", "fault-over", "silent")) {
            assertTrue(named(looks, name).get("warns").asBoolean(), name);
        }
        for (String name : List.of("idle", "warming", "printing", "held", "done", "stopped")) {
            assertFalse(named(looks, name).get("warns").asBoolean(), name);
        }
    }

    /** Ready-made looks can be asked for too; those made for a fault flash, and would raise a false alarm as well. */
    @Test
    void swatchesAreTold() {
        JsonNode swatches = Watcher.json(LayoutMessage.of(1, "1.2", true, PageRig.config("pixels = 30", "port = 0")))
                .get("swatches");
        assertEquals(Swatches.names().size(), swatches.size());
        assertTrue(named(swatches, "red-lantern").get("warns").asBoolean());
        assertTrue(named(swatches, "red-lantern").get("flashes").asBoolean());
        assertFalse(named(swatches, "linen").get("warns").asBoolean());
        assertFalse(named(swatches, "banked-stove").get("flashes").asBoolean(), "it swells and sinks");
    }

    @Test
    void theHoursOfTheNightAreTold() {
        Config config = PageRig.config(
                "pixels = 30\nseen_as = \"line\"", "port = 0\n[quiet]\nfrom = \"22:30\"\nto = \"07:00\"");
        JsonNode layout = Watcher.json(LayoutMessage.of(1, "1.2", true, config));
        assertEquals(
                "{\"from\":\"22:30\",\"to\":\"07:00\"}",
                layout.get("quiet_hours").toString());
        assertEquals("line", layout.get("seen_as").asText());
    }

    private static JsonNode named(JsonNode array, String name) {
        return StreamSupport.stream(array.spliterator(), false)
                .filter(node -> node.get("name").asText().equals(name))
                .findFirst()
                .orElseThrow(() -> new AssertionError(name + " is not in " + array));
    }
}
