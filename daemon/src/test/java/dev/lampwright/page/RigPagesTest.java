package dev.lampwright.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.ConfigException;
import dev.lampwright.config.PageSettings;
import dev.lampwright.rig.TestShop;
import dev.lampwright.testing.FreePort;
import dev.lampwright.upkeep.RigName;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.slf4j.LoggerFactory;

/** The pages of several rigs on one server. */
@Timeout(60)
class RigPagesTest {
    @TempDir
    private static Path folder;

    private static final HttpClient CLIENT = HttpClient.newHttpClient();
    private static TestShop shop;
    private static LivePage page;

    @BeforeAll
    static void open() throws ConfigException {
        shop = new TestShop(folder, URI.create("mqtt://127.0.0.1:" + FreePort.find()), 30, System::nanoTime);
        shop.rig("alder", "").rig("birch", "").read().awaitRunning("alder", "birch");
        page = new LivePage(shop.rigs(), Advice.NONE, Workshop.NONE);
        page.follow(Optional.of(new PageSettings(
                InetAddress.getLoopbackAddress(),
                0,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                2,
                false)));
    }

    @AfterAll
    static void close() {
        page.close();
        shop.close();
    }

    private static HttpResponse<String> send(HttpRequest.Builder request) throws IOException, InterruptedException {
        return CLIENT.send(request.build(), BodyHandlers.ofString());
    }

    private static HttpRequest.Builder at(String path) {
        return HttpRequest.newBuilder(URI.create(page.url().orElseThrow() + path));
    }

    @Test
    void eachRigHasItsPageBelowItsName() throws IOException, InterruptedException {
        for (String name : List.of("alder", "birch")) {
            assertEquals(200, send(at(name + "/")).statusCode());
            assertTrue(send(at(name + "/page.js")).body().contains("EventSource"));
            assertEquals(
                    "{\"token\":false,\"may_ask\":true,\"may_edit\":false,\"all\":true,\"bench\":false,\"fit\":false}",
                    send(at(name + "/rights")).body());
        }
        HttpResponse<String> moved = send(at("alder"));
        assertEquals(308, moved.statusCode());
        assertEquals("/alder/", moved.headers().firstValue("Location").orElseThrow());
        assertEquals(404, send(at("oak/")).statusCode());
        assertEquals(404, send(at("oak")).statusCode());
        assertEquals(404, send(at("wiring")).statusCode());
    }

    @Test
    void whatIsAskedOnAPageIsAskedOfItsRig() throws IOException, InterruptedException {
        HttpResponse<String> answer = send(at("birch/ask/brightness")
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString("0.25")));
        assertEquals(200, answer.statusCode(), answer.body());
        assertEquals(0.25, shop.daemon("birch").report().light().brightness());
        assertEquals(1, shop.daemon("alder").report().light().brightness());
    }

    @Test
    void aRigThatGoesTakesItsPageWithIt() throws IOException, InterruptedException, ConfigException {
        shop.rig("rowan", "").read().awaitRunning("rowan");
        page.lookAround();
        assertEquals(200, send(at("rowan/")).statusCode());
        Files.delete(folder.resolve("rigs").resolve("rowan.toml"));
        shop.read();
        page.lookAround();
        assertEquals(404, send(at("rowan/")).statusCode());
        assertEquals(200, send(at("alder/")).statusCode());
    }

    /** There are two seats for all rigs together. */
    @Test
    void allRigsShareTheSeats() throws IOException, InterruptedException {
        HttpResponse<InputStream> one = CLIENT.send(at("alder/events").build(), BodyHandlers.ofInputStream());
        HttpResponse<InputStream> two = CLIENT.send(at("birch/events").build(), BodyHandlers.ofInputStream());
        assertEquals(200, one.statusCode());
        assertEquals(200, two.statusCode());
        assertEquals(503, send(at("alder/door")).statusCode());
        one.body().close();
        two.body().close();
    }

    @Test
    void aPageShowsTroublesOfItsRigAndOfAll() {
        try (TroubleLog alder = TroubleLog.listening("alder")) {
            for (String rig : List.of("alder", "birch", "")) {
                RigName.during(rig, () -> LoggerFactory.getLogger("test").warn("trouble of {}", rig));
            }
            List<String> told =
                    alder.entries().stream().map(TroubleLog.Entry::text).toList();
            assertTrue(told.containsAll(List.of("trouble of ", "trouble of alder")), told::toString);
            assertFalse(told.contains("trouble of birch"), told::toString);
        }
    }
}
