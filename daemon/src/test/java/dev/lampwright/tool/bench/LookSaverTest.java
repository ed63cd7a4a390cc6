package dev.lampwright.tool.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.testing.Await;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.function.Supplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What happens to a save while someone else writes the same files. */
@Timeout(120)
class LookSaverTest {
    private static final String FILE = """
            # alder
            frames_per_s = 4
            [broker]
            url = "mqtt://127.0.0.1:1883"
            [printer.state]
            topic = "shop/alder/job"
            printing = ["RUN"]
            [controller]
            port = "memory"
            [strip]
            pixels = 8
            [looks.waiting]
            layers = [{ colour = "navy" }]
            """;

    @TempDir
    private Path folder;

    private final BenchWorker worker = new BenchWorker();
    private BenchFiles files;
    private Config config;

    @BeforeEach
    void write() throws IOException, ConfigException {
        files = new BenchFiles(folder.resolve("alder.toml"), folder.resolve("alder.looks.toml"));
        Files.writeString(files.file(), FILE);
        config = ConfigFile.read(files.file());
    }

    @AfterEach
    void close() {
        worker.close();
    }

    private static BenchLook look(String name, String colour) {
        return new BenchLook(name, Map.of("layers", List.of(Map.of("colour", colour))));
    }

    private String text() throws IOException {
        return Files.readString(files.file());
    }

    private LookSaver saver(Supplier<Config> running) {
        return new LookSaver(files, running, worker, new SeenLooks());
    }

    private String version(String look) throws BenchRefusal {
        return saver(() -> config).plans().shelves().find(look).orElseThrow().version();
    }

    /** Somebody else's editor, at each moment of a save at which it asks what the daemon runs. */
    private Supplier<Config> withAnother(int moment, String from, String to) {
        int[] count = new int[1];
        return () -> {
            if (count[0]++ == moment) {
                try {
                    Files.writeString(files.file(), text().replace(from, to));
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            }
            return config;
        };
    }

    @Test
    void anotherEditOfTheSameLookIsNeverOverwritten() throws IOException, BenchRefusal {
        for (int moment = 0; moment < 3; moment++) {
            Files.writeString(files.file(), FILE);
            LookSaver saver = saver(withAnother(moment, "navy", "plum"));
            String base = version("waiting");
            try {
                saver.save(look("waiting", "gold"), base, false);
                assertTrue(moment == 2, "saved before the other came");
            } catch (BenchRefusal e) {
                assertEquals("changed", e.code());
                assertEquals(FILE.replace("navy", "plum"), text(), "at moment " + moment);
            }
        }
    }

    @Test
    void anEditElsewhereInTheFileIsKept() throws IOException, BenchRefusal {
        for (int moment = 0; moment < 2; moment++) {
            Files.writeString(files.file(), FILE);
            LookSaver saver = saver(withAnother(moment, "# alder", "# alder, by the door"));
            saver.save(look("waiting", "gold"), version("waiting"), false);
            assertEquals(
                    FILE.replace("# alder", "# alder, by the door").replace("navy", "gold"), text(), "at " + moment);
        }
    }

    /** An editor that changes the file at every moment of a save. */
    private LookSaver saverBesideARestlessEditor() {
        int[] edits = new int[1];
        return saver(() -> {
            try {
                Files.writeString(files.file(), FILE.replace("# alder", "# alder " + edits[0]++));
                return config;
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
    }

    @Test
    void whoNeverLeavesTheFileAloneIsNotOverwritten() throws IOException, BenchRefusal {
        LookSaver saver = saverBesideARestlessEditor();
        String base = version("waiting");
        BenchRefusal refusal = assertThrows(BenchRefusal.class, () -> saver.save(look("waiting", "gold"), base, false));
        assertEquals("changed_file", refusal.code());
        assertTrue(text().contains("navy"));
        assertEquals(List.of(), saver.versions());
    }

    @Test
    void aChangeThatIsNotMadeCostsNoVersion() throws BenchRefusal {
        for (int i = 0; i < 10; i++) {
            saver(() -> config).save(look("look-" + i, "gold"), "", false);
        }
        List<Map<String, Object>> before = saver(() -> config).versions();
        assertEquals(10, before.size());
        String base = version("waiting");
        LookSaver saver = saverBesideARestlessEditor();
        assertThrows(BenchRefusal.class, () -> saver.save(look("waiting", "gold"), base, false));
        assertEquals(before, saver(() -> config).versions());
    }

    @Test
    void ofSavesAtTheSameTimeNoneIsLost() throws Exception {
        List<LookSaver> benches = List.of(saver(() -> config), saver(() -> config));
        List<CompletableFuture<String>> saves = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            String name = "look-" + i;
            LookSaver saver = benches.get(i % 2);
            CompletableFuture<String> save = new CompletableFuture<>();
            saves.add(save);
            new Thread(() -> save.complete(saved(saver, name))).start();
        }
        for (int i = 0; i < 6; i++) {
            assertEquals("saved", saves.get(i).get());
            assertTrue(text().contains("[looks.look-" + i + "]"), text());
        }
        assertEquals(6, benches.get(0).versions().size());
        assertEquals(6, benches.get(1).versions().size());
    }

    /** Tries again while too many wait. */
    private static String saved(LookSaver saver, String name) {
        while (true) {
            try {
                saver.save(look(name, "gold"), "", false);
                return "saved";
            } catch (BenchRefusal e) {
                if (!e.code().equals("busy")) {
                    return e.code();
                }
                Thread.onSpinWait();
            }
        }
    }

    @Test
    void whoAsksForVersionsDoesNotWaitForASave() throws Exception {
        CountDownLatch go = new CountDownLatch(1);
        LookSaver saver = saver(() -> config);
        saver.save(look("first", "gold"), "", false);
        CompletableFuture<String> drawing = new CompletableFuture<>();
        Thread other = new Thread(() -> {
            try {
                drawing.complete(worker.run("", patience -> {
                    await(go);
                    return "drawn";
                }));
            } catch (BenchRefusal e) {
                drawing.complete(e.code());
            }
        });
        other.start();
        Await.until("it draws", () -> other.getState() == Thread.State.TIMED_WAITING);
        CompletableFuture<String> save = new CompletableFuture<>();
        Thread saving = new Thread(() -> save.complete(saved(saver, "second")));
        saving.start();
        Await.until("it waits for its check", () -> saving.getState() == Thread.State.TIMED_WAITING);
        assertEquals(1, saver.versions().size());
        go.countDown();
        assertEquals("saved", save.get());
        assertEquals("drawn", drawing.get());
        assertEquals(2, saver.versions().size());
    }

    private static void await(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
