package dev.lampwright.http;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import org.slf4j.LoggerFactory;

class RetriedServerTest {
    private final AtomicLong clock = new AtomicLong();
    private final AtomicBoolean free = new AtomicBoolean();
    private final List<Integer> tried = new ArrayList<>();
    private final RetriedServer<Integer, RetriedServer.Server> server = new RetriedServer<>(
            this::open, "there is none", LoggerFactory.getLogger(RetriedServerTest.class), clock::get);

    private RetriedServer.Server open(int port) throws IOException {
        tried.add(port);
        if (!free.get()) {
            throw new IOException("port " + port + " is taken");
        }
        return () -> tried.add(-port);
    }

    /** Somebody who changes a file ten times a second does not get ten reports a second that the port is taken. */
    @Test
    void whatCannotBeHadIsTriedAgainInItsOwnTime() {
        server.follow(Optional.of(80), opened -> true);
        server.follow(Optional.of(80), opened -> true);
        server.lookAround();
        assertEquals(List.of(80), tried);
        free.set(true);
        clock.addAndGet(TimeUnit.SECONDS.toNanos(RetriedServer.PAUSE_S));
        server.lookAround();
        server.follow(Optional.of(80), opened -> true);
        assertEquals(List.of(80, 80), tried, "once it is there nothing is tried");
        assertTrue(server.server().isPresent());
    }

    @Test
    void anotherIsTriedAtOnceAndTheFirstIsClosed() {
        free.set(true);
        server.follow(Optional.of(80), opened -> true);
        server.follow(Optional.of(81), opened -> true);
        server.follow(Optional.of(81), opened -> false);
        server.follow(Optional.empty(), opened -> true);
        assertEquals(List.of(80, -80, 81, -81, 81, -81), tried);
    }
}
