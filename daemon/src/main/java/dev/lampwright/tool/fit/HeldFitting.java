package dev.lampwright.tool.fit;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.file.AtomicFile;
import dev.lampwright.json.Json;
import dev.lampwright.phrase.Phrase;
import dev.lampwright.upkeep.RigName;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The fitting of one configuration, for people who answer by requests. One of them at a time holds it, by a lease that must be renewed: when
 * it lapses, everything goes dark, as if the person had stopped. Safe for many threads.
 */
public final class HeldFitting implements AutoCloseable {
    /** How long a lease lasts after it was last renewed. Our own choice: the light of a closed tab goes out soon. */
    public static final Duration LEASE = Duration.ofSeconds(15);

    /** How long a beat waits for news. A page sends the next one at once, so several in a row may get lost. */
    private static final Duration BEAT = Duration.ofMillis(2500);

    private static final Logger LOG = LoggerFactory.getLogger(HeldFitting.class);
    /** Most answers are followed by the next question within this time, which then goes with the reply. */
    private static final Duration NEXT = Duration.ofSeconds(2);

    private static final int LONGEST_LINE = 2000;

    private final String rig;
    private final Path file;
    private final Boards boards;
    private final Supplier<PrinterFinder> printers;
    private final FileKnowledge knowledge;
    private final Controller controller;
    private final OptionalInt pagePort;
    private final LongSupplier clock;
    private Optional<HeldSession> session = Optional.empty();
    private volatile boolean endSeen;
    private boolean forOthers;
    private boolean closed;

    /** The other user of the controller. */
    public interface Controller {
        /** Nothing else uses it. */
        Controller FREE = new Controller() {
            @Override
            public void release() {
                // It is free.
            }

            @Override
            public void resume() {
                // Nobody waits for it.
            }
        };

        /** Makes it dark, and leaves its port free. */
        void release();

        /** Lights it again. */
        void resume();
    }

    /**
     * Prepares; nothing begins before somebody asks for it.
     *
     * @param rig the name of the rig, for people; empty for the only one
     * @param file the configuration to write or change
     * @param boards finds controllers
     * @param printers find out where a printer reports what; one for each fitting
     * @param knowledge what the rest of Lampwright knows about the file
     * @param controller the other user of the controller
     * @param pagePort the port of the page in a new file; empty for the usual one
     * @param nanoClock a clock in ns that never goes back
     */
    public HeldFitting(
            String rig,
            Path file,
            Boards boards,
            Supplier<PrinterFinder> printers,
            FileKnowledge knowledge,
            Controller controller,
            OptionalInt pagePort,
            LongSupplier nanoClock) {
        this.rig = rig;
        this.file = file;
        this.boards = boards;
        this.printers = printers;
        this.knowledge = knowledge;
        this.controller = controller;
        this.pagePort = pagePort;
        clock = nanoClock;
    }

    /**
     * Answers a request.
     *
     * @param what {@code now} for what there is to see, {@code begin}, {@code beat}, {@code answer}, {@code try}, {@code give},
     *     {@code back} or {@code stop}
     * @param json an object with {@code lease}, and what the request needs
     * @param elsewhere whether the person is at another computer, and has come to a page that a new file is to keep open for them
     * @return the answer
     */
    public FitReply answer(String what, String json, boolean elsewhere) {
        Optional<JsonNode> body = Json.read(json.isBlank() ? "{}" : json).filter(JsonNode::isObject);
        if (body.isEmpty()) {
            return FitReply.refusal(400, "", "send one JSON object");
        }
        String lease = body.get().path("lease").asText("");
        return switch (what) {
            case "now" -> FitReply.of(view(lease));
            case "begin" -> begin(lease, elsewhere);
            default -> ofHolder(what, lease, body.get());
        };
    }

    private FitReply ofHolder(String what, String lease, JsonNode body) {
        Optional<HeldSession> held = held(lease);
        if (held.isEmpty()) {
            return isOver(lease)
                    ? FitReply.of(view(lease))
                    : FitReply.refusal(409, "fit_not_held", "this page does not hold the fitting; begin it again");
        }
        HeldSession now = held.get();
        now.renew(clock.getAsLong());
        long number = body.path("number").asLong();
        String line = body.path("line").asText("");
        switch (what) {
            case "beat" -> now.terminal().awaitChange(body.path("changes").asLong(), BEAT);
            case "answer", "try" -> {
                return typed(now, number, line, what.equals("try"), lease);
            }
            case "give" -> {
                return given(now, number, line, lease);
            }
            case "back" -> now.terminal().back(number);
            case "stop" -> now.stop("stopped");
            default -> {
                return FitReply.refusal(404, "", "there is nothing here");
            }
        }
        if (!what.equals("beat")) {
            now.awaitNext(NEXT);
        }
        return FitReply.of(view(lease));
    }

