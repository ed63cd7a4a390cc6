package dev.lampwright.page;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpHandler;
import dev.lampwright.http.BrokenRequest;
import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Everything that one server shows: one page at {@code /}, and each rig's at {@code /NAME/} if a process has several. Refuses requests with
 * a wrong host name, and passes the others to their page.
 */
final class Site implements HttpHandler {
    private static final Logger LOG = LoggerFactory.getLogger(Site.class);
    private static final HttpCall.Refusal NOTHING = new HttpCall.Refusal(404, "there is nothing here");

    private final AccessCheck door;
    private final Function<String, Optional<Page>> rigs;
    private final Optional<Front> front;

    /** A rig's page. */
    interface Page {
        /**
         * Answers a request.
         *
         * @param call its path is relative to this page
         * @throws IOException if the client has left
         */
        void answer(HttpCall call) throws IOException;
    }

    /** The page at {@code /} if there are several rigs. */
    interface Front {
        /**
         * Answers a request if it is not for a rig.
         *
         * @param call its path is as sent
         * @return whether it was answered
         * @throws IOException if the client has left
         */
        boolean answer(HttpCall call) throws IOException;
    }

    /**
     * Creates a site.
     *
     * @param door the access check
     * @param rigs the page of a rig, by its name; a single one has an empty name
     * @param front what is at {@code /}; empty if that is the page of a single rig
     */
    Site(AccessCheck door, Function<String, Optional<Page>> rigs, Optional<Front> front) {
        this.door = door;
        this.rigs = rigs;
        this.front = front;
    }

    @Override
    public void handle(HttpExchange exchange) {
        try {
            answer(new HttpCall(exchange));
        } catch (IOException e) {
            LOG.debug("a viewer has left", e);
        } catch (RuntimeException e) {
            tell(exchange, e);
        } finally {
            BrokenRequest.close(exchange::close);
        }
    }

    private static void tell(HttpExchange exchange, RuntimeException e) {
        if (BrokenRequest.isCauseOf(e)) {
            LOG.debug("a request's body is broken", e);
        } else {
            LOG.error(
                    "the live page could not answer {}",
                    exchange.getRequestURI().getRawPath(),
                    e);
        }
    }

    private void answer(HttpCall call) throws IOException {
        Optional<HttpCall.Refusal> foreign = door.refuseHost(call.headers());
        if (foreign.isPresent()) {
            call.answer(foreign.get());
        } else if (front.isEmpty()) {
            rigs.apply("").orElseThrow().answer(call);
        } else if (!front.get().answer(call)) {
            answerForRig(call);
        }
    }

    /** The name ends at the second slash. Without that slash, the page's own links would lead nowhere, so the browser is redirected. */
    private void answerForRig(HttpCall call) throws IOException {
        String path = call.path();
        int slash = path.indexOf('/', 1);
        String name = path.substring(Math.min(1, path.length()), slash < 0 ? path.length() : slash);
        Optional<Page> page = rigs.apply(name);
        if (page.isEmpty()) {
            call.answer(NOTHING);
        } else if (slash < 0) {
            call.answer(new HttpCall.Refusal(308, "this page is at " + path + "/", Map.of("Location", path + "/")));
        } else {
            page.get().answer(call.below(path.substring(0, slash)));
        }
    }
}
