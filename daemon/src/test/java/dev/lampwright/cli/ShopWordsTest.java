package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.ConfigException;
import dev.lampwright.config.Mistake;
import dev.lampwright.rig.TestShop;
import dev.lampwright.testing.FreePort;
import java.net.URI;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The status of several rigs, in the line that {@code systemctl status} shows. */
class ShopWordsTest {
    @TempDir
    private Path folder;

    @Test
    void countsStatesAndNamesTroubles() throws ConfigException {
        URI nobody = URI.create("mqtt://127.0.0.1:" + FreePort.find());
        try (TestShop shop = new TestShop(folder, nobody, 30, System::nanoTime)) {
            assertEquals("0 rigs", ShopWords.of(shop.rigs()));
            shop.rig("alder", "")
                    .rig("birch", "")
                    .rig("rowan", "strip.pixels = 0\n")
                    .read();
            shop.awaitRunning("alder", "birch").awaitLit("alder", "birch");
            String words = ShopWords.of(shop.rigs());
            assertTrue(
                    words.startsWith("3 rigs (1 off, 2 silent); rowan: its file is rejected: " + folder
                            + "/rigs/rowan.toml:1: strip.pixels: is 0; "),
                    words);
            shop.rigs().refused(List.of(new Mistake("shop.toml", 1, "", "is wrong", "fix it")));
            assertTrue(
                    ShopWords.of(shop.rigs()).contains("; all run as before: shop.toml:1: is wrong; fix it; rowan: "),
                    () -> ShopWords.of(shop.rigs()));
        }
    }
}
