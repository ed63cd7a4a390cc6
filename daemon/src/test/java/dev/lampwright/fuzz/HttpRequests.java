package dev.lampwright.fuzz;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;

/** Requests to page and metrics: right, wrong and cut off. An answer must be HTTP, and must not blame lampwright itself. */
final class HttpRequests implements Target {
    private static final List<String> METHODS =
            List.of("GET", "GET", "POST", "POST", "HEAD", "PUT", "OPTIONS", "TRACE", "CONNECT", "get", "G\u00e9T", "");
    private static final List<String> PATHS = List.of(
            "/",
            "/page.js",
            "/events",
            "/events?after=",
            "/door",
            "/wiring",
            "/enter",
            "/metrics",
            "/ask/brightness",
            "/ask/look",
            "/ask/pixels",
            "/ask/acknowledge",
            "/ask/none",
            "*",
            "http://localhost/door",
            "//",
            "/%00",
            "/%",
            "/../../etc/passwd",
            "/ask/%6cook");
    private static final List<String> HEADERS = List.of(
            "Host: localhost",
            "Host: localhost",
            "Host: 127.0.0.1",
            "Host: evil.example",
            "Host:",
            "Content-Type: application/json",
            "Content-Type: application/json",
            "Content-Type: text/plain",
            "Content-Length: 5",
            "Content-Length: -1",
            "Content-Length: 99999999999999999999",
            "Content-Length: 4000000",
            "Content-Length: x",
            "Transfer-Encoding: chunked",
            "Transfer-Encoding: chunked, gzip",
            "Expect: 100-continue",
            "Connection: close",
            "Connection: upgrade",
            "Origin: http://localhost",
            "Origin: null",
            "Origin: ::",
            "Sec-Fetch-Site: cross-site",
            "Authorization: Bearer x",
            "Authorization: Basic :",
            "Cookie: lampwright-80=x; =; ;;",
            "Last-Event-ID: 1.5",
            "Last-Event-ID: \u00ff",
            "Range: bytes=0-",
            "Accept-Encoding: gzip",
            ": nothing",
            " folded",
            "X");
    /**
     * Server errors that blame the request or the number of clients: an unknown method or encoding, no room, another version (RFC 9110,
     * section 15.6).
     */
    private static final List<Integer> HONEST_ERRORS = List.of(501, 503, 505);

    private static final int FIRST_REFUSAL = 400;
    private static final int FIRST_ERROR = 500;

    @Override
    public String name() {
        return "http";
    }

    @Override
    public int mostSteps() {
        return 25;
    }

    @Override
    public Duration promise() {
        return Duration.ofSeconds(4);
    }

    @Override
    public Step step(SplittableRandom chance) {
        return step(chance.nextInt(4) > 0, request(chance));
    }

    private static Step step(boolean page, byte[] request) {
        String text = new String(request, StandardCharsets.ISO_8859_1);
        return new Step(
                "send the " + (page ? "page " : "metrics ") + text,
                rig -> {
                    if (judge(RawRequest.answer(page ? rig.pagePort() : rig.metricsPort(), request, 250))) {
                        rig.refused();
                    }
                },
                () -> halves(page, request));
    }

    private static List<Step> halves(boolean page, byte[] request) {
        int half = request.length / 2;
        return half == 0
                ? List.of()
                : List.of(
                        step(page, Arrays.copyOf(request, half)),
                        step(page, Arrays.copyOfRange(request, half, request.length)));
    }

    private static byte[] request(SplittableRandom chance) {
        if (chance.nextInt(15) == 0) {
            return Oddities.bytes(chance, 300);
        }
        ByteArrayOutputStream request = new ByteArrayOutputStream();
        for (int i = chance.nextInt(6) == 0 ? chance.nextInt(4) : 0; i >= 0; i--) {
            write(request, chance);
        }
        byte[] whole = request.toByteArray();
        return chance.nextInt(4) == 0 ? Arrays.copyOf(whole, chance.nextInt(whole.length)) : whole;
    }

    private static void write(ByteArrayOutputStream request, SplittableRandom chance) {
        String path = Oddities.pick(PATHS, chance) + (chance.nextInt(5) == 0 ? Oddities.text(chance) : "");
        String version = chance.nextInt(8) == 0 ? Oddities.text(chance) : "HTTP/1.1";
        request.writeBytes(utf8(Oddities.pick(METHODS, chance) + " " + path + " " + version + "\r\n"));
        for (int i = chance.nextInt(8); i > 0; i--) {
            String header = chance.nextInt(20) == 0
                    ? "X-Long: " + "x".repeat(chance.nextInt(100_000))
                    : Oddities.pick(HEADERS, chance) + (chance.nextInt(12) == 0 ? Oddities.text(chance) : "");
            request.writeBytes(utf8(header + "\r\n"));
        }
        request.writeBytes(utf8("\r\n"));
        request.writeBytes(body(chance));
    }

    private static byte[] body(SplittableRandom chance) {
        return switch (chance.nextInt(6)) {
            case 0 -> utf8("FFFFFFFFFFFF\r\n");
            case 1 -> utf8(Integer.toHexString(chance.nextInt(100)) + "\r\n" + Oddities.text(chance) + "\r\n0\r\n\r\n");
            case 2 -> Oddities.bytes(chance, 200);
            case 3 -> utf8(Oddities.json(chance, List.of("look", "done", "brightness", "token", "0-9", "red")));
            case 4 -> chance.nextInt(10) == 0 ? new byte[chance.nextInt(400_000)] : utf8("-1\r\n");
            default -> new byte[0];
        };
    }

    /** If the request was incomplete, there may be no answer; any answer must be HTTP. Returns whether it is a refusal. */
    static boolean judge(String answer) {
        int status = RawRequest.status(answer);
        if (!answer.isEmpty() && status == 0) {
            throw new AssertionError("the answer is not HTTP: " + Oddities.shown(answer));
        }
        if (status >= FIRST_ERROR && !HONEST_ERRORS.contains(status)) {
            throw new AssertionError("the answer is " + Oddities.shown(answer));
        }
        return status >= FIRST_REFUSAL;
    }

    private static byte[] utf8(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
