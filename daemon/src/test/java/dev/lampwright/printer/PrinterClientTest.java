package dev.lampwright.printer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.broker.Brokers;
import dev.lampwright.broker.Contact;
import dev.lampwright.broker.HeardMessage;
import dev.lampwright.broker.OwnTopics;
import dev.lampwright.broker.Patience;
import dev.lampwright.payload.PayloadPath;
import dev.lampwright.payload.Quantity;
import dev.lampwright.payload.Source;
import dev.lampwright.testing.Alder;
import dev.lampwright.testing.LogLines;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

/** What becomes of messages, without a broker: the test passes them in, so their order is certain. */
class PrinterClientTest {
    private static final String LINK = "shop/alder/link";
    private static final String RUN = "{\"phase\":\"RUN\"}";

    private final AtomicLong clock = new AtomicLong();
    private PrinterStatus newest = PrinterStatus.nothingHeard();
    private final PrinterClient client = new PrinterClient(
            Alder.at(Alder.url(1)),
            new Bindings(
                            Alder.bindings().states(),
                            Alder.bindings().readings(),
                            Alder.bindings().events())
                    .withWill(new Bindings.OfWill(new Source(LINK, PayloadPath.BARE), List.of("offline"))),
            clock::incrementAndGet,
            status -> newest = status,
            Patience.USUAL);

    private void hearKept(String topic, String payload) {
        client.route(new HeardMessage(topic, Alder.bytes(payload), true));
    }

    private void hear(String topic, String payload) {
        client.route(new HeardMessage(topic, Alder.bytes(payload), false));
    }

    /** The broker sends retained messages in no particular order, so the will may come first. */
    @Test
    void whatTheBrokerHasKeptDoesNotBringBackAPrinterThatIsGone() {
        hearKept(LINK, "offline");
        hearKept(Alder.JOB, RUN);
        hearKept(Alder.HEAT, "{\"plate\":{\"now\":41.5}}");
        assertTrue(newest.isGone());
        assertEquals(PrinterState.SILENT, newest.state());
        assertEquals(41.5, newest.value(Quantity.BED_ACTUAL), "what it says is read all the same");
    }

    @Test
    void whatAPrinterSaysItselfBringsItBack() {
        hearKept(LINK, "offline");
        hear(Alder.JOB, RUN);
        assertFalse(newest.isGone());
        assertEquals(PrinterState.PRINTING, newest.state());
    }

    /** It need not be news: the fact that it reports at all shows that it is there. */
    @Test
    void theSameWordAgainBringsItBackIfItIsSaidNow() {
        hear(Alder.JOB, RUN);
        hear(LINK, "offline");
        hearKept(Alder.JOB, RUN);
        assertTrue(newest.isGone());
        hear(Alder.JOB, RUN);
        assertFalse(newest.isGone());
    }

    @Test
    void whatNoBindingWantsDoesNotBringItBack() {
        hear(LINK, "offline");
        hear("shop/alder/noise", "1");
        assertTrue(newest.isGone());
    }

    @Test
    void aFaultIsToldOnceAndEachNewTextOnce() {
        PrinterStatus well = PrinterStatus.nothingHeard().withState(PrinterState.PRINTING, 1);
        PrinterStatus fault = well.withState(PrinterState.FAULT, 2);
        PrinterStatus worded = fault.withFaultText("tip blocked", 3);
        assertEquals(Optional.of("the printer reports a fault"), HeardStatus.faultLine("", well, fault));
        assertEquals(Optional.of("the printer reports a fault: tip blocked"), HeardStatus.faultLine("", fault, worded));
        assertEquals(Optional.of("the printer reports a fault: tip blocked"), HeardStatus.faultLine("", well, worded));
        assertEquals(Optional.empty(), HeardStatus.faultLine("", worded, worded.heardAt(4)));
        assertEquals(Optional.empty(), HeardStatus.faultLine("", worded, worded.withFaultText("", 4)));
        assertEquals(Optional.empty(), HeardStatus.faultLine("", worded, worded.withState(PrinterState.PRINTING, 4)));
        assertEquals(Optional.empty(), HeardStatus.faultLine("", well, well.withFaultText("all is well", 4)));
    }

    @Test
    void theFirstMinuteIsThatOfOneConnection() {
        long second = 1_000_000_000L;
        PrinterClient.FirstMinute minute = new PrinterClient.FirstMinute();
        assertEquals(false, minute.over(false, 0));
        assertEquals(false, minute.over(true, 100 * second));
        assertEquals(false, minute.over(true, 159 * second));
        assertEquals(false, minute.over(false, 160 * second));
        assertEquals(false, minute.over(true, 161 * second));
        assertEquals(false, minute.over(true, 220 * second));
        assertEquals(true, minute.over(true, 221 * second));
        assertEquals(true, minute.over(true, 300 * second));
    }

    @Test
    void faultsThatComeAndGoFillNoLog() {
        try (LogLines log = new LogLines()) {
            for (int i = 0; i < 2000; i++) {
                hear(Alder.JOB, "{\"phase\":\"ALARM " + i + "\"}");
                hear(Alder.JOB, RUN);
            }
            assertEquals(10, log.with("the printer reports a fault").size());
            assertEquals(1, log.with("more faults of the printer follow").size());
            clock.addAndGet(61_000_000_000L);
            hear(Alder.JOB, "{\"phase\":\"ALARM 3\"}");
            assertEquals(
                    1,
                    log.with("1990 more faults of the printer in the last minute")
                            .size());
            assertEquals(11, log.with("the printer reports a fault").size());
        }
    }

    @Test
    void eachOfSeveralPrintersHearsItsOwnTopics() {
        List<String> told = new ArrayList<>();
        Bindings birch = new Bindings(
                List.of(),
                Map.of(
                        Quantity.JOB_PROGRESS,
                        List.of(new Bindings.OfReading(new Source("shop/birch/job", PayloadPath.BARE)))),
                Map.of());
        Map<String, Bindings> both = new LinkedHashMap<>();
        both.put("alder", Alder.bindings());
        both.put("birch", birch);
        try (PrinterClient two = new PrinterClient(
                Alder.at(Alder.url(1)),
                both,
                clock::incrementAndGet,
                (name, status) -> told.add(name + " " + status.state().word()),
                new Contact(new OwnTopics("lampwright"), "lost", "stopped", (word, payload, retained) -> ""),
                Brokers.eachItsOwn(Patience.USUAL))) {
            two.route(new HeardMessage(Alder.JOB, Alder.bytes(RUN), false));
            two.route(new HeardMessage("shop/birch/job", Alder.bytes("0.5"), false));
            two.route(new HeardMessage("shop/oak/job", Alder.bytes("0.5"), false));
            assertEquals(List.of("alder printing", "birch printing"), told);
            assertEquals(
                    Optional.of("birch reports a fault"),
                    HeardStatus.faultLine(
                            "birch",
                            PrinterStatus.nothingHeard(),
                            PrinterStatus.nothingHeard().withState(PrinterState.FAULT, 1)));
        }
    }
}
