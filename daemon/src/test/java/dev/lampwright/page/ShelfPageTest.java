package dev.lampwright.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.FreePort;
import java.io.ByteArrayOutputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** The shelf without a browser, and without a broker: all printers are silent. */
class ShelfPageTest {
    private static ShelfRig rig() {
        return new ShelfRig(
                URI.create("mqtt://127.0.0.1:" + FreePort.find()),
                100,
                "[looks.silent]\nlayers = [{ colour = \"red\" }]\n",
                List.of("birch", "alder"));
    }

    @Test
    void everyRigIsThereWithItsStripAndALinkToItsPage() {
        try (ShelfRig rig = rig()) {
            rig.reject("oak", "rigs/oak.toml line 3: is not valid");
            try (Watcher watcher = rig.watch()) {
                JsonNode rigs = watcher.await("shelf").get("rigs");
                assertEquals(3, rigs.size());
                assertEquals("rejected", rigs.get(0).get("standing").asText());
                assertEquals("alder", rigs.get(1).get("name").asText());
                assertEquals("alder/", rigs.get(1).get("page").asText());
                assertEquals("silent", rigs.get(2).get("standing").asText());
                String id = rigs.get(2).get("id").asText();
                Await.until(
                        "a strip that is lit red",
                        () -> watcher.newest("strips")
                                .filter(strips -> strips.has(id))
                                .map(strips -> Base64.getDecoder()
                                        .decode(strips.get(id).asText()))
                                .filter(rgb -> rgb.length == 72 && rgb[0] != 0 && rgb[1] == 0)
                                .isPresent());
            }
            assertTrue(rig.get("").body().contains("shelf.js?v="));
            assertTrue(rig.get("alder/").body().contains("page.js?v="));
            assertEquals(404, rig.get("oak/").statusCode());
            assertEquals(404, rig.get("ask/quiet").statusCode(), "nothing is asked of all");
        }
    }

    /** Light that does not change is sent once, not twenty times a second. */
    @Test
    void nothingIsSentThatIsNotNewAndNobodyLooksForNobody() {
        try (ShelfRig rig = rig()) {
            int before = rig.daemon("alder").tap().looking();
            try (Watcher watcher = rig.watch()) {
                watcher.await("strips");
                assertEquals(before + 1, rig.daemon("alder").tap().looking());
                Await.until("light that does not change", () -> isCalm(watcher));
                try (Watcher late = rig.watch()) {
                    assertEquals(2, late.await("strips").size(), "who comes later gets all strips");
                }
            }
            Await.until("nobody to look", () -> rig.daemon("alder").tap().looking() == before);
        }
    }

    /** Whether nothing is sent for a while. */
    private static boolean isCalm(Watcher watcher) {
        long told = watcher.count("strips");
        long end = System.nanoTime() + 400_000_000;
        while (System.nanoTime() < end) {
            if (watcher.count("strips") != told) {
                return false;
            }
            Thread.onSpinWait();
        }
        assertFalse(watcher.ended());
        return true;
    }

    @Test
    void aViewerWhoIsBehindGetsAllThatIsNewByThen() {
        StripNews news = new StripNews();
        Viewer viewer = new Viewer(new ByteArrayOutputStream());
        news.put(1, new byte[] {1, 2, 3});
        news.tell(Set.of(viewer), false);
        assertTrue(viewer.waits(Topic.STRIPS));
        news.put(2, new byte[] {4, 5, 6});
        news.tell(Set.of(viewer), false);
        assertEquals("event: strips\ndata: {\"1\":\"AQID\"}\n\n", taken(viewer));
        news.tell(Set.of(viewer), false);
        assertEquals("event: strips\ndata: {\"2\":\"BAUG\"}\n\n", taken(viewer));
        news.tell(Set.of(viewer), false);
        assertFalse(viewer.waits(Topic.STRIPS));
        news.tell(Set.of(viewer), true);
        assertEquals(
                "event: strips\ndata: {}\n\n",
                taken(viewer),
                "nothing new, so that the page knows that it is still connected");
    }

    private static String taken(Viewer viewer) {
        return new String(viewer.take(Topic.STRIPS).orElseThrow(), StandardCharsets.UTF_8);
    }
}
