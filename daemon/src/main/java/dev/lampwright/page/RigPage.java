package dev.lampwright.page;

import dev.lampwright.engine.Daemon;
import dev.lampwright.upkeep.RigName;
import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Semaphore;

/** The live page of one rig, as long as its daemon runs: its viewers, what is sent to them, and how its requests are answered. */
final class RigPage implements AutoCloseable {
    private static final int MOST_AT_ONCE = 4;

    private final String name;
    private final Daemon daemon;
    private final AccessCheck door;
    private final Semaphore atOnce = new Semaphore(MOST_AT_ONCE);
    private final Viewers viewers = new Viewers();
    private final TroubleLog troubles;
    private final Publisher publisher;
    private final PageHandler handler;
    private final Optional<Fitter> fitter;

    /**
     * Opens it.
     *
     * @param name of the rig; empty for a single one
     * @param daemon the daemon that it shows
     * @param door the access check
     * @param seats seats for viewers, shared by all pages
     * @param sheets the page's own files, by path
     * @param documents content created on request, by path
     * @param handbook the handbook that it links to
     * @param bench where looks are made; empty if nowhere
     * @param fitter where lights are fitted; empty if nowhere
     */
    RigPage(
            String name,
            Daemon daemon,
            AccessCheck door,
            Seats seats,
            Map<String, Sheet> sheets,
            Map<String, PageHandler.Shown> documents,
            Handbook handbook,
            Optional<Bench> bench,
            Optional<Fitter> fitter) {
        this.name = name;
        this.daemon = daemon;
        this.door = door;
        this.fitter = fitter;
        troubles = TroubleLog.listening(name);
        publisher = RigName.make(name, () -> new Publisher(daemon, viewers, troubles));
        handler = new PageHandler(
                door,
                PageHandler.Elsewhere.NOWHERE,
                Optional.of(daemon.desk()),
                bench,
                fitter,
                publisher,
                viewers,
                seats,
                sheets,
                documents,
                handbook);
        publisher.start();
    }

    /** Who gets in. */
    AccessCheck door() {
        return door;
    }

    /** Whether it shows this daemon. */
    boolean isOf(Daemon other) {
        return daemon == other;
    }

    /**
     * Answers a request. A rig that is stuck uses only a few of the threads that serve all.
     *
     * @param call its path is relative to this page
     * @throws IOException if the client has left
     */
    void answer(HttpCall call) throws IOException {
        if (name.isEmpty() || call.path().equals(PageHandler.EVENTS)) {
            handler.answer(call);
        } else if (atOnce.tryAcquire()) {
            try {
                handler.answer(call);
            } finally {
                atOnce.release();
            }
        } else {
            call.answer(new HttpCall.Refusal(503, "this rig is slow to answer; try again", Map.of("Retry-After", "5")));
        }
    }

    /** Closes it, and ends the streams of all viewers. */
    @Override
    public void close() {
        fitter.ifPresent(Fitter::close);
        publisher.close();
        viewers.dismissAll();
        troubles.close();
    }
}
