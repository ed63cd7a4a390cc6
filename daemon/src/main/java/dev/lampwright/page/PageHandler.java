package dev.lampwright.page;

import dev.lampwright.desk.Answer;
import dev.lampwright.desk.Ask;
import dev.lampwright.desk.Desk;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Answers requests: the page's own files and the handbook for everybody, news and asks for those with access. */
final class PageHandler {
    /** The path of the stream of events. */
    static final String EVENTS = "/events";

    private static final String ASK = "/ask/";
    private static final String AFTER = "after=";
    private static final long COME_AGAIN_MS = 2000;
    private static final Set<String> OTHERS = Set.of(EVENTS, "/door", "/rights", "/enter", "/leave");
    private static final HttpCall.Refusal NOTHING = new HttpCall.Refusal(404, "there is nothing here");

    private final Map<String, Sheet> sheets;
    private final Handbook handbook;
    private final AccessCheck door;
    private final Elsewhere elsewhere;
    private final Optional<Desk> desk;
    private final Stream stream;
    private final Viewers viewers;
    private final Seats seats;
    private final Map<String, Shown> documents;
    private final Optional<BenchRequests> bench;
    private final Optional<FitRequests> fitting;

    /**
     * Creates a handler.
     *
     * @param door who gets in
     * @param elsewhere where other tokens lead
     * @param desk whom to ask; empty for a page on which nothing can be asked for
     * @param bench where looks are made; empty for a page on which none are
     * @param fitter where lights are fitted; empty for a page on which none are
     * @param stream takes in those who watch
     * @param viewers who watches
     * @param seats room for them
     * @param sheets the page's own files, by path
     * @param documents content created on request, by path
     * @param handbook the handbook that the page links to
     */
    PageHandler(
            AccessCheck door,
            Elsewhere elsewhere,
            Optional<Desk> desk,
            Optional<Bench> bench,
            Optional<Fitter> fitter,
            Stream stream,
            Viewers viewers,
            Seats seats,
            Map<String, Sheet> sheets,
            Map<String, Shown> documents,
            Handbook handbook) {
        this.handbook = handbook;
        this.door = door;
        this.elsewhere = elsewhere;
        this.seats = seats;
        this.sheets = sheets;
        this.desk = desk;
        this.stream = stream;
        this.viewers = viewers;
        this.documents = Map.copyOf(documents);
        this.bench = bench.map(one -> new BenchRequests(door, one));
        fitting = fitter.map(one -> new FitRequests(door, one));
    }

    /**
     * A document, and who may see it.
     *
     * @param needed the required right
     */
    record Shown(PageTokens.Right needed, Document document) {}

    /** Where a token that is not for this page leads. */
    interface Elsewhere {
        /** There is nothing else. */
        Elsewhere NOWHERE = token -> Optional.empty();

        /**
         * Finds the page that a token opens.
         *
         * @param token any text
         * @return empty if it opens this one, or none
         */
        Optional<AccessCheck> of(String token);
    }

    /** Where news comes from. */
    interface Stream {
        /**
         * Accepts a new viewer, and sends what others already have.
         *
         * @param viewer the viewer
         * @param lastId the id of the last event that the viewer has received, possibly from another run; empty if none
         */
        void welcome(Viewer viewer, String lastId);
    }

    /** Answers a path. */
    private interface Answering {
        void to(HttpCall call) throws IOException;
    }

    /** Whether there is anything at a path. */
    boolean knows(String path) {
        return sheets.containsKey(path)
                || documents.containsKey(path)
                || OTHERS.contains(path)
                || isAsk(path)
                || isBench(path)
                || isFitting(path);
    }

    private boolean isBench(String path) {
        return bench.isPresent() && path.startsWith(BenchRequests.PATH);
    }

    private boolean isFitting(String path) {
        return fitting.isPresent() && path.startsWith(FitRequests.PATH);
    }

    private boolean isAsk(String path) {
        return desk.isPresent() && path.startsWith(ASK) && Ask.words().contains(path.substring(ASK.length()));
    }

    /**
     * Answers a request.
     *
     * @param call its path is relative to this page
     * @throws IOException if the client has left
     */
    void answer(HttpCall call) throws IOException {
        if (sheets.containsKey(call.path())) {
            get(call, List.of("GET", "HEAD"), sheet -> sheet.answer(sheets.get(sheet.path())));
        } else if (handbook.has(call.path())) {
            get(call, List.of("GET", "HEAD"), page -> page.answer(200, handbook.file(page.path())));
        } else if (call.path().equals(EVENTS)) {
            get(call, List.of("GET"), inside(PageTokens.Right.WATCH, this::watch));
        } else if (call.path().equals("/door")) {
            get(call, List.of("GET"), inside(PageTokens.Right.WATCH, this::sayWhetherThereIsRoom));
        } else if (documents.containsKey(call.path())) {
            Shown shown = documents.get(call.path());
            get(call, List.of("GET"), inside(shown.needed(), asked -> show(asked, shown.document())));
        } else if (call.path().equals("/rights")) {
            get(call, List.of("GET"), inside(PageTokens.Right.WATCH, this::sayWhatIsAllowed));
        } else if (call.path().equals("/enter")) {
            post(call, this::enter);
        } else if (call.path().equals("/leave")) {
            post(call, this::leave);
        } else if (isAsk(call.path())) {
            post(call, inside(PageTokens.Right.ASK, this::ask));
        } else if (isBench(call.path())) {
            bench.orElseThrow().answer(call);
        } else if (isFitting(call.path())) {
            fitting.orElseThrow().answer(call);
        } else {
            call.answer(NOTHING);
        }
    }

