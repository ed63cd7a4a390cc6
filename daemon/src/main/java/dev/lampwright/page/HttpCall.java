package dev.lampwright.page;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** One request and its answer. Every answer has the headers that protect browsers from being misled. */
final class HttpCall {
    /** The maximum length of an ask. */
    static final int MOST_BYTES = 65_536;

    /** How much of a longer body is read, so that it can be answered. */
    private static final int MOST_SKIPPED = 16 << 20;

    /** A weight of zero. Source: RFC 9110, section 12.4.2. */
    private static final Pattern REFUSED = Pattern.compile(";\\s*q=0(\\.0*)?$");

    private static final Map<String, String> ALWAYS = Map.of(
            "Content-Security-Policy",
            "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; worker-src"
                    + " 'self'; manifest-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'",
            "X-Content-Type-Options",
            "nosniff",
            "Referrer-Policy",
            "no-referrer",
            "Cross-Origin-Opener-Policy",
            "same-origin",
            "Cross-Origin-Resource-Policy",
            "same-origin",
            "Cache-Control",
            "no-store");

    private final HttpExchange exchange;
    private final String place;

    HttpCall(HttpExchange exchange) {
        this(exchange, "");
        ALWAYS.forEach(exchange.getResponseHeaders()::set);
    }

    private HttpCall(HttpExchange exchange, String place) {
        this.exchange = exchange;
        this.place = place;
    }

    /**
     * The same request as seen by one of several pages.
     *
     * @param page where the page is, without a trailing slash; the path starts with it
     */
    HttpCall below(String page) {
        return new HttpCall(exchange, page);
    }

    String method() {
        return exchange.getRequestMethod();
    }

    /** Its path below the page, as sent; without the part after a question mark. */
    String path() {
        String path = exchange.getRequestURI().getRawPath();
        return path == null ? "" : path.substring(place.length());
    }

    /** The part after the question mark; empty if there is none. */
    String query() {
        String query = exchange.getRequestURI().getRawQuery();
        return query == null ? "" : query;
    }

    Headers headers() {
        return exchange.getRequestHeaders();
    }

    InetAddress from() {
        return exchange.getRemoteAddress().getAddress();
    }

    /** Whether its body says that it is JSON, which no other site's page can send unasked. */
    boolean isJson() {
        String type = exchange.getRequestHeaders().getFirst("Content-Type");
        return type != null && type.split(";", -1)[0].strip().equalsIgnoreCase(StaticFile.JSON);
    }

    /**
     * Reads its body. Excess data is also read and discarded, within limits: a client that is still sending when the connection closes gets
     * an error and never sees the answer.
     *
     * @return at most one byte more than {@link #MOST_BYTES}
     */
    byte[] body() throws IOException {
        return body(MOST_BYTES);
    }

    /**
     * Reads its body as {@link #body()} does.
     *
     * @param most how long it may be
     * @return at most one byte more than that
     */
    byte[] body(int most) throws IOException {
        InputStream in = exchange.getRequestBody();
        byte[] body = in.readNBytes(most + 1);
        if (body.length > most) {
            byte[] rest = new byte[MOST_BYTES];
            int read = 0;
            for (int skipped = 0; read >= 0 && skipped < MOST_SKIPPED; skipped += read) {
                read = in.read(rest);
            }
        }
        return body;
    }

    /** Sets a header of the answer. */
    void header(String name, String value) {
        exchange.getResponseHeaders().set(name, value);
    }

    /** Adds a header to the answer, beside those of the same name. */
    void addHeader(String name, String value) {
        exchange.getResponseHeaders().add(name, value);
    }

    void answer(Refusal refusal) throws IOException {
        refusal.headers().forEach(this::header);
        answerJson(refusal.status(), Messages.refusal(refusal));
    }

    void answerJson(int status, String json) throws IOException {
        answer(status, StaticFile.json(json));
    }

    void answer(int status, StaticFile sheet) throws IOException {
        header("Content-Type", sheet.type());
        boolean head = method().equals("HEAD");
        if (head) {
            header("Content-Length", Integer.toString(sheet.length()));
        }
        exchange.sendResponseHeaders(status, head ? -1 : sheet.length());
        if (!head) {
            sheet.writeTo(exchange.getResponseBody());
        }
    }

    /**
     * Answers with one of the page's own files, unless the browser already has it. One requested by its tag never changes; for any other
     * the browser must revalidate (RFC 9111, section 5.2.2.4).
     */
    void answer(Sheet sheet) throws IOException {
        boolean named = query().equals("v=" + sheet.tag());
        String tag = "W/\"" + sheet.tag() + "\"";
        header("Cache-Control", named ? "public, max-age=31536000, immutable" : "no-cache");
        header("ETag", tag);
        header("Vary", "Accept-Encoding");
        if (says("If-None-Match", tag)) {
            exchange.sendResponseHeaders(304, -1);
        } else if (says("Accept-Encoding", "gzip")) {
            header("Content-Encoding", "gzip");
            answer(200, sheet.packed());
        } else {
            answer(200, sheet.plain());
        }
    }

    /** Whether a header lists a word, without a weight of zero. */
    private boolean says(String name, String word) {
        return headers().getOrDefault(name, List.of()).stream()
                .flatMap(line -> Stream.of(line.split(",", -1)))
                .map(String::strip)
                .anyMatch(one -> one.equals(word)
                        || (one.startsWith(word + ";") && !REFUSED.matcher(one).find()));
    }

    /** Answers with a stream of events, which ends with the exchange. */
    OutputStream answerEvents() throws IOException {
        header("Content-Type", "text/event-stream; charset=utf-8");
        exchange.sendResponseHeaders(200, 0);
        return exchange.getResponseBody();
    }

    /**
     * A refused request, and why.
     *
     * @param status of HTTP
     * @param why for the reader, with what would be valid; one line
     * @param headers that go with the status
     * @param code the code with which the page shows the reason in other languages; empty if only programs read it
     * @param values in its text, by name
     */
    record Refusal(int status, String why, Map<String, String> headers, String code, Map<String, String> values) {
        Refusal(int status, String why) {
            this(status, why, Map.of());
        }

        /** That a body is too long. */
        static Refusal tooLong() {
            return tooLong(MOST_BYTES);
        }

        /** That a body is longer than so many bytes. */
        static Refusal tooLong(int most) {
            return new Refusal(413, "that is longer than " + most + " bytes").coded("too_long", Map.of());
        }

        Refusal(int status, String why, Map<String, String> headers) {
            this(status, why, headers, "", Map.of());
        }

        /** The same, also for other languages. */
        Refusal coded(String name, Map<String, String> given) {
            return new Refusal(status, why, headers, name, given);
        }
    }
}
