package dev.lampwright.soak;

import static dev.lampwright.testing.Bounds.assertAbove;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.demo.MemoryController.Light;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.FrameParts;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.CeilingCheck;
import dev.lampwright.testing.FlashCheck;
import dev.lampwright.testing.Flatness;
import dev.lampwright.testing.Heartbeat;
import dev.lampwright.testing.Recording.Entry;
import dev.lampwright.testing.Recoveries;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Each judge of the soak passes what is right, and reports what is not. */
class ChecksTest {
    private static final long MILLI = 1_000_000;
    private static final long SECOND = 1000 * MILLI;
    private static final List<Integer> DARK = Collections.nCopies(3 * Rowan.PIXELS, 0);

    private final Heartbeat heartbeat = new Heartbeat();

    private static Entry shown(Light light, int sequence, long nanos, List<Integer> strip, int duty) {
        return new Entry(light, sequence, nanos, strip, List.of(duty));
    }

    private static Entry host(long nanos, List<Integer> strip) {
        return shown(Light.WHOLE, 7, nanos, strip, 0);
    }

    /** This many bytes at full, the rest dark. */
    private static List<Integer> full(int bytes) {
        List<Integer> strip = new ArrayList<>(DARK);
        Collections.fill(strip.subList(0, bytes), 255);
        return strip;
    }

    /** A state's light on every pixel, in the order GRB. */
    private static List<Integer> lit(Rowan.State state, boolean edition, int level) {
        List<Integer> strip = new ArrayList<>();
        boolean[] channels = state.channels();
        for (int pixel = 0; pixel < Rowan.PIXELS; pixel++) {
            for (int channel : new int[] {1, 0, 2}) {
                strip.add(channels[channel] && (edition || pixel >= Rowan.EDITION_PIXELS) ? level : 0);
            }
        }
        return strip;
    }

    /** 30 mA are drawn in the dark and 12 by each byte at full: 47 of them make 594 mA, 48 make 606. */
    @Test
    void theCeilingIsKeptOrNot() {
        CeilingCheck check = new CeilingCheck(Rowan.SETUP);
        assertTrue(check.judge(host(0, full(47))).isEmpty());
        assertEquals(594, check.mostMilliamps());
        assertTrue(check.judge(host(0, full(48))).isPresent());
    }

    /** Of 800 mA 500 are allowed: five eighths of 65535 are 40959.4. */
    @Test
    void theWorkLightsCeilingIsKeptOrNot() {
        CeilingCheck check = new CeilingCheck(Rowan.SETUP);
        assertTrue(check.judge(shown(Light.WHOLE, 7, 0, DARK, 40_959)).isEmpty());
        assertTrue(check.judge(shown(Light.WHOLE, 7, 0, DARK, 40_960)).isPresent());
    }

    @Test
    void whatTheControllerHadToDimIsAFault() {
        assertTrue(new CeilingCheck(Rowan.SETUP)
                .judge(shown(Light.DIMMED, 7, 0, DARK, 0))
                .isPresent());
    }

    @Test
    void onlyWhatWasSentMayBeShown() {
        SentCheck check = new SentCheck();
        check.sent(6, full(2), List.of(0));
        check.sent(7, full(3), List.of(0));
        assertTrue(check.judge(host(0, full(3))).isEmpty());
        assertTrue(check.judge(host(1, full(3))).isPresent(), "a second time");
    }

    @Test
    void aByteADutyOrATurnThatIsNotAsSentIsAFault() {
        SentCheck check = new SentCheck();
        check.sent(7, full(3), List.of(0));
        assertTrue(check.judge(host(0, full(4))).isPresent());
        assertTrue(check.judge(shown(Light.WHOLE, 8, 0, full(3), 0)).isPresent());
        assertTrue(check.judge(shown(Light.WHOLE, 7, 0, full(3), 1)).isPresent());
        assertTrue(check.judge(host(0, full(3))).isEmpty());
    }

    /** What the daemon's own writer writes arrives unchanged, however it is split. */
    @Test
    void theTapHearsEveryFrame() {
        Frame frame = new Frame(3 * Rowan.PIXELS, 1);
        Arrays.fill(frame.strip(), (byte) 200);
        frame.duties()[0] = 40_000;
        FrameParts parts = new FrameParts(3 * Rowan.PIXELS, 1, 1024);
        parts.begin(frame);
        int count = parts.next(9);
        SentCheck check = new SentCheck();
        Tap tap = new Tap(check);
        for (int i = 0; i < count; i++) {
            tap.take(new byte[] {parts.wire()[i]});
        }
        assertEquals(1, tap.frames());
        List<Integer> strip = Collections.nCopies(3 * Rowan.PIXELS, 200);
        assertTrue(check.judge(shown(Light.WHOLE, 9, 0, strip, 40_000)).isEmpty());
    }

    /** WCAG 2.2: three flashes within any second pass, four do not. */
    @Test
    void flashesAreCounted() {
        assertTrue(flashes(3).isEmpty());
        assertEquals(1, flashes(4).size());
    }

    /** Frames that the machine itself may have moved together are nobody's fault. */
    @Test
    void flashesOfAMachineThatStoodStillAreInconclusive() {
        heartbeat.late(SECOND, 100 * MILLI);
        assertTrue(flashes(4).isEmpty());
    }

