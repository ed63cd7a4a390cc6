package dev.lampwright.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ShopFile;
import dev.lampwright.rig.TestShop;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.CapturedLog;
import dev.lampwright.testing.FreePort;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A server with a token for all rigs, and rigs with tokens of their own. */
@Timeout(60)
class RigTokenPagesTest {
    private static final String ALL = "the-token-for-all-rigs";
    private static final String VIEW_ALL = "watch-all-rigs-and-no-more";
    private static final String ALDER = "use-alder-and-no-other";
    private static final String VIEW_ALDER = "watch-alder-and-no-other";
    private static final String BIRCH = "use-birch-and-no-other";

    /** What is shown of a rig; the stream is the first. */
    private static final List<String> SHOWN =
            List.of("events", "door", "rights", "history", "check", "wiring", "preview");

    @TempDir
    private static Path folder;

    private static final HttpClient CLIENT = HttpClient.newHttpClient();
    private static TestShop shop;
    private static LivePage page;

    @BeforeAll
    static void open() throws ConfigException, IOException {
        shop = new TestShop(folder, URI.create("mqtt://127.0.0.1:" + FreePort.find()), 30, System::nanoTime);
        Files.writeString(folder.resolve("shop.toml"), """
                [page]
                port = 0
                tls = true
                hosts = ["lights.example"]
                token_file = "all"
                view_token_file = "view-all"
                """, StandardOpenOption.APPEND);
        token("all", ALL);
        token("view-all", VIEW_ALL);
        token("alder", ALDER);
        token("view-alder", VIEW_ALDER);
        token("birch", BIRCH);
        shop.rig("alder", "[page]\ntoken_file = \"../alder\"\nview_token_file = \"../view-alder\"\n");
        shop.rig("birch", "[page]\ntoken_file = \"../birch\"\n").rig("rowan", "");
        shop.read().awaitRunning("alder", "birch", "rowan");
        page = new LivePage(shop.rigs(), Advice.NONE, Workshop.NONE);
        follow();
    }

    private static void follow() throws ConfigException {
        page.follow(ShopFile.read(folder).page());
        page.lookAround();
    }

    @AfterAll
    static void close() {
        page.close();
        shop.close();
    }

    private static void token(String file, String text) throws IOException {
        Files.writeString(folder.resolve(file), text + "\n");
    }

    private static HttpRequest.Builder at(String path) {
        return HttpRequest.newBuilder(URI.create(page.url().orElseThrow() + path));
    }

    private static HttpRequest.Builder at(String path, String token) {
        return at(path).header("Authorization", "Bearer " + token);
    }

    /** Whoever is asked to wait after some wrong tokens is refused as well. */
    private static int status(HttpResponse<?> response) {
        return response.statusCode() == 429 ? 401 : response.statusCode();
    }

    /** The status; a stream is not read. */
    private static int get(String path, String token) throws IOException, InterruptedException {
        HttpResponse<InputStream> response = CLIENT.send(at(path, token).build(), BodyHandlers.ofInputStream());
        response.body().close();
        return status(response);
    }

    private static HttpResponse<String> post(HttpRequest.Builder request, String json)
            throws IOException, InterruptedException {
        return CLIENT.send(
                request.header("Content-Type", "application/json")
                        .POST(BodyPublishers.ofString(json))
                        .build(),
                BodyHandlers.ofString());
    }

    private static void assertShown(String token, String place, int status) throws IOException, InterruptedException {
        for (String path : SHOWN) {
            int found = get(place + path, token);
            assertTrue(found == status || (status == 200 && found == 404), place + path + ": " + found);
        }
    }

    private static int ask(String rig, String token) throws IOException, InterruptedException {
        return status(post(at(rig + "/ask/brightness", token), "0.5"));
    }

