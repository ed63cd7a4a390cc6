package dev.lampwright.page;

import dev.lampwright.page.PageTokens.Right;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;

/** Passes requests on to the fitting, after checking the right to edit: the fitting writes the configuration. */
final class FitRequests {
    /** What their paths begin with. */
    static final String PATH = "/fit/";

    private static final String NOW = "now";
    private static final Map<String, String> MISSING = Map.of(
            "needs_edit_token",
            "to fit lights, enter the token that page.edit_token_file names",
            "only_here",
            "lights can be fitted in a browser on the computer that Lampwright runs on; to fit them elsewhere, set"
                    + " page.edit_token_file");

    private final AccessCheck door;
    private final Fitter fitter;

    FitRequests(AccessCheck door, Fitter fitter) {
        this.door = door;
        this.fitter = fitter;
    }

    /**
     * Answers a request.
     *
     * @param call its path begins with {@link #PATH}
     * @throws IOException if the client has left
     */
    void answer(HttpCall call) throws IOException {
        String what = call.path().substring(PATH.length());
        boolean looks = what.equals(NOW);
        Optional<HttpCall.Refusal> refusal = refusal(call, looks);
        if (refusal.isPresent()) {
            call.answer(refusal.get());
            return;
        }
        byte[] body = looks ? new byte[0] : call.body();
        if (body.length > HttpCall.MOST_BYTES) {
            call.answer(HttpCall.Refusal.tooLong());
            return;
        }
        boolean elsewhere = !door.isHere(call.headers(), call.from());
        Bench.Reply reply = fitter.answer(what, new String(body, StandardCharsets.UTF_8), elsewhere);
        door.nextCookie(call.headers()).ifPresent(cookie -> call.addHeader("Set-Cookie", cookie));
        call.answerJson(reply.status(), reply.json());
    }

    private Optional<HttpCall.Refusal> refusal(HttpCall call, boolean looks) {
        String method = looks ? "GET" : "POST";
        if (!call.method().equals(method)) {
            return Optional.of(
                    new HttpCall.Refusal(405, "only " + method + " is allowed here", Map.of("Allow", method)));
        }
        Optional<HttpCall.Refusal> foreign = door.refuseSite(call.headers());
        if (foreign.isPresent()) {
            return foreign;
        }
        if (!looks && !call.isJson()) {
            return Optional.of(new HttpCall.Refusal(415, "send it as application/json"));
        }
        return door.refuse(looks ? Right.WATCH : Right.EDIT, call.headers(), call.from())
                .map(FitRequests::ofFitting);
    }

    /** The same refusal, worded for the fitting. */
    private static HttpCall.Refusal ofFitting(HttpCall.Refusal refusal) {
        String why = MISSING.get(refusal.code());
        return why == null
                ? refusal
                : new HttpCall.Refusal(refusal.status(), why).coded("fit_" + refusal.code(), Map.of());
    }
}
