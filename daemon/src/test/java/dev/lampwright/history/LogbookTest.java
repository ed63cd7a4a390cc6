package dev.lampwright.history;

import static dev.lampwright.printer.PrinterState.DONE;
import static dev.lampwright.printer.PrinterState.FAULT;
import static dev.lampwright.printer.PrinterState.HELD;
import static dev.lampwright.printer.PrinterState.IDLE;
import static dev.lampwright.printer.PrinterState.PRINTING;
import static dev.lampwright.printer.PrinterState.SILENT;
import static dev.lampwright.printer.PrinterState.STOPPED;
import static dev.lampwright.printer.PrinterState.WARMING;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.printer.PrinterState;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LogbookTest {
    private static final double UNKNOWN = Double.NaN;
    private static final Duration HOUR = Duration.ofHours(1);

    private TestClock clock = new TestClock();
    private Logbook logbook = new Logbook();

    /** The printer is seen doing something, which then lasts. */
    private void see(PrinterState state, double seconds) {
        see(state, "", UNKNOWN, seconds);
    }

    private void see(PrinterState state, String words, double progress, double seconds) {
        look(state, words, progress);
        clock.pass(seconds);
        look(state, words, progress);
    }

    private void look(PrinterState state, String words, double progress) {
        logbook.wallAhead(clock.wallMillis() - clock.millis());
        logbook.see(clock.millis(), new Sighting(state, words, progress));
    }

    private PastJob job() {
        List<PastJob> jobs = logbook.account().jobs();
        return jobs.get(jobs.size() - 1);
    }

    private PastFault fault() {
        List<PastFault> faults = logbook.account().faults();
        return faults.get(faults.size() - 1);
    }

    /** Another run continues from what this one has seen, some time later. */
    private void startAgain(double secondsLater) {
        Account kept =
                HistoryText.read(HistoryText.of(Accounts.of(logbook.account()))).of("");
        clock = clock.rebooted(secondsLater);
        logbook = new Logbook();
        logbook.restore(kept);
    }

    private void acknowledge(String by) {
        logbook.acknowledge(new Acknowledgement(new Stamp(clock.millis(), true), "page", "127.0.0.1", by));
    }

    private static Instant noonAnd(double seconds) {
        return TestClock.NOON.plusMillis(Math.round(seconds * 1000));
    }

    @Test
    void aJobGoesFromItsHeatingToItsEnd() {
        see(IDLE, 60);
        see(WARMING, "", 0, 240);
        see(PRINTING, "", 0.5, 3000);
        see(HELD, "", 0.5, 300);
        see(PRINTING, "", 0.99, 3000);
        see(DONE, "", 1, 60);
        see(IDLE, 60);
        assertEquals(1, logbook.account().jobs().size());
        assertEquals(noonAnd(60), job().began().instant());
        assertEquals(noonAnd(6600), job().until().instant());
        assertEquals(JobEnd.DONE, job().end());
        assertEquals(0.99, job().progress(), "the last that was reported during the job");
        assertFalse(job().beganUnseen() || job().endUnseen());
        assertEquals(0, job().unwatchedMillis());
    }

    @ParameterizedTest
    @CsvSource({
        "PRINTING, DONE, DONE",
        "PRINTING, STOPPED, STOPPED",
        "PRINTING, IDLE, UNTOLD",
        "HELD, STOPPED, STOPPED",
        "FAULT, IDLE, FAULT",
        "FAULT, STOPPED, FAULT",
        "FAULT, DONE, DONE",
        "FAULT, PRINTING, RUNNING"
    })
    void howAJobEndsIsWhatThePrinterReports(PrinterState last, PrinterState then, JobEnd end) {
        see(IDLE, 1);
        see(PRINTING, 100);
        see(last, 100);
        see(then, 1);
        assertEquals(end, job().end());
        assertEquals(1, logbook.account().jobs().size());
    }

    @Test
    void aJobUnderWayIsSaidToBe() {
        see(PRINTING, 100);
        assertTrue(job().beganUnseen());
        assertEquals(JobEnd.RUNNING, job().end());
        assertEquals(Duration.ofSeconds(100), job().took());
    }

    /** A gap is one of silence, or of lampwright not running: both are judged alike. */
    @ParameterizedTest
    @CsvSource({
        // progress before, after, seconds between, state afterwards, how the job ended, and how many jobs there are
        "0.40, 0.45,   600, PRINTING, RUNNING, 1",
        "0.40, 0.395,  600, PRINTING, RUNNING, 1",
        "0.40, 0.45, 36000, PRINTING, RUNNING, 1",
        "0.40, 0.45, 50000, PRINTING, UNSEEN, 2",
        "0.40, 0.10,   600, PRINTING, UNSEEN, 2",
        "NaN,  NaN,    500, PRINTING, RUNNING, 1",
        "NaN,  NaN,    700, PRINTING, UNSEEN, 2",
        "0.40, 0.40,  3600, FAULT,    RUNNING, 1",
        "0.40, NaN,   3600, DONE,     DONE,    1",
        "0.40, NaN,  50000, DONE,     UNSEEN,  1",
        "0.40, NaN,    600, STOPPED,  STOPPED, 1",
        "0.40, NaN,     20, IDLE,     UNSEEN,  1"
    })
    void whatHappensUnseenIsNotMadeUp(
            double before, double after, double gap, PrinterState then, JobEnd end, int jobs) {
        see(IDLE, 1);
        see(PRINTING, "", before, 100);
        see(SILENT, gap);
        see(then, "", after, 10);
        assertGap(end, gap, jobs);

        clock = new TestClock();
        logbook = new Logbook();
        see(IDLE, 1);
        see(PRINTING, "", before, 100);
        startAgain(gap);
        see(SILENT, 1);
        see(then, "", after, 10);
        assertGap(end, gap + 1, jobs);
    }

    private void assertGap(JobEnd end, double gap, int count) {
        List<PastJob> jobs = logbook.account().jobs();
        assertEquals(count, jobs.size(), jobs.toString());
        PastJob job = jobs.get(0);
        assertEquals(end, job.end());
        assertEquals(end != JobEnd.RUNNING, job.endUnseen());
        if (end == JobEnd.UNSEEN) {
            assertEquals(noonAnd(101), job.until().instant(), "when it was last seen");
            assertEquals(0, job.unwatchedMillis());
        } else {
            assertEquals(Math.round(gap * 1000), job.unwatchedMillis());
            assertEquals(Math.round((100 + gap) * 1000), job.took().toMillis() - (end == JobEnd.RUNNING ? 10_000 : 0));
        }
        if (count == 2) {
            assertTrue(jobs.get(1).beganUnseen());
        }
    }

    @Test
    void aFaultHasTheLastWordsThatThePrinterSaid() {
        see(IDLE, 10);
        see(FAULT, "", UNKNOWN, 1);
        see(FAULT, "bed too cold", UNKNOWN, 30);
        see(FAULT, "", UNKNOWN, 30);
        see(IDLE, 10);
        assertEquals("bed too cold", fault().words());
        assertEquals(noonAnd(10), fault().began().instant());
        assertEquals(noonAnd(71), fault().over().orElseThrow().instant());
        assertEquals(Optional.empty(), fault().acknowledged());
    }

    @Test
    void silenceDoesNotEndAFault() {
        see(FAULT, "door open", UNKNOWN, 10);
        see(SILENT, 100);
        assertEquals(Optional.empty(), fault().over());
        see(FAULT, "door open", UNKNOWN, 10);
        assertEquals(1, logbook.account().faults().size());
        see(SILENT, 100);
        see(IDLE, 1);
        assertTrue(fault().overUnseen());
    }

    @Test
    void whoAcknowledgesFirstCounts() {
        see(FAULT, "door open", UNKNOWN, 10);
        acknowledge("ada");
        clock.pass(5);
        acknowledge("ben");
        Acknowledgement first = fault().acknowledged().orElseThrow();
        assertEquals("ada (page at 127.0.0.1)", first.who());
        assertEquals(noonAnd(10), first.at().instant());
    }

    /** By ANSI/ISA-18.1 one acknowledgement covers everything that the alarm was on for; without lock-in it goes off with the fault. */
    @Test
    void whatTheAlarmWasOnForIsAcknowledgedTogether() {
        see(FAULT, "one", UNKNOWN, 1);
        see(IDLE, 1);
        logbook.alarmIsOff();
        see(FAULT, "two", UNKNOWN, 1);
        see(IDLE, 1);
        see(FAULT, "three", UNKNOWN, 1);
        logbook.alarmIsOff();
        acknowledge("ada");
        assertEquals(
                List.of(false, false, true),
                logbook.account().faults().stream()
                        .map(fault -> fault.acknowledged().isPresent())
                        .toList(),
                "the alarm was off in between");
        see(IDLE, 1);
        see(FAULT, "four", UNKNOWN, 1);
        see(IDLE, 1);
        see(FAULT, "five", UNKNOWN, 1);
        acknowledge("ben");
        assertEquals(
                List.of("ada", "ben", "ben"),
                logbook.account().faults().stream()
                        .flatMap(fault -> fault.acknowledged().stream())
                        .map(Acknowledgement::by)
                        .toList());
    }

    /** A board without a real-time clock starts where it stopped, and learns the time from the network a minute later. */
    @Test
    void aClockThatIsSetMovesAllThatThisRunHasSeenAndNothingElse() {
        see(IDLE, 100);
        see(PRINTING, "", 0.2, 1000);
        startAgain(0);
        see(IDLE, 10);
        see(WARMING, 20);
        see(PRINTING, 30);
        logbook.measure(60, 215, 100);
        clock.set(noonAnd(1100).plus(HOUR).plusSeconds(60));
        see(DONE, 0);
        Account account = logbook.account();
        assertEquals(2, account.jobs().size());
        assertEquals(noonAnd(100), account.jobs().get(0).began().instant());
        assertEquals(noonAnd(1100), account.jobs().get(0).until().instant());
        assertEquals(noonAnd(1110).plus(HOUR), account.jobs().get(1).began().instant());
        assertEquals(Duration.ofSeconds(50), account.jobs().get(1).took());
        assertEquals(
                List.of("IDLE 0", "PRINTING 100", "IDLE 4700", "WARMING 4710", "PRINTING 4730", "DONE 4760"),
                account.spans().stream()
                        .map(span -> span.state() + " "
                                + Duration.between(TestClock.NOON, span.from().instant())
                                        .toSeconds())
                        .toList());
        assertEquals(noonAnd(4760), account.curves().get(0).from().instant());
    }

    /** If the clock is behind, the time between the runs is negative. It says nothing, but the progress does. */
    @Test
    void aClockThatIsBehindAtTheStartDoesNotCutAJobOff() {
        see(IDLE, 1);
        see(PRINTING, "", 0.4, 100);
        startAgain(-86_400);
        see(PRINTING, "", 0.45, 60);
        clock.set(noonAnd(400));
        see(PRINTING, "", 0.46, 10);
        assertEquals(1, logbook.account().jobs().size());
        assertEquals(Duration.ofSeconds(409), job().took());
        see(IDLE, 1);
        assertTrue(logbook.account().spans().stream().noneMatch(span -> span.millis() < 0));
    }

    @Test
    void aMillionEventsTakeNoMoreRoom() {
        PrinterState[] all = PrinterState.values();
        for (int i = 0; i < 1_000_000; i++) {
            look(all[(i * 7 + i / 13) % all.length], "words " + i, i % 100 / 100.0);
            logbook.measure(i % 60, i % 215, i % 1000);
            clock.pass(0.1 + i % 3);
        }
        Account account = logbook.account();
        assertEquals(Logbook.MOST_JOBS, account.jobs().size());
        assertEquals(Logbook.MOST_FAULTS, account.faults().size());
        assertTrue(fault().words().startsWith("words 99"), fault().words());
        assertTrue(account.spans().size() <= Spans.MOST, account.spans().size() + " spans");
        assertTrue(account.spans().size() > Spans.MOST / 2, account.spans().size() + " spans");
        assertEquals(
                Curves.MOST,
                account.curves().stream().mapToInt(CurvePiece::length).sum());
    }

    @Test
    void aStateThatFlickersDoesNotPushOutTheDay() {
        see(IDLE, 3600);
        see(PRINTING, 7200);
        for (int i = 0; i < 5000; i++) {
            see(i % 2 == 0 ? HELD : PRINTING, 0.3);
        }
        see(STOPPED, 60);
        List<StateSpan> spans = logbook.account().spans();
        assertEquals(IDLE, spans.get(0).state());
        assertEquals(3_600_000, spans.get(0).millis());
        assertEquals(
                noonAnd(3600 + 7200 + 1500 + 60),
                spans.get(spans.size() - 1).to().instant());
        for (int i = 1; i < spans.size(); i++) {
            assertTrue(spans.get(i - 1).meets(spans.get(i)), "no time is lost");
        }
    }
}
