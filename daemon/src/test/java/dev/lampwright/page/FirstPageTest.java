package dev.lampwright.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.TokenFiles;
import dev.lampwright.testing.CapturedLog;
import dev.lampwright.testing.FreePort;
import dev.lampwright.testing.RawHttp;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The page without a configuration, and who may fit on it. */
@Timeout(60)
class FirstPageTest {
    private static final String TOKEN = "correct-horse-battery-staple";
    private static final String JSON = "application/json";

    @TempDir
    private Path folder;

    private final List<String> asked = new ArrayList<>();
    private final int port = FreePort.find();
    private final HttpClient client = HttpClient.newHttpClient();
    private TokenFiles next = TokenFiles.NONE;
    private boolean closed;

    private final Fitter fitter = new Fitter() {
        @Override
        public Bench.Reply answer(String what, String json, boolean elsewhere) {
            asked.add(what + json + (elsewhere ? " elsewhere" : ""));
            return new Bench.Reply(200, "{}");
        }

        @Override
        public TokenFiles nextTokens() {
            return next;
        }

        @Override
        public void close() {
            closed = true;
        }
    };

    private HttpRequest.Builder to(String path) {
        return HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path));
    }

    private HttpResponse<String> send(HttpRequest.Builder request) throws IOException, InterruptedException {
        return client.send(request.build(), BodyHandlers.ofString());
    }

    private HttpRequest.Builder post(String path, String type) {
        return to(path).header("Content-Type", type).POST(BodyPublishers.ofString("{}"));
    }

    @Test
    void itHasTheFittingAndNothingElse() throws IOException, InterruptedException {
        try (FirstPage page = new FirstPage(port, Optional.empty(), fitter)) {
            page.lookAround();
            assertTrue(send(to("/")).body().contains("fit.js"));
            assertEquals(404, send(post("/ask/look", JSON)).statusCode());
            assertEquals(404, send(to("/bench/looks")).statusCode());
            assertEquals(200, send(to("/fit/now")).statusCode());
            assertEquals(200, send(post("/fit/begin", JSON)).statusCode());
            assertEquals(List.of("now", "begin{}"), asked);
            String rights = send(to("/rights")).body();
            assertTrue(rights.contains("\"may_edit\":true") && rights.contains("\"fit\":true"), rights);
        }
        assertTrue(closed);
    }

    @Test
    void otherSitesFormsAndMethodsAreRefused() throws IOException, InterruptedException {
        try (FirstPage page = new FirstPage(port, Optional.empty(), fitter)) {
            page.lookAround();
            assertEquals(405, send(to("/fit/begin")).statusCode());
            assertEquals(405, send(post("/fit/now", JSON)).statusCode());
            assertEquals(415, send(post("/fit/begin", "text/plain")).statusCode());
            assertEquals(
                    403,
                    send(post("/fit/begin", JSON).header("Origin", "http://shed.invalid"))
                            .statusCode());
            HttpResponse<String> forwarded = send(post("/fit/begin", JSON).header("X-Forwarded-For", "192.0.2.7"));
            assertEquals(403, forwarded.statusCode());
            assertTrue(forwarded.body().contains("\"code\":\"fit_only_here\""), forwarded.body());
            assertEquals(List.of(), asked);
        }
    }

    /** A foreign name can be pointed at this computer (DNS rebinding), and an address other than loopback is used from elsewhere. */
    @Test
    void onlyNamesOfThisComputerFit() throws IOException {
        String request = "POST /fit/begin HTTP/1.1\r\nHost: %s\r\nContent-Type: application/json\r\n"
                + "Content-Length: 2\r\nConnection: close\r\n\r\n{}";
        try (FirstPage page = new FirstPage(port, Optional.empty(), fitter)) {
            page.lookAround();
            assertTrue(RawHttp.answerTo(port, request.formatted("shed.invalid")).startsWith("HTTP/1.1 421 "));
            assertTrue(RawHttp.answerTo(port, request.formatted("192.0.2.7")).startsWith("HTTP/1.1 403 "));
            assertEquals(List.of(), asked);
            assertTrue(RawHttp.answerTo(port, request.formatted("localhost:" + port))
                    .startsWith("HTTP/1.1 200 "));
        }
    }

    private String from(String host, String... headers) throws IOException {
        String more = headers.length == 0 ? "" : String.join("\r\n", headers) + "\r\n";
        return RawHttp.answerTo(
                port,
                "POST /fit/begin HTTP/1.1\r\nHost: " + host + "\r\nContent-Type: application/json\r\n" + more
                        + "Content-Length: 2\r\nConnection: close\r\n\r\n{}");
    }

    /** A request to any address but a loopback one counts as one from another computer. */
    @Test
    void fromAnotherComputerTheTokenIsRequired() throws IOException {
        FirstToken token = FirstToken.make(folder, port);
        String text = token.after("").substring(1);
        try (CapturedLog log = new CapturedLog("dev.lampwright");
                FirstPage page = new FirstPage(port, Optional.of(token), fitter)) {
            page.lookAround();
            assertTrue(from("192.0.2.7").startsWith("HTTP/1.1 401 "));
            String wrong = from("192.0.2.7", "Authorization: Bearer " + text.replace(text.charAt(0), 'x'));
            assertTrue(wrong.startsWith("HTTP/1.1 401 ") && wrong.contains("sudo lampwright page"), wrong);
            assertTrue(from("shed.invalid", "Authorization: Bearer " + text).startsWith("HTTP/1.1 421 "));
            assertTrue(from("localhost:" + port, "X-Forwarded-For: 192.0.2.7").startsWith("HTTP/1.1 401 "));
            assertEquals(List.of(), asked);
            assertTrue(from("192.0.2.7", "Authorization: Bearer " + text).startsWith("HTTP/1.1 200 "));
            assertTrue(from("localhost:" + port).startsWith("HTTP/1.1 200 "));
            assertEquals(List.of("begin{} elsewhere", "begin{}"), asked);
            for (int guess = 0; guess < 5; guess++) {
                from("192.0.2.7", "Authorization: Bearer guess-number-" + guess);
            }
            assertTrue(from("192.0.2.7", "Authorization: Bearer guess").startsWith("HTTP/1.1 429 "));
            assertFalse(log.lines().toString().contains(text), () -> log.lines().toString());
            assertTrue(
                    log.lines().toString().contains("'sudo lampwright page'"),
                    () -> log.lines().toString());
        }
    }

    /** The first token ends with the fitting; the browser that has it gets the cookie of the token that comes after it. */
    @Test
    void whoHasFittedStaysLoggedIn() throws IOException, InterruptedException {
        FirstToken token = FirstToken.make(folder, port);
        String text = token.after("").substring(1);
        try (FirstPage page = new FirstPage(port, Optional.of(token), fitter)) {
            page.lookAround();
            HttpResponse<String> entered = send(to("/enter")
                    .header("Content-Type", JSON)
                    .POST(BodyPublishers.ofString("{\"token\": \"" + text + "\"}")));
            String cookie =
                    "Cookie: " + pair(entered.headers().firstValue("Set-Cookie").orElseThrow());
            assertFalse(
                    from("192.0.2.7", cookie).toLowerCase(Locale.ROOT).contains("set-cookie"),
                    "there is no other token yet");
            Path ask = Files.writeString(folder.resolve("ask"), "only-for-asking-of-things\n");
            Path edit = Files.writeString(folder.resolve("edit"), TOKEN + "\n");
            next = new TokenFiles(Optional.of(ask), Optional.empty(), Optional.of(edit));
            String written = from("192.0.2.7", cookie);
            String passed = written.replaceFirst("(?is).*\r\nset-cookie: ([^;]*);.*", "$1");
            assertEquals(
                    pair(new AccessCheck(List.of(), PageTokens.read(next), port, false).cookie(TOKEN)),
                    passed,
                    written);
            assertTrue(from("192.0.2.7", "Cookie: " + passed).startsWith("HTTP/1.1 200 "), "until the page closes");
            assertFalse(from("localhost:" + port).toLowerCase(Locale.ROOT).contains("set-cookie"));
        }
    }

    private static String pair(String cookie) {
        return cookie.substring(0, cookie.indexOf(';'));
    }
}
