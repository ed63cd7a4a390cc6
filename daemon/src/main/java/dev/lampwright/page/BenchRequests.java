package dev.lampwright.page;

import com.sun.net.httpserver.Headers;
import dev.lampwright.page.PageTokens.Right;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/** Passes requests on to the bench, once it is known that whoever asks may. */
final class BenchRequests {
    /** What their paths begin with. */
    static final String PATH = "/bench/";

    private static final List<String> METHODS = List.of("GET", "POST", "PUT", "DELETE");
    /** What changes nothing, however much is sent for it. */
    private static final Set<String> FOR_VIEWERS = Set.of("check", "preview", "toml");

    private static final Pattern TRIAL = Pattern.compile("try(/.*)?");
    private static final Pattern TAB = Pattern.compile("[a-z0-9]{1,32}");
    private static final String TAB_HEADER = "X-Bench";

    private final AccessCheck door;
    private final Bench bench;

    BenchRequests(AccessCheck door, Bench bench) {
        this.door = door;
        this.bench = bench;
    }

    /**
     * Answers a request.
     *
     * @param call its path begins with {@link #PATH}
     * @throws IOException if whoever asks has left
     */
    void answer(HttpCall call) throws IOException {
        Optional<HttpCall.Refusal> refusal = refusal(call);
        if (refusal.isPresent()) {
            call.answer(refusal.get());
            return;
        }
        int most = isRecording(call) ? Bench.LONGEST_RECORDING : HttpCall.MOST_BYTES;
        byte[] body = hasBody(call) ? call.body(most) : new byte[0];
        if (body.length > most) {
            call.answer(HttpCall.Refusal.tooLong(most));
            return;
        }
        Bench.Reply reply = bench.answer(new Bench.Request(
                call.method(),
                below(call),
                call.query(),
                new String(body, StandardCharsets.UTF_8),
                tab(call.headers()),
                mayEdit(call)));
        if (reply.status() == 503) {
            call.header("Retry-After", "1");
        }
        call.answerJson(reply.status(), reply.json());
    }

    private static boolean isRecording(HttpCall call) {
        return call.method().equals("PUT") && below(call).startsWith("recordings/");
    }

    private Optional<HttpCall.Refusal> refusal(HttpCall call) {
        if (!METHODS.contains(call.method())) {
            String allowed = String.join(", ", METHODS);
            return Optional.of(
                    new HttpCall.Refusal(405, "only " + allowed + " are allowed here", Map.of("Allow", allowed)));
        }
        Optional<HttpCall.Refusal> foreign = door.refuseSite(call.headers());
        if (foreign.isPresent()) {
            return foreign;
        }
        if (hasBody(call) && !call.isJson()) {
            return Optional.of(new HttpCall.Refusal(415, "send it as application/json"));
        }
        return door.refuse(needed(call.method(), below(call)), call.headers(), call.from());
    }

    /** What somebody has to be allowed. Whatever is not known to be harmless needs most. */
    private static Right needed(String method, String path) {
        if (method.equals("GET") || (method.equals("POST") && FOR_VIEWERS.contains(path))) {
            return Right.WATCH;
        }
        return method.equals("POST") && TRIAL.matcher(path).matches() ? Right.ASK : Right.EDIT;
    }

    private boolean mayEdit(HttpCall call) {
        return door.refuse(Right.EDIT, call.headers(), call.from()).isEmpty();
    }

    private static boolean hasBody(HttpCall call) {
        return call.method().equals("POST") || call.method().equals("PUT");
    }

    private static String below(HttpCall call) {
        return call.path().substring(PATH.length());
    }

    private static String tab(Headers headers) {
        String tab = headers.getFirst(TAB_HEADER);
        return tab != null && TAB.matcher(tab).matches() ? tab : "";
    }
}