    private static void get(HttpCall call, List<String> methods, Answering answering) throws IOException {
        if (methods.contains(call.method())) {
            answering.to(call);
        } else {
            String allowed = String.join(", ", methods);
            call.answer(new HttpCall.Refusal(405, "only " + allowed + " is allowed here", Map.of("Allow", allowed)));
        }
    }

    private void post(HttpCall call, Answering answering) throws IOException {
        Optional<HttpCall.Refusal> site = door.refuseSite(call.headers());
        if (!call.method().equals("POST")) {
            call.answer(new HttpCall.Refusal(405, "only POST is allowed here", Map.of("Allow", "POST")));
        } else if (site.isPresent()) {
            call.answer(site.get());
        } else if (!call.isJson()) {
            call.answer(new HttpCall.Refusal(415, "send it as application/json"));
        } else {
            answering.to(call);
        }
    }

    /** Content only for those with access, and not for other sites' pages. */
    private Answering inside(PageTokens.Right needed, Answering answering) {
        return call -> {
            Optional<HttpCall.Refusal> refusal =
                    door.refuseSite(call.headers()).or(() -> door.refuse(needed, call.headers(), call.from()));
            if (refusal.isPresent()) {
                call.answer(refusal.get());
            } else {
                answering.to(call);
            }
        };
    }

    private void enter(HttpCall call) throws IOException {
        String token = Messages.token(call.body());
        Optional<AccessCheck> other = elsewhere.of(token);
        Optional<HttpCall.Refusal> refusal = other.orElse(door).refuseToken(token, call.from());
        if (refusal.isPresent()) {
            call.answer(refusal.get());
            return;
        }
        call.addHeader("Set-Cookie", other.orElse(door).cookie(token));
        call.answerJson(
                200, other.map(AccessCheck::place).map(Messages::entered).orElse(Messages.done()));
    }

    private void leave(HttpCall call) throws IOException {
        door.noCookies().forEach(cookie -> call.addHeader("Set-Cookie", cookie));
        call.answerJson(200, Messages.done());
    }

    private static void show(HttpCall call, Document document) throws IOException {
        Optional<StaticFile> made = document.make(call.query());
        if (made.isPresent()) {
            call.answer(200, made.get());
        } else {
            call.answer(NOTHING);
        }
    }

    /** Every page requests this first, so this is where a browser's cookie is renewed. */
    private void sayWhetherThereIsRoom(HttpCall call) throws IOException {
        door.renewedCookies(call.headers()).forEach(cookie -> call.addHeader("Set-Cookie", cookie));
        if (seats.full()) {
            call.answer(full());
        } else {
            call.answerJson(200, Messages.done());
        }
    }

    private void sayWhatIsAllowed(HttpCall call) throws IOException {
        boolean mayAsk = may(PageTokens.Right.ASK, call);
        boolean mayEdit = (bench.isPresent() || fitting.isPresent()) && may(PageTokens.Right.EDIT, call);
        boolean all = door.opensAll(call.headers());
        call.answerJson(
                200,
                Messages.rights(
                        door.needsToken(),
                        mayAsk,
                        mayEdit,
                        all,
                        new Messages.Rooms(bench.isPresent(), fitting.isPresent())));
    }

    private boolean may(PageTokens.Right right, HttpCall call) {
        return door.refuse(right, call.headers(), call.from()).isEmpty();
    }

    private HttpCall.Refusal full() {
        String why = seats.most() + " are watching, and page.viewers has no room for more; close the page elsewhere";
        return new HttpCall.Refusal(503, why, Map.of("Retry-After", "10"))
                .coded("full", Map.of("most", Integer.toString(seats.most())));
    }

    private void ask(HttpCall call) throws IOException {
        byte[] body = call.body();
        if (body.length > HttpCall.MOST_BYTES) {
            call.answer(HttpCall.Refusal.tooLong());
            return;
        }
        String word = call.path().substring(ASK.length());
        Answer answer = desk.orElseThrow().ask(word, new String(body, StandardCharsets.UTF_8));
        call.answerJson(answer.done() ? 200 : 422, answer.json());
    }

    private void watch(HttpCall call) throws IOException {
        if (!seats.sit()) {
            call.answer(full());
            return;
        }
        try {
            serve(new Viewer(call.answerEvents()), lastId(call));
        } finally {
            seats.rise();
        }
    }

    private void serve(Viewer viewer, String lastId) throws IOException {
        try {
            viewer.send(ServerEvent.retryAfter(COME_AGAIN_MS));
            stream.welcome(viewer, lastId);
            viewer.serve();
        } finally {
            viewers.remove(viewer);
        }
    }

    /** From the standard header if the browser reconnects by itself, or else from the page's own parameter. */
    private static String lastId(HttpCall call) {
        String header = call.headers().getFirst("Last-Event-ID");
        if (header != null) {
            return header;
        }
        return call.query().startsWith(AFTER) ? call.query().substring(AFTER.length()) : "";
    }
}
