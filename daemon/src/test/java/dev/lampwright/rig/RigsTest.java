package dev.lampwright.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.ConfigException;
import dev.lampwright.config.Mistake;
import dev.lampwright.engine.Daemon;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.CapturedLog;
import dev.lampwright.testing.FreePort;
import dev.lampwright.testing.Heartbeat;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Rigs start, change and stop with their files, each on its own. Nothing listens at the address of their broker. */
@Timeout(60)
class RigsTest {
    private static final int FRAMES_PER_SECOND = 30;

    @TempDir
    private Path folder;

    private final Heartbeat heartbeat = new Heartbeat();
    private TestShop shop;
    private long startNanos;

    @BeforeEach
    void start() throws ConfigException {
        heartbeat.start();
        startNanos = System.nanoTime();
        URI nobody = URI.create("mqtt://127.0.0.1:" + FreePort.find());
        shop = new TestShop(folder, nobody, FRAMES_PER_SECOND, System::nanoTime);
        shop.rig("alder", "").rig("birch", "").read().awaitRunning("alder", "birch");
    }

    @AfterEach
    void end() {
        shop.close();
        heartbeat.close();
    }

    /** No thread could have kept these: the machine made it wait. */
    private long ticksThatTheMachineMissed() {
        long stood = heartbeat.sumBetween(startNanos, System.nanoTime());
        return FRAMES_PER_SECOND * stood / TimeUnit.SECONDS.toNanos(1);
    }

    private List<String> names() {
        return shop.rigs().all().stream().map(Rig::name).toList();
    }

    private Rig rig(String name) {
        return shop.rigs().find(name).orElseThrow();
    }

    @Test
    void aRigComesChangesAndGoesWhileAnotherGoesOn() throws ConfigException, IOException {
        Daemon alder = shop.daemon("alder");
        Daemon birch = shop.daemon("birch");
        shop.rig("rowan", "").read().awaitRunning("rowan");
        assertEquals(List.of("alder", "birch", "rowan"), names());
        shop.rig("birch", "strip.pixels = 7\n").read();
        Await.until("seven pixels", () -> birch.tap().config().setup().pixels() == 7);
        Files.delete(shop.file("rowan"));
        shop.read();
        assertEquals(List.of("alder", "birch"), names());
        assertSame(alder, shop.daemon("alder"));
        assertSame(birch, shop.daemon("birch"), "a change is taken up by the same daemon");
        long pulse = alder.pulse();
        Await.until("alder goes on", () -> alder.pulse() > pulse + 5);
        long skipped = alder.frames().snapshot().skipped();
        assertTrue(skipped < ticksThatTheMachineMissed() + FRAMES_PER_SECOND, "alder left out " + skipped + " ticks");
        Set<String> threads = threads();
        assertTrue(threads.contains("frames birch"));
        assertFalse(threads.contains("frames rowan"), "what is gone makes no frames");
    }

    @Test
    void aFileThatIsRenamedIsAnotherRigAtTheSameController() throws ConfigException, IOException {
        shop.rig("birch", "controller.port = \"memory-shared\"\n").read();
        Files.move(shop.file("birch"), shop.file("oak"));
        shop.read();
        assertEquals(List.of("alder", "oak"), names());
        Await.until("oak runs", () -> rig("oak").daemon().isPresent());
        assertEquals("lampwright/oak", shop.daemon("oak").tap().config().talk().prefix());
    }

    @Test
    void aFileThatIsNotRightIsRejectedAlone() throws ConfigException {
        Daemon birch = shop.daemon("birch");
        try (CapturedLog log = new CapturedLog(Rig.class.getName())) {
            shop.rig("birch", "strip.pixels = 0\n")
                    .rig("rowan", "strip.pixels = 0\n")
                    .read();
            shop.read();
            assertEquals(
                    List.of(
                            "WARN " + shop.file("birch")
                                    + ":1: strip.pixels: is 0; give a whole number from 1 to 65535",
                            "WARN " + shop.file("birch") + " is rejected; the rig runs as before",
                            "WARN " + shop.file("rowan")
                                    + ":1: strip.pixels: is 0; give a whole number from 1 to 65535",
                            "WARN " + shop.file("rowan") + " is rejected; the rig is off"),
                    log.lines(),
                    "told once each");
        }
        assertSame(birch, shop.daemon("birch"));
        assertEquals(1, rig("birch").mistakes().size());
        assertTrue(rig("birch").trouble().startsWith("its file is rejected and it runs as before: "));
        assertTrue(rig("rowan").daemon().isEmpty());
        assertTrue(rig("rowan").trouble().startsWith("its file is rejected: "));
        assertEquals("", rig("alder").trouble());
        assertEquals(Set.of("alder", "birch"), shop.rigs().daemons().keySet());
        shop.rig("rowan", "").rig("birch", "").read().awaitRunning("rowan");
        assertEquals("", rig("rowan").trouble() + rig("birch").trouble());
    }

    @Test
    void aShopThatIsNotRightLeavesAllAsTheyAre() throws ConfigException {
        Daemon alder = shop.daemon("alder");
        Mistake wrong = new Mistake("shop.toml", 1, "", "is wrong", "fix it");
        try (CapturedLog log = new CapturedLog(Rigs.class.getName())) {
            shop.rigs().refused(List.of(wrong));
            shop.rigs().refused(List.of(wrong));
            assertEquals(List.of(wrong), shop.rigs().mistakes());
            shop.read();
            shop.read();
            assertEquals(
                    List.of("WARN " + wrong, "WARN all rigs run as before", "INFO what all rigs share is valid again"),
                    log.lines());
        }
        assertEquals(List.of(), shop.rigs().mistakes());
        assertSame(alder, shop.daemon("alder"));
    }

    private static Set<String> threads() {
        return Thread.getAllStackTraces().keySet().stream().map(Thread::getName).collect(Collectors.toSet());
    }

    @Test
    void threadsNameTheRig() {
        for (String work : List.of("frames", "link")) {
            Await.until(work + " alder", () -> threads().contains(work + " alder"));
        }
        for (String work : List.of("printer", "crew 1", "crew watch")) {
            Await.until(work, () -> threads().contains(work));
        }
        assertEquals(
                Set.of("frames alder", "link alder"),
                threads().stream().filter(name -> name.endsWith(" alder")).collect(Collectors.toSet()),
                "what rigs share belongs to none of them");
    }

    @Test
    void thePulseMovesWhileAnyRigDoes() {
        long before = shop.rigs().pulse();
        Await.until("another number", () -> shop.rigs().pulse() != before);
    }

    @Test
    void thePulseMovesWithoutAnyRig() throws ConfigException, IOException {
        Files.delete(shop.file("alder"));
        Files.delete(shop.file("birch"));
        shop.read();
        long before = shop.rigs().pulse();
        shop.rigs().lookAround();
        assertFalse(before == shop.rigs().pulse());
    }
}
