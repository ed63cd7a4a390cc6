package dev.lampwright.page;

import dev.lampwright.engine.Daemon;
import java.io.IOException;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;

/** The page at {@code /} of a process with several rigs: the shelf. */
final class ShelfPage implements Site.Front, AutoCloseable {
    private final Viewers viewers = new Viewers();
    private final ShelfPublisher publisher;
    private final PageHandler handler;

    /**
     * Opens it.
     *
     * @param daemons the running rigs, by name
     * @param rejected why rigs do not run, by name
     * @param door who gets in
     * @param elsewhere where the tokens of rigs lead
     * @param seats room for viewers, of all pages together
     * @param sheets the page's own files, by path
     */
    ShelfPage(
            Supplier<Map<String, Daemon>> daemons,
            Supplier<Map<String, String>> rejected,
            AccessCheck door,
            PageHandler.Elsewhere elsewhere,
            Seats seats,
            Map<String, Sheet> sheets) {
        Map<String, Sheet> own = new HashMap<>(sheets);
        own.put("/", sheets.get(Sheets.SHELF));
        publisher = new ShelfPublisher(daemons, rejected, viewers);
        handler = new PageHandler(
                door,
                elsewhere,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                publisher,
                viewers,
                seats,
                own,
                Map.of(),
                Handbook.NONE);
        publisher.start();
    }

    @Override
    public boolean answer(HttpCall call) throws IOException {
        boolean known = handler.knows(call.path());
        if (known) {
            handler.answer(call);
        }
        return known;
    }

    /** Closes it, and ends the streams of all viewers. */
    @Override
    public void close() {
        publisher.close();
        viewers.dismissAll();
    }
}