    /** Dark, then this many flashes in one second, then dark for long. */
    private List<String> flashes(int count) {
        FlashCheck check = new FlashCheck(Rowan.SETUP, Rowan.FITTING, Rowan.VOLTS, heartbeat);
        List<String> wrong = new ArrayList<>();
        for (long millis = 0; millis < 9000; millis += 20) {
            long since = millis - 1000;
            boolean lit = since >= 0 && since < 900 && since * 2 * count / 900 % 2 == 0;
            check.judge(host(millis * MILLI, lit ? lit(Rowan.State.PRINTING, true, 255) : DARK))
                    .ifPresent(wrong::add);
        }
        assertAbove(1, check.judged());
        return wrong;
    }

    @ParameterizedTest
    @EnumSource
    void everyStateIsToldFromEveryOther(Rowan.State state) {
        for (Rowan.State other : Rowan.State.values()) {
            for (boolean edition : new boolean[] {false, true}) {
                for (int level : new int[] {100, 134, 255}) {
                    assertEquals(state == other, new Marker(other, edition).isOn(lit(state, edition, level)));
                }
                assertFalse(new Marker(other, edition).isOn(lit(state, !edition, 255)));
            }
        }
        assertFalse(new Marker(state, true).isOn(DARK));
        List<Integer> oneWrong = new ArrayList<>(lit(state, true, 255));
        oneWrong.set(50, 128);
        assertFalse(new Marker(state, true).isOn(oneWrong));
    }

    @Test
    void lateLightIsAFaultUnlessTheMachineStoodStill() {
        Recoveries recoveries = new Recoveries();
        Duration promise = Duration.ofSeconds(2);
        assertTrue(recoveries.add("A", promise, 2 * SECOND, 0).isEmpty());
        assertTrue(recoveries.add("A", promise, 2 * SECOND + 1, 0).isPresent());
        assertTrue(recoveries.add("A", promise, 3 * SECOND, SECOND - 1).isPresent());
        assertEquals(0, recoveries.inconclusive());
        assertTrue(recoveries.add("A", promise, 3 * SECOND, SECOND).isEmpty());
        assertEquals(1, recoveries.inconclusive());
        assertTrue(recoveries.toString().contains("4 × A"), recoveries.toString());
    }

    @Test
    void whatGrowsIsFoundWhateverItWobbles() {
        assertTrue(flatness(0.06).judge().isPresent());
        assertTrue(flatness(0).judge().isEmpty());
        assertTrue(flatness(-1).judge().isEmpty());
    }

    private static Flatness flatness(double perSecond) {
        Flatness flatness = new Flatness("threads", 3, 10);
        for (int second = 0; second < 10; second++) {
            flatness.add(second, 100 + 50 * second);
        }
        for (int second = 10; second < 70; second++) {
            flatness.add(second, 20 + perSecond * second + second % 3);
        }
        return flatness;
    }

    @Test
    void tooLittleIsNotJudged() {
        Flatness flatness = new Flatness("threads", 3, 10);
        IntStream.range(10, 10 + Flatness.FEWEST - 1).forEach(second -> flatness.add(second, 100.0 * second));
        assertFalse(flatness.isJudged());
        assertTrue(flatness.judge().isEmpty());
        assertTrue(flatness.toString().contains("too few to judge"));
        flatness.add(60, 6000);
        assertTrue(flatness.judge().isPresent());
    }

    /** A watcher, and a controller that shows what it is instructed to show. */
    @Test
    void theWatcherFindsFaultWithAnythingElseInTheCalm() {
        Shelf shelf = new Shelf();
        Violations violations = new Violations();
        try (Watcher watcher = new Watcher(shelf, heartbeat, violations)) {
            watcher.start();
            watcher.want(new Marker(Rowan.State.FAULT, true), 2 * SECOND);
            shelf.show(host(SECOND - 1, lit(Rowan.State.FAULT, true, 200)));
            shelf.show(host(SECOND, lit(Rowan.State.IDLE, true, 200)));
            shelf.show(host(2 * SECOND, lit(Rowan.State.FAULT, true, 200)));
            Await.until("right light", () -> watcher.rightSince().isPresent());
            assertEquals(2 * SECOND, watcher.rightSince().getAsLong());
            watcher.expectCalm();
            shelf.show(host(3 * SECOND, lit(Rowan.State.FAULT, true, 190)));
            Await.until("another frame", () -> watcher.frames() == 4);
            assertEquals(0, violations.count());
            shelf.show(shown(Light.DARK, 0, 4 * SECOND, DARK, 0));
            Await.until("the fault", () -> violations.count() == 1);
            assertTrue(watcher.rightSince().isEmpty());
            watcher.expectTrouble();
            shelf.show(host(5 * SECOND, lit(Rowan.State.IDLE, true, 200)));
            Await.until("another frame", () -> watcher.frames() == 5);
            assertEquals(1, violations.count());
        }
    }

    /** A controller without a line. */
    private static final class Shelf implements FarEnd {
        private final ConcurrentLinkedQueue<Entry> waiting = new ConcurrentLinkedQueue<>();

        void show(Entry entry) {
            waiting.add(entry);
        }

        @Override
        public List<Entry> drain(Consumer<String> violations) {
            List<Entry> drained = new ArrayList<>();
            for (Entry entry = waiting.poll(); entry != null; entry = waiting.poll()) {
                drained.add(entry);
            }
            return drained;
        }

        @Override
        public Path port() {
            return Path.of("nowhere");
        }

        @Override
        public void unplug() {}

        @Override
        public void plug() {}

        @Override
        public void restart() {}

        @Override
        public void hang() {}

        @Override
        public void goOn() {}

        @Override
        public void corrupt(long seed) {}

        @Override
        public boolean canRefuse() {
            return false;
        }

        @Override
        public void refuse() {}

        @Override
        public void restore() {}

        @Override
        public String figures() {
            return "";
        }

        @Override
        public void close() {}
    }
}