    @Test
    void aRigsTokenNeitherReadsNorChangesAnotherRig() throws IOException, InterruptedException {
        for (String rig : List.of("alder", "birch", "rowan")) {
            boolean alder = rig.equals("alder");
            assertShown(ALL, rig + "/", 200);
            assertShown(VIEW_ALL, rig + "/", 200);
            assertShown(ALDER, rig + "/", alder ? 200 : 401);
            assertShown(VIEW_ALDER, rig + "/", alder ? 200 : 401);
            assertShown(BIRCH, rig + "/", rig.equals("birch") ? 200 : 401);
            assertEquals(200, ask(rig, ALL));
            assertEquals(403, ask(rig, VIEW_ALL));
            assertEquals(alder ? 200 : 401, ask(rig, ALDER));
            assertEquals(alder ? 403 : 401, ask(rig, VIEW_ALDER));
        }
        for (String path : List.of("events", "door", "rights")) {
            assertEquals(200, get(path, VIEW_ALL), path);
            assertEquals(401, get(path, ALDER), path);
        }
        assertEquals(
                "{\"token\":true,\"may_ask\":true,\"may_edit\":false,\"all\":false,\"bench\":false,\"fit\":false}",
                CLIENT.send(at("alder/rights", ALDER).build(), BodyHandlers.ofString())
                        .body());
    }

    /** Who may use a rig alone must not learn what opens all of them. */
    @Test
    void theCodeOfARigCarriesItsOwnToken() throws IOException, InterruptedException {
        assertEquals("https://lights.example/alder/#" + ALDER, code("alder", ALDER));
        assertEquals("https://lights.example/alder/#" + ALDER, code("alder", ALL));
        assertEquals("https://lights.example/rowan/#" + ALL, code("rowan", ALL));
        assertEquals(403, get("alder/code.svg", VIEW_ALDER));
        assertEquals(401, get("rowan/code.svg", ALDER));
    }

    private static String code(String rig, String token) throws IOException, InterruptedException {
        return QrReading.ofSvg(CLIENT.send(at(rig + "/code.svg", token).build(), BodyHandlers.ofString())
                .body());
    }

    @Test
    void aRigsTokenThatIsEnteredOnTheShelfLeadsToItsPage() throws IOException, InterruptedException {
        HttpResponse<String> entered = post(at("enter"), "{\"token\":\"" + ALDER + "\"}");
        assertEquals("{\"done\":true,\"page\":\"/alder/\"}", entered.body());
        String cookie = entered.headers().firstValue("Set-Cookie").orElseThrow();
        assertTrue(cookie.contains("; Path=/alder/; "), cookie);
        String pass = cookie.substring(0, cookie.indexOf(';'));
        assertEquals(200, withCookie("alder/door", pass));
        assertEquals(401, withCookie("birch/door", pass), "wherever a browser sends it");
        assertEquals(401, withCookie("door", pass));
        assertEquals(401, status(post(at("birch/enter"), "{\"token\":\"" + ALDER + "\"}")));
        assertEquals(
                "{\"done\":true}",
                post(at("enter"), "{\"token\":\"" + ALL + "\"}").body());
    }

    private static int withCookie(String path, String pass) throws IOException, InterruptedException {
        return CLIENT.send(at(path).header("Cookie", pass).build(), BodyHandlers.ofString())
                .statusCode();
    }

    @Test
    void aTokenFileThatIsNotRightOpensNothingAndSaysSoInOneLine()
            throws IOException, InterruptedException, ConfigException {
        try (CapturedLog log = new CapturedLog(RigTokens.class.getName());
                Watcher watcher = new Watcher(CLIENT, at("birch/events", BIRCH).build())) {
            Path file = folder.resolve("birch");
            token("birch", "short");
            follow();
            Await.until("whoever watched with the old token to be sent away", watcher::ended);
            assertEquals(401, get("birch/door", BIRCH));
            assertEquals(401, get("birch/door", "short"));
            assertEquals(200, get("birch/door", ALL));
            assertEquals(200, get("alder/door", ALDER), "the others have nothing to do with it");
            follow();
            assertEquals(
                    List.of("WARN only the tokens of shop.toml open this rig's page: page.token_file " + file
                            + " has a first line of fewer than 16 characters; write a longer one, for instance what"
                            + " `openssl rand -hex 16` gives"),
                    log.lines().stream()
                            .filter(line -> line.contains("shop.toml"))
                            .toList());
            token("birch", BIRCH);
            follow();
            assertEquals(200, get("birch/door", BIRCH));
        }
    }
}
