package dev.lampwright.page;

import static dev.lampwright.testing.Bounds.assertBelow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.upkeep.Trouble;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

class TroubleLogTest {
    private final TroubleLog log = TroubleLog.listening("");
    private final Logger logger = LoggerFactory.getLogger(TroubleLogTest.class);

    @AfterEach
    void close() {
        log.close();
    }

    private List<String> own() {
        return log.entries().stream()
                .map(TroubleLog.Entry::text)
                .filter(text -> text.startsWith("test "))
                .toList();
    }

    @Test
    void linesAreKeptTheNewestFirst() {
        logger.debug("test {}", "not this");
        logger.info("test {}", "sun");
        logger.warn("test {}", "wind");
        logger.error("test {}", "rain");
        assertEquals(List.of("test rain", "test wind", "test sun"), own());
        assertEquals(
                List.of("error", "warn", "info"),
                log.entries().stream()
                        .filter(entry -> entry.text().startsWith("test "))
                        .map(TroubleLog.Entry::level)
                        .toList());
    }

    @Test
    void nothingElseCanPushWarningsOut() {
        logger.warn("test {}", "wind");
        IntStream.range(0, 100).forEach(i -> logger.info("test {}", i));
        assertEquals(TroubleLog.MOST + 1, own().size());
        assertEquals("test wind", own().get(TroubleLog.MOST));
    }

    @Test
    void onlySoManyAndSoLong() {
        IntStream.range(0, 100).forEach(i -> logger.warn("test {}", i));
        assertEquals(
                TroubleLog.MOST,
                log.entries().stream().filter(TroubleLog.Entry::isTrouble).count());
        assertEquals("test 99", own().get(0));
        logger.warn("test {}", "x".repeat(10_000));
        assertBelow(500, own().get(0).length());
    }

    @Test
    void whatComesAgainIsToldOnceWithHowOften() {
        logger.warn("test {}", "wind");
        logger.warn("test {}", "rain");
        logger.warn("test {}", "wind");
        logger.error("test {}", "wind");
        assertEquals(List.of("test wind", "test wind", "test rain"), own());
        assertEquals(
                List.of(1, 2, 1),
                log.entries().stream()
                        .filter(entry -> entry.text().startsWith("test "))
                        .map(TroubleLog.Entry::times)
                        .toList());
    }

    @Test
    void aTroubleThatHasEndedIsOver() {
        Trouble wind = new Trouble(logger);
        Trouble rain = new Trouble(logger);
        wind.begins("test wind", 0);
        rain.begins("test rain", 0);
        long before = log.count();
        wind.ends("test no wind");
        assertTrue(log.count() > before, "which is news");
        assertEquals(List.of("test rain", "test wind"), own(), "its end is no trouble");
        assertEquals(
                List.of(false, true),
                log.entries().stream()
                        .filter(entry -> entry.text().startsWith("test "))
                        .map(entry -> entry.over().isPresent())
                        .toList());
        wind.begins("test wind", TimeUnit.MINUTES.toNanos(2));
        assertEquals(Optional.empty(), log.entries().get(0).over(), "it has come again");
        assertEquals(2, log.entries().get(0).times());
    }

    @Test
    void nothingIsHeardOnceItIsClosed() {
        log.close();
        long before = log.count();
        logger.warn("test {}", "late");
        assertEquals(before, log.count());
    }
}