    private FitReply typed(HeldSession now, long number, String line, boolean tries, String lease) {
        now.awaitNext(NEXT);
        Optional<Form> form = now.terminal().form(number);
        if (form.isEmpty()) {
            return FitReply.of(view(lease));
        }
        if (line.length() > LONGEST_LINE || line.chars().anyMatch(Character::isISOControl)) {
            now.terminal()
                    .refuse(Phrase.of(
                            "unshown_or_long", "that has a character in it that cannot be shown, or is too long"));
            return FitReply.of(view(lease));
        }
        if (isFile(form.get()) && !line.isEmpty()) {
            return FitReply.refusal(400, "", "files are not named here; send what should be in the file");
        }
        now.terminal().type(number, line, tries);
        now.awaitNext(NEXT);
        return FitReply.of(view(lease));
    }

    /** What belongs in a file of its own is never sent back to the page, and never logged. */
    private FitReply given(HeldSession now, long number, String text, String lease) {
        Optional<Form> form = now.terminal().form(number).filter(HeldFitting::isFile);
        if (form.isEmpty()) {
            return FitReply.refusal(409, "", "nothing of that kind is asked for");
        }
        try {
            Path written = new GivenFiles(file).write(form.get().kind(), text);
            now.terminal().type(number, written.toString(), false);
            now.awaitNext(NEXT);
        } catch (Question.UnusableException e) {
            now.terminal().refuse(e.why());
        } catch (IOException e) {
            now.terminal().refuse(Phrase.of("file_unwritten", e.getMessage(), "why", Phrase.plain(e.getMessage())));
        }
        return FitReply.of(view(lease));
    }

    private static boolean isFile(Form form) {
        return form.kind() == Form.Kind.SECRET || form.kind() == Form.Kind.CERTIFICATES;
    }

    /**
     * Whether somebody holds the fitting.
     *
     * @return false before it begins and once it has ended
     */
    public synchronized boolean isRunning() {
        return session.filter(HeldSession::isRunning).isPresent();
    }

    /**
     * Whether the holder has been sent the end of the fitting.
     *
     * @return false while one runs
     */
    public boolean isEndSeen() {
        return endSeen;
    }

    /** The files with the page's tokens. */
    public record Tokens(Path asking, Path editing) {}

    /**
     * The tokens of the live page that a finished fitting has made for the person at another computer.
     *
     * @return empty as long as there is no new file, and if it has no page for others
     */
    public synchronized Optional<Tokens> tokens() {
        GivenFiles given = new GivenFiles(file);
        return forOthers && Files.exists(file) && Files.exists(given.editToken())
                ? Optional.of(new Tokens(given.pageToken(), given.editToken()))
                : Optional.empty();
    }

    private FitReply begin(String lease, boolean elsewhere) {
        Optional<HeldSession> begun;
        try {
            begun = begun(elsewhere);
        } catch (IOException e) {
            return FitReply.refusal(422, "fit_unwritable", e.getMessage(), Map.of("why", e.getMessage()));
        }
        if (begun.isEmpty()) {
            return held(lease).isPresent()
                    ? FitReply.of(view(lease))
                    : FitReply.refusal(409, "fit_held", "somebody else is fitting; wait until they have stopped");
        }
        begun.get().awaitNext(NEXT);
        return FitReply.of(view(begun.get().lease()));
    }

    /** A new session; empty if one is held. */
    private synchronized Optional<HeldSession> begun(boolean elsewhere) throws IOException {
        if (closed || session.filter(HeldSession::isRunning).isPresent()) {
            return Optional.empty();
        }
        AtomicFile.requireWritable(file);
        forOthers = elsewhere;
        session = Optional.of(RigName.make(rig, this::started));
        return session;
    }

    private HeldSession started() {
        NewPage page = new NewPage(pagePort, forOthers);
        HeldSession next = new HeldSession(
                terminal -> FittingTalk.of(file, terminal, boards, printers.get(), knowledge, page), controller, clock);
        next.start();
        LOG.info("a fitting has begun on the page; the controller is dark until it needs light");
        return next;
    }

    private synchronized Optional<HeldSession> held(String lease) {
        return session.filter(HeldSession::isRunning).filter(now -> now.isHeldBy(lease));
    }

    private synchronized boolean isOver(String lease) {
        return session.filter(now -> now.isHeldBy(lease) && !now.isRunning()).isPresent();
    }

    private Map<String, Object> view(String lease) {
        Optional<HeldSession> now;
        synchronized (this) {
            now = session;
        }
        Map<String, Object> view = new LinkedHashMap<>();
        boolean mine = now.filter(one -> one.isHeldBy(lease)).isPresent();
        boolean running = now.filter(HeldSession::isRunning).isPresent();
        view.put("running", running);
        view.put("mine", mine);
        view.put("rig", rig);
        view.put("file", file.toString());
        view.put("changes_file", FittingTalk.changes(file));
        view.put("under_way", GuidedFitting.isUnderWay(file));
        if (mine) {
            HeldSession held = now.orElseThrow();
            view.put("lease", held.lease());
            view.put("end", held.end());
            endSeen = !running;
            view.put("why", held.why());
            view.put("talk", held.terminal().view());
        }
        return view;
    }

    /** Ends a fitting that is under way; everything goes dark. */
    @Override
    public void close() {
        Optional<HeldSession> now;
        synchronized (this) {
            closed = true;
            now = session.filter(HeldSession::isRunning);
        }
        now.ifPresent(running -> {
            running.stop("closed");
            running.awaitEnd();
        });
    }
}
