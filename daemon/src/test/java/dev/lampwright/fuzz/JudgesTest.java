package dev.lampwright.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.Mistake;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Each judge passes what is right, and reports what is not. */
class JudgesTest {
    private static final Duration SOON = Duration.ofMillis(300);
    /** Far more than what earlier tests may have left and what ends in the meantime. */
    private static final int PLANTED = 50;

    private static final Logger LOG = LoggerFactory.getLogger("dev.lampwright.planted");

    @ParameterizedTest
    @ValueSource(
            strings = {
                "broker mqtt://127.0.0.1:1: nothing listens there; start the broker",
                "/dev/ttyACM0 has disappeared: plug the controller in again",
                "the printer reports a fault: jam"
            })
    void warningsThatHelpPass(String line) {
        assertTrue(LogWatch.judge(line, true).isEmpty());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "the broker is gone",
                "two\nlines; look at them",
                "red \u001b[31m; look at it",
                "link: internal error; lampwright carries on",
                "java.lang.NullPointerException; report it"
            })
    void warningsThatDoNotHelpAreFaults(String line) {
        assertTrue(LogWatch.judge(line, true).isPresent());
    }

    @Test
    void aLineWithoutAnEndIsAFault() {
        assertTrue(LogWatch.judge("x; ".repeat(1000), true).isPresent());
        assertTrue(LogWatch.judge("all is well", false).isEmpty());
    }

    @Test
    void stackTracesAndFloodsInTheLogAreFaultsOnce() {
        try (LogWatch watch = new LogWatch()) {
            LOG.info("all is well");
            assertEquals(List.of(), watch.faults());
            LOG.error("a frame could not be made; it is left out", new IllegalStateException("planted"));
            assertEquals(1, watch.faults().size());
            assertEquals(List.of(), watch.faults());
            for (int i = 0; i < 200; i++) {
                LOG.warn("trouble {}; wait", i);
            }
            assertEquals(1, watch.faults().size());
        }
    }

    @Test
    void threadsThatStayAreAFault() {
        ResourceWatch watch = new ResourceWatch(0, SOON);
        assertEquals(List.of(), watch.faults());
        CountDownLatch end = new CountDownLatch(1);
        for (int i = 0; i < PLANTED; i++) {
            Thread thread = new Thread(() -> await(end), "planted");
            thread.setDaemon(true);
            thread.start();
        }
        List<String> faults = watch.faults();
        end.countDown();
        assertEquals(1, faults.size(), faults.toString());
        assertTrue(faults.get(0).contains("planted=" + PLANTED), faults.toString());
    }

    private static void await(CountDownLatch end) {
        try {
            end.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Test
    void descriptorsThatStayAreAFault() throws IOException {
        ResourceWatch watch = new ResourceWatch(0, SOON);
        List<InputStream> open = new ArrayList<>();
        for (int i = 0; i < PLANTED; i++) {
            open.add(Files.newInputStream(Path.of("/dev/zero")));
        }
        List<String> faults = watch.faults();
        for (InputStream stream : open) {
            stream.close();
        }
        assertEquals(1, faults.size(), faults.toString());
        assertTrue(faults.get(0).contains("/dev/zero=" + PLANTED), faults.toString());
        assertEquals(List.of(), watch.faults());
    }

    @Test
    void mistakesNeedAPlaceThatIsThereAndARemedy() {
        ConfigFiles.judge(List.of(new Mistake("a.toml", 2, "", "is empty", "give one")), "a\nb");
        ConfigFiles.judge(List.of(new Mistake("a.toml", 0, "strip.pixels", "is missing", "give one")), "");
        for (Mistake useless : List.of(
                new Mistake("a.toml", 0, "", "is wrong", "make it right"),
                new Mistake("a.toml", 9, "", "is wrong", "make it right"),
                new Mistake("a.toml", 1, "strip.pixels", "is wrong", " "),
                new Mistake("a.toml", 1, "strip.pixels", "", "make it right"),
                new Mistake("a.toml", 1, "strip.pixels", "is " + "9".repeat(3000), "make it right"))) {
            assertThrows(AssertionError.class, () -> ConfigFiles.judge(List.of(useless), "a\nb"));
        }
    }

    @Test
    void refusalsNeedARemedyAndAnswersOneLine() {
        Asks.judge("{\"ask\":\"work\",\"done\":true,\"now\":\"work 1\"}");
        Asks.judge("{\"ask\":\"work\",\"done\":false,\"why\":\"work is \\\"x\\\"; give a number\"}");
        assertThrows(
                AssertionError.class, () -> Asks.judge("{\"ask\":\"work\",\"done\":false,\"why\":\"it is wrong\"}"));
        assertThrows(AssertionError.class, () -> Asks.judge("{\"ask\":\"work\",\n\"done\":true}"));
        assertThrows(AssertionError.class, () -> Asks.judge("done"));
    }

    @Test
    void answersOfTheServersMayNotBlameThemselves() {
        HttpRequests.judge("");
        HttpRequests.judge("HTTP/1.1 422 Unprocessable Content\r\n\r\n{}");
        HttpRequests.judge("HTTP/1.1 503 Service Unavailable\r\n\r\n{}");
        assertThrows(AssertionError.class, () -> HttpRequests.judge("HTTP/1.1 500 Internal Server Error\r\n\r\n"));
        assertThrows(AssertionError.class, () -> HttpRequests.judge("java.lang.NullPointerException"));
    }

    @ParameterizedTest
    @EnumSource
    void everyColourIsToldFromEveryOther(Colour colour) {
        for (Colour other : Colour.values()) {
            assertEquals(colour == other, colour.isOn(strip(other, 200)));
            assertFalse(colour.isOn(strip(other, 20)));
        }
    }

    /** All pixels in the order GRB, by the colours of the configuration. */
    private static List<Integer> strip(Colour colour, int level) {
        int rgb = Integer.parseInt(colour.lines().replaceAll("(?s).*#([0-9a-f]{6}).*", "$1"), 16);
        List<Integer> strip = new ArrayList<>();
        for (int pixel = 0; pixel < House.PIXELS; pixel++) {
            strip.add((rgb >> 8 & 1) * level);
            strip.add((rgb >> 16 & 1) * level);
            strip.add((rgb & 1) * level);
        }
        return strip;
    }
}
