package dev.lampwright.link;

import static dev.lampwright.testing.Bounds.assertAbove;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import dev.lampwright.demo.MemoryController;
import dev.lampwright.demo.MemoryController.Light;
import dev.lampwright.protocol.Complaint;
import dev.lampwright.protocol.Here;
import dev.lampwright.protocol.LastReset;
import dev.lampwright.protocol.Message;
import dev.lampwright.protocol.MessageReader;
import dev.lampwright.protocol.MessageType;
import dev.lampwright.protocol.MessageWriter;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.WhenSilent;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.Faults;
import dev.lampwright.testing.Recording;
import dev.lampwright.testing.Rewriter;
import dev.lampwright.upkeep.Backoff;
import java.time.Duration;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.LockSupport;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The link against an in-memory controller, over a line with every kind of trouble; {@code wire.md} says what is right. */
@Timeout(60)
class ControllerLinkTest {
    private static Here board(int mostPacketBytes, int credits, boolean listens) {
        return new Here(1, "1.0.0", 1, 300, mostPacketBytes, 6, credits, 10_000, listens);
    }

    private static Setup strip(int pixels, int ceilingMilliamps) {
        return new Setup(
                pixels,
                "GRB",
                List.of(1000, 1000, 1000),
                1000,
                0,
                60_000,
                WhenSilent.BEACON,
                List.of(ceilingMilliamps),
                List.of(new Setup.Dimmer(0, 1, 0)));
    }

    @Test
    void lightsAControllerAndSaysSo() {
        try (LogCapture log = new LogCapture(ControllerLink.class);
                LinkRig rig = new LinkRig().started()) {
            rig.publishUntilShown(7);
            Await.until("word of the first light", () -> !log.lines().isEmpty());
            rig.publishUntilShown(8);
            assertEquals(List.of("INFO the controller on memory is lit"), log.lines());
            rig.awaitRest();
            LinkStatus status = rig.link.status();
            assertEquals(LinkState.LIT, status.state());
            assertEquals("memory", status.port());
            assertEquals(MemoryController.BOARD, status.controller().orElseThrow());
            assertEquals("", status.trouble());
            assertEquals(0, status.messagesLost() + status.garbled() + status.overruns());
        }
    }

    @Test
    void saysOnceThatTheControllerStartedAfterATrouble() {
        Here hung = new Here(1, "1.0.0", 1, 300, 1024, 6, 1, 10_000, false, 1, LastReset.WATCHDOG);
        try (LogCapture log = new LogCapture(ControllerLink.class);
                LinkRig rig = new LinkRig(hung, strip(10, 2000)).started()) {
            rig.publishUntilShown(7);
            Await.until("word of the first light", () -> log.lines().size() > 1);
            assertEquals(
                    List.of(
                            "WARN the controller on memory started by its watchdog because its program hung",
                            "INFO the controller on memory is lit"),
                    log.lines());
            assertEquals(
                    LastReset.WATCHDOG,
                    rig.link.status().controller().orElseThrow().lastReset());
        }
    }

    @Test
    void goesOnAfterErrorsOfTheRuntime() {
        try (LinkRig rig = new LinkRig()) {
            rig.line.starve(3);
            rig.started().publishUntilShown(7);
            assertEquals(4, rig.line.opens.get());
        }
    }

    @Test
    void sendsEveryFrameThatIsNotReplacedByANewerOneAndNoOtherInOrder() {
        try (LinkRig rig = new LinkRig().started()) {
            rig.awaitState(LinkState.LIT);
            for (int value = 1; value <= 100; value++) {
                rig.publish(value);
                if (value % 10 == 0) {
                    int published = value;
                    Await.until("frame " + value, () -> rig.shows(published));
                }
            }
            List<Integer> shown = rig.recording.entries().stream()
                    .filter(Recording.Entry::fromHost)
                    .map(entry -> entry.strip().get(0))
                    .toList();
            assertEquals(shown.stream().sorted().distinct().toList(), shown);
            assertEquals(100, shown.size() + rig.link.status().framesSkipped());
        }
    }

    @Test
    void sendsTheLastFrameToAControllerThatComesLater() {
        try (LinkRig rig = new LinkRig()) {
            rig.line.unplug();
            rig.started().publish(9);
            rig.awaitTrouble("no port");
            rig.line.plug();
            Await.until("the frame", () -> rig.shows(9));
        }
    }

    @Test
    void longFramesGoInPartsAndAreNeverMixed() {
        try (LinkRig rig = new LinkRig(board(64, 3, true), strip(300, 60_000)).started()) {
            rig.awaitState(LinkState.LIT);
            Set<Integer> values = new HashSet<>();
            while (values.size() < 20) {
                rig.publish(1 + values.size());
                rig.recording.entries().stream()
                        .filter(Recording.Entry::fromHost)
                        .forEach(entry -> values.add(requireOneValue(entry)));
            }
            assertEquals(0, rig.link.status().messagesLost());
        }
    }

    private static int requireOneValue(Recording.Entry entry) {
        int value = entry.duties().get(0);
        assertEquals(Collections.nCopies(entry.strip().size(), value), entry.strip());
        return value;
    }

    @Test
    void aPartThatIsLostCostsOnlyItsFrame() {
        try (LinkRig rig = new LinkRig(board(64, 3, true), strip(300, 60_000)).started()) {
            rig.publishUntilShown(1);
            AtomicInteger writes = new AtomicInteger();
            rig.line.toController(bytes -> writes.incrementAndGet() == 8 ? new byte[0] : bytes);
            rig.publish(2);
            Await.until("the loss", () -> rig.link.status().messagesLost() > 0);
            rig.publishUntilShown(3);
            rig.recording.entries().stream()
                    .filter(Recording.Entry::fromHost)
                    .forEach(ControllerLinkTest::requireOneValue);
        }
    }

    /** Light may stay the same from then on, so nothing newer may come for a long time. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 4})
    void aFrameThatIsLostIsSentAgain(int credits) {
        try (LinkRig rig = new LinkRig(board(64, credits, true), strip(100, 60_000)).started()) {
            rig.publishUntilShown(1);
            rig.awaitRest();
            AtomicInteger writes = new AtomicInteger();
            rig.line.toController(bytes -> writes.incrementAndGet() < 3 ? new byte[0] : bytes);
            rig.publish(2);
            Await.until(() -> "the frame; " + rig.link.status(), () -> rig.shows(2), Duration.ofSeconds(20));
        }
    }

    @Test
    void aFrameThatIsShownIsNotSentAgain() {
        try (LinkRig rig = new LinkRig().started()) {
            rig.publishUntilShown(1);
            rig.awaitRest();
            AtomicInteger writes = new AtomicInteger();
            rig.line.toController(bytes -> {
                writes.incrementAndGet();
                return bytes;
            });
            for (int value = 2; value <= 4; value++) {
                rig.publish(value);
                rig.awaitRest();
                rig.passTime(Duration.ofSeconds(1));
            }
            assertEquals(3, writes.get());
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 4})
    void neverSendsWithoutCredit(int credits) {
        try (LinkRig rig = new LinkRig(board(64, credits, true), strip(100, 60_000)).started()) {
            rig.awaitState(LinkState.LIT);
            AtomicInteger unanswered = new AtomicInteger();
            AtomicInteger most = new AtomicInteger();
            rig.line.toController(bytes -> {
                most.accumulateAndGet(unanswered.incrementAndGet(), Math::max);
                return bytes;
            });
            rig.line.fromController(bytes -> {
                for (byte value : bytes) {
                    if (value == 0) {
                        unanswered.decrementAndGet();
                    }
                }
                return bytes;
            });
            for (int value = 1; value <= 20; value++) {
                rig.publishUntilShown(value);
            }
            assertEquals(credits, most.get(), "all credit there is, and no more");
        }
    }

    @Test
    void aControllerThatIsDeafWhileItDrivesLosesNothing() {
        try (LinkRig rig = new LinkRig(board(300, 1, false), strip(300, 60_000)).started()) {
            for (int value = 1; value <= 20; value++) {
                rig.publishUntilShown(value);
            }
            assertEquals(0, rig.link.status().overruns());
            assertEquals(0, rig.link.status().messagesLost());
        }
    }

    @Test
    void lightIsRightAgainAfterTheCableWasPulled() {
        try (LogCapture log = new LogCapture(ControllerLink.class);
                LinkRig rig = new LinkRig().started()) {
            rig.publishUntilShown(1);
            Await.until("word of the first light", () -> log.lines().size() == 1);
            rig.line.unplug();
            rig.awaitTrouble("no port memory");
            Await.until("some vain tries", () -> rig.line.opens.get() > 3);
            assertEquals(LinkState.DOWN, rig.link.status().state());
            rig.line.plug();
            rig.publishUntilShown(2);
            Await.until("the end of the trouble", () -> log.lines().size() > 2);
            String lit = "INFO the controller on memory is lit";
            assertEquals(List.of(lit, "WARN no port memory", lit), log.lines());
            assertEquals("", rig.link.status().trouble());
        }
    }

    @Test
    void pausesAreShortAgainOnceAFrameIsShown() {
        Backoff backoff = new Backoff(Duration.ofMillis(1), Duration.ofDays(1));
        try (LinkRig rig = new LinkRig(backoff)) {
            rig.line.unplug();
            rig.started();
            Await.until("some vain tries", () -> rig.line.opens.get() > 3);
            rig.line.plug();
            rig.publish(1);
            Await.until("an answer", () -> rig.link.status().framesShown() > 0);
        }
        assertEquals(Duration.ofMillis(1), backoff.next());
    }

    @Test
    void aLoosePlugIsLoggedOnceAMinuteAtMost() {
        try (LogCapture log = new LogCapture(ControllerLink.class);
                LinkRig rig = new LinkRig().started()) {
            String lit = "INFO the controller on memory is lit";
            String gone = "WARN no port memory";
            rig.publishUntilShown(1);
            Await.until("word of the first light", () -> !log.lines().isEmpty());
            for (int flap = 2; flap <= 5; flap++) {
                rig.line.unplug();
                rig.awaitTrouble("no port memory");
                rig.line.plug();
                rig.publishUntilShown(flap);
                rig.awaitTroublesEnd();
            }
            assertEquals(List.of(lit, gone, lit), log.lines());
            rig.line.unplug();
            rig.awaitTrouble("no port memory");
            rig.passTime(Duration.ofMinutes(1));
            Await.until("the word of a trouble that stays", () -> log.lines().size() == 4);
            assertEquals(gone, log.lines().get(3));
        }
    }

    @Test
    void aControllerThatStartsAnewIsSetUpAgain() {
        try (LinkRig rig = new LinkRig().started()) {
            rig.publishUntilShown(1);
            rig.memoryLine.reset();
            rig.publishUntilShown(2);
            assertEquals(1, rig.line.opens.get(), "the line stays open");
        }
    }

    @Test
    void aControllerThatStartsAnewUnheardIsSetUpAgain() {
        try (LogCapture log = new LogCapture(ControllerLink.class);
                LinkRig rig = new LinkRig().started()) {
            rig.publishUntilShown(1);
            rig.awaitRest();
            rig.line.fromController(new Rewriter(MessageType.HERE, body -> new byte[0]));
            rig.memoryLine.reset();
            Await.until("the refusal", () -> {
                rig.publish(2);
                return rig.link.status().state() == LinkState.ASKING;
            });
            rig.line.fromController(Faults.none());
            rig.publishUntilShown(3);
            assertEquals(List.of(), log.troubles(), "the line is good");
        }
    }

    @Test
    void aControllerThatGoesSilentIsLookedForAgain() {
        try (LinkRig rig = new LinkRig().started()) {
            rig.publishUntilShown(1);
            rig.line.mute(true);
            Await.until("the trouble", () -> {
                rig.publish(2);
                return rig.link.status().trouble().contains("gone silent");
            });
            Await.until("another try", () -> rig.line.opens.get() > 1);
            rig.line.mute(false);
            rig.publishUntilShown(3);
            assertAbove(0, rig.link.status().messagesLost());
        }
    }

    @Test
    void asksAgainAndAgainWhileNobodyAnswersAndThenOpensAnew() {
        try (LinkRig rig = new LinkRig()) {
            AtomicInteger asked = new AtomicInteger();
            rig.line.toController(bytes -> {
                asked.incrementAndGet();
                return new byte[0];
            });
            rig.line.mute(true);
            rig.started().awaitTrouble("no controller answers on memory");
            // Every 250 ms for five seconds, and the zero before it.
            assertTrue(asked.get() >= 15 && asked.get() <= 22, asked + " times");
            rig.line.toController(Faults.none());
            rig.line.mute(false);
            rig.publishUntilShown(1);
        }
    }

    @Test
    void aBoardThatTakesItsTimeToStartIsFoundWithoutOpeningAnew() {
        try (LinkRig rig = new LinkRig()) {
            AtomicInteger asked = new AtomicInteger();
            rig.line.toController(bytes -> asked.incrementAndGet() < 8 ? new byte[0] : bytes);
            rig.line.fromController(bytes -> asked.get() < 8 ? new byte[0] : bytes);
            rig.started().publishUntilShown(1);
            assertEquals(1, rig.line.opens.get());
        }
    }

    @Test
    void garbageDoesNotDisturb() {
        try (LinkRig rig = new LinkRig().started()) {
            rig.publishUntilShown(1);
            rig.awaitRest();
            byte[] garbage = new byte[5000];
            Arrays.fill(garbage, (byte) 0x55);
            rig.line.inject(garbage);
            rig.line.inject((byte) 0);
            rig.line.inject(wire(MessageType.UNKNOWN));
            rig.line.inject(wire(MessageType.SHOWN, 77));
            rig.line.inject(wire(MessageType.IN_FORCE, 77, 1, 2, 3));
            rig.publishUntilShown(2);
            Await.until("the garbage to be counted", () -> rig.link.status().garbled() >= 2);
            assertEquals(1, rig.line.opens.get());
            rig.awaitTrouble("are getting lost or corrupted");
        }
    }

    /** Where {@code SHOWN} has the low bytes of its three counters, by {@code wire.md}: broken, overruns, dimmed. */
    @ParameterizedTest
    @ValueSource(ints = {2, 4, 6})
    void whatTheControllerCountedForAnotherHostIsNoTrouble(int counter) {
        try (LogCapture log = new LogCapture(ControllerLink.class);
                LinkRig rig = new LinkRig()) {
            rig.line.fromController(Rewriter.set(MessageType.SHOWN, counter, 3));
            rig.started().publishUntilShown(1);
            rig.publishUntilShown(2);
            rig.awaitRest();
            LinkStatus status = rig.link.status();
            assertEquals(3, status.broken() + status.overruns() + status.dimmed());
            assertEquals("", status.trouble());
            assertEquals(List.of(), log.troubles());
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 4, 6})
    void countersThatStartAnewWithTheControllerAreNoTrouble(int counter) {
        try (LogCapture log = new LogCapture(ControllerLink.class);
                LinkRig rig = new LinkRig()) {
            rig.line.fromController(Rewriter.set(MessageType.SHOWN, counter, 5));
            rig.started().publishUntilShown(1);
            rig.awaitRest();
            rig.line.fromController(Faults.none());
            rig.memoryLine.reset();
            rig.publishUntilShown(2);
            rig.publishUntilShown(3);
            rig.publishUntilShown(4);
            LinkStatus status = rig.link.status();
            assertEquals(0, status.broken() + status.overruns() + status.dimmed());
            assertEquals(List.of(), log.troubles());
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 4})
    void whatTheControllerCountsOnceItIsLitIsTrouble(int counter) {
        try (LinkRig rig = new LinkRig()) {
            rig.line.fromController(Rewriter.set(MessageType.SHOWN, counter, 3));
            rig.started().publishUntilShown(1);
            rig.awaitRest();
            rig.line.fromController(Rewriter.set(MessageType.SHOWN, counter, 4));
            rig.publishUntilShown(2);
            rig.awaitTrouble("are getting lost or corrupted");
        }
    }

    @Test
    void thePartsOfAFrameThatNeverCouldBeShownAreTrouble() {
        try (LinkRig rig = new LinkRig(board(64, 1, true), strip(300, 60_000))) {
            AtomicInteger writes = new AtomicInteger();
            rig.line.toController(bytes -> writes.incrementAndGet() % 8 == 0 ? new byte[] {1, 0} : bytes);
            rig.started();
            Await.until("the trouble", () -> {
                rig.publish(1);
                return rig.link.status().trouble().contains("are getting lost or corrupted");
            });
            assertEquals(0, rig.link.status().framesShown());
        }
    }

    @Test
    void theFirstFrameThatTheControllerDimsIsTrouble() {
        try (LinkRig rig = new LinkRig()) {
            rig.line.fromController(Rewriter.set(MessageType.SHOWN, 0, 2));
            rig.started().publish(1);
            rig.awaitTrouble("dims frames to keep the ceiling, which lampwright should have done");
        }
    }

    @Test
    void anAnswerNotWaitedForCountsForNothing() {
        try (LinkRig rig = new LinkRig().started()) {
            rig.publishUntilShown(1);
            rig.awaitRest();
            LinkStatus before = rig.link.status();
            for (int sequence : new int[] {100, 200}) {
                rig.line.inject(wire(MessageType.SHOWN, sequence, 1, 0, 9, 0, 9, 0, 9));
                rig.line.inject(wire(MessageType.COMPLAINT, sequence, 5, 0, 0));
            }
            rig.line.inject(wire(MessageType.UNKNOWN));
            Await.until("what was injected", () -> rig.link.status().garbled() == 1);
            LinkStatus after = rig.link.status();
            assertEquals(before.framesShown(), after.framesShown());
            assertEquals(0, after.broken() + after.dimmed());
            assertEquals(LinkState.LIT, after.state());
        }
    }

    @Test
    void aFloodDoesNotKeepFramesFromGoingOut() {
        try (LinkRig rig = new LinkRig().started()) {
            rig.publishUntilShown(1);
            rig.line.flood(true);
            rig.publishUntilShown(2);
            rig.line.flood(false);
            rig.publishUntilShown(3);
        }
    }

    @Test
    void doesNotSpinWhileNobodyAnswers() {
        try (LinkRig rig = new LinkRig()) {
            AtomicInteger asked = new AtomicInteger();
            rig.line.toController(bytes -> {
                asked.incrementAndGet();
                return new byte[0];
            });
            rig.line.mute(true);
            rig.started();
            Await.until("some questions", () -> asked.get() >= 6);
            assertTrue(rig.line.reads.get() <= 4 * asked.get(), rig.line.reads + " reads");
        }
    }

    @Test
    void doesNotSpinWhileThereIsNothingToSend() {
        try (LinkRig rig = new LinkRig().started()) {
            rig.publishUntilShown(1);
            rig.awaitRest();
            int before = rig.line.reads.get();
            long started = System.nanoTime();
            Await.until("half a second", () -> System.nanoTime() - started > 500_000_000);
            // One check every tenth of a second; a slow machine checks less often.
            assertTrue(rig.line.reads.get() - before <= 20, rig.line.reads.get() - before + " reads");
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void lightIsRightAgainAfterABadLine(long seed) {
        try (LinkRig rig = new LinkRig(board(64, 2, true), strip(50, 60_000)).started()) {
            rig.publishUntilShown(1);
            rig.line.toController(Faults.all(seed, 0.003));
            rig.line.fromController(Faults.all(seed + 100, 0.003));
            Await.until("some trouble", () -> {
                rig.publish(2);
                LinkStatus status = rig.link.status();
                return status.messagesLost() > 3 && status.garbled() > 1;
            });
            rig.line.toController(Faults.none());
            rig.line.fromController(Faults.none());
            rig.publishUntilShown(3);
        }
    }

    @Test
    void anotherVersionIsRefusedWithWordsAndTriedAgainSlowly() {
        Here future = new Here(2, "9.0.0", 0, 300, 1024, 6, 1, 10_000, false);
        try (LogCapture log = new LogCapture(ControllerLink.class);
                LinkRig rig = new LinkRig(future, LinkRig.SETUP).started()) {
            rig.publish(1);
            rig.awaitTrouble("speaks version 2 of the wire, and lampwright version 1");
            Await.until("another try", () -> rig.line.opens.get() > 1);
            Await.until("its end", () -> rig.link.status().state() == LinkState.DOWN);
            assertFalse(rig.recording.entries().stream().anyMatch(Recording.Entry::fromHost));
            assertEquals(1, log.lines().size());
        }
    }

    @Test
    void aStripTooLongForTheBoardIsRefusedWithWords() {
        try (LinkRig rig = new LinkRig(board(1024, 1, false), strip(301, 2000)).started()) {
            rig.awaitTrouble("the controller has room for 900");
        }
    }

    @Test
    void aSetupThatIsRefusedIsSaid() {
        try (LinkRig rig = new LinkRig()) {
            rig.line.toController(Rewriter.set(MessageType.SETUP, 20, 3));
            rig.started().awaitTrouble("the controller refused a value it cannot take (detail 20)");
            rig.awaitTrouble(
                    "it does not take [controller] when_silent: change that, or flash the firmware of this version");
            rig.line.toController(Faults.none());
            rig.publishUntilShown(1);
        }
    }

    /** The frame loop learns that a controller was lit, and how late frames are shown. */
    @Test
    void whatBecomesOfFramesIsKnown() {
        try (LinkRig rig = new LinkRig().started()) {
            rig.publishUntilShown(1);
            assertTrue(rig.slot.deliveries().takeRelit());
            Await.until("a delivery", () -> {
                rig.publish(2);
                return rig.slot.deliveries().takeLatest() > 0;
            });
            assertFalse(rig.slot.deliveries().takeRelit(), "still the same light");
        }
    }

    /** How a controller may answer each frame, by wire.md, COMPLAINT and SHOWN, and how it may not. */
    static Stream<Arguments> refusals() {
        return Stream.of(
                arguments(
                        complaints(6, 30),
                        "the controller refused a message of the wrong length (detail 30); flash the firmware"),
                arguments(
                        complaints(8, 0),
                        "the controller refused a part of a frame out of order (detail 0); flash the firmware of this version"),
                arguments(
                        complaints(5, 0),
                        "the controller refused a frame before it was set up (detail 0); it loses its set-up, so check"),
                arguments(
                        complaints(77, 3),
                        "the controller refused a reason this version does not know (code 77, detail 3); flash the firmware"),
                arguments(Rewriter.set(MessageType.SHOWN, 0, 200), "its answers do not follow the protocol; flash the"),
                arguments(
                        Rewriter.set(MessageType.SHOWN, 0, 3),
                        "it accepts them and does not report that it shows them; flash the firmware"));
    }

    private static UnaryOperator<byte[]> complaints(int code, int detail) {
        return Rewriter.to(
                MessageType.SHOWN, MessageType.COMPLAINT, body -> new byte[] {(byte) code, 0, (byte) detail});
    }

    @ParameterizedTest(name = "{1}")
    @MethodSource("refusals")
    void aControllerThatShowsNothingIsNotLit(UnaryOperator<byte[]> answers, String words) {
        try (LogCapture log = new LogCapture(ControllerLink.class);
                LinkRig rig = new LinkRig().started()) {
            rig.publishUntilShown(1);
            Await.until("word of the first light", () -> !log.lines().isEmpty());
            rig.awaitRest();
            rig.line.fromController(answers);
            Await.until("the trouble", () -> {
                rig.publish(2);
                return rig.link.status().state() == LinkState.UNLIT;
            });
            rig.awaitTrouble("the controller on memory shows none of the frames it is sent: ");
            rig.awaitTrouble(words);
            for (int i = 0; i < 100; i++) {
                rig.publish(3);
                assertEquals(LinkState.UNLIT, rig.link.status().state());
                LockSupport.parkNanos(1_000_000);
            }
            rig.line.fromController(Faults.none());
            rig.publishUntilShown(4);
            Await.until("lit again", () -> rig.link.status().state() == LinkState.LIT);
            String lit = "INFO the controller on memory is lit";
            Await.until("word of it", () -> Collections.frequency(log.lines(), lit) == 2);
            String unlit = "WARN the controller on memory shows none of the frames it is sent: ";
            assertEquals(
                    1,
                    log.troubles().stream()
                            .filter(line -> line.startsWith(unlit))
                            .count(),
                    log.troubles()::toString);
        }
    }

    @Test
    void aControllerThatStartsAgainAndAgainIsToldOnceAndNotHurried() {
        Here hung = new Here(1, "1.0.0", 1, 300, 1024, 6, 1, 10_000, false, 1, LastReset.WATCHDOG);
        try (LogCapture log = new LogCapture(ControllerLink.class);
                LinkRig rig = new LinkRig(hung, strip(10, 2000))) {
            AtomicInteger setups = new AtomicInteger();
            rig.line.toController(new Rewriter(MessageType.SETUP, body -> {
                setups.incrementAndGet();
                return body;
            }));
            rig.line.fromController(complaints(5, 0));
            rig.started();
            Await.until("the trouble", () -> {
                rig.publish(2);
                return rig.link.status().state() == LinkState.UNLIT;
            });
            int before = setups.get();
            Await.until("some more tries", () -> {
                rig.publish(2);
                return setups.get() > before + 2;
            });
            assertEquals(2, log.troubles().size(), log.troubles()::toString);
            assertTrue(log.troubles().get(0).contains("started by its watchdog"), log.troubles()::toString);
        }
    }

    @Test
    void aSlowLineIsGivenItsTime() {
        Tally tally = new Tally();
        AtomicLong now = new AtomicLong();
        ShownWatch watch = new ShownWatch("memory", tally, now::get);
        watch.look(0);
        now.addAndGet(5_000_000_000L);
        watch.look(0);
        assertFalse(watch.isOverdue(), "nothing was sent");
        tally.partsSent.incrementAndGet();
        watch.look(2_000_000_000);
        now.addAndGet(2_900_000_000L);
        watch.look(2_000_000_000);
        assertFalse(watch.isOverdue());
        now.addAndGet(200_000_000);
        watch.look(2_000_000_000);
        assertTrue(watch.isOverdue());
        tally.framesShown.incrementAndGet();
        watch.look(2_000_000_000);
        assertFalse(watch.isOverdue());
    }

    @Test
    void aSetupThatIsNotTakenOverLightsNothing() {
        try (LinkRig rig = new LinkRig()) {
            rig.line.fromController(Rewriter.set(MessageType.IN_FORCE, 0, 1));
            rig.started().publish(1);
            rig.awaitTrouble("pixels asked 10, in force 266");
            assertFalse(rig.recording.entries().stream().anyMatch(Recording.Entry::fromHost));
        }
    }

    @Test
    void aGreetingThatIsRefusedIsSaidWithWhatToDo() {
        try (LinkRig rig = new LinkRig()) {
            rig.line.fromController(
                    Rewriter.to(MessageType.HERE, MessageType.COMPLAINT, body -> new byte[] {77, 0, 3}));
            rig.started().awaitTrouble("(code 77, detail 3); flash the firmware of this version of lampwright");
        }
    }

    @Test
    void aSetupThatIsNotAnsweredIsSaidWithWhatToCheck() {
        try (LinkRig rig = new LinkRig()) {
            rig.line.fromController(Rewriter.to(MessageType.IN_FORCE, MessageType.UNKNOWN, body -> body));
            rig.started().awaitTrouble("does not answer the set-up request: check the cable");
            rig.line.fromController(Faults.none());
            rig.publishUntilShown(1);
        }
    }

    @Test
    void aCeilingBelowTheDarkStripIsSaid() {
        try (LinkRig rig = new LinkRig(board(1024, 1, false), strip(10, 5)).started()) {
            Await.until("a dark frame", () -> {
                rig.publish(50);
                return rig.recording.lastIs(entry -> entry.light() == Light.DIMMED);
            });
            rig.awaitTrouble("the dark strip alone is over ceiling_mA");
        }
    }

    @Test
    void aComplaintThatAnswersNothingGivesNoCreditBack() {
        try (LinkRig rig = new LinkRig().started()) {
            rig.publishUntilShown(1);
            rig.awaitRest();
            MessageWriter writer = new MessageWriter(8);
            int count = Complaint.BROKEN.write(writer, 200, 7);
            rig.line.inject(Arrays.copyOf(writer.wire(), count));
            rig.publishUntilShown(2);
            assertEquals(0, rig.link.status().messagesLost());
        }
    }

    @Test
    void anErrorOfItsOwnDoesNotEndTheLink() {
        try (LinkRig rig = new LinkRig().started()) {
            rig.publishUntilShown(1);
            rig.line.breakDown(true);
            rig.awaitTrouble("internal error (please report it)");
            rig.line.breakDown(false);
            rig.publishUntilShown(2);
        }
    }

    @Test
    void closingLeavesWhatTheSetupSaysForSilence() {
        LinkRig rig = new LinkRig().started();
        rig.publishUntilShown(1);
        rig.close();
        assertEquals(Light.BEACON, rig.recording.last().light());
        assertEquals(LinkState.DOWN, rig.link.status().state());
    }

    /** The host's goodbye, wire.md, REST: one byte, 0 dark, 1 the last frame, 2 beacon. */
    @ParameterizedTest
    @EnumSource
    void closingTellsTheControllerWhatToShow(WhenSilent what) {
        List<String> goodbyes = new CopyOnWriteArrayList<>();
        try (LinkRig rig = new LinkRig().started()) {
            rig.publishUntilShown(1);
            MessageReader reader = new MessageReader(2048);
            rig.line.toController(bytes -> {
                reader.accept(bytes, 0, bytes.length, new Goodbyes(goodbyes));
                return bytes;
            });
            rig.link.close(what);
        }
        assertEquals(List.of("REST " + what.code()), goodbyes);
    }

    /** Records what the host sends when it stops. */
    private record Goodbyes(List<String> heard) implements MessageReader.Handler {
        @Override
        public void message(Message message) {
            if (message.type() == MessageType.REST) {
                heard.add(message.type() + " " + message.u8Or(0, -1));
            }
        }

        @Override
        public void broken(int bytes) {
            // A packet whose beginning was sent before this listened.
        }
    }

    @Test
    void closesWhileNobodyAnswers() {
        LinkRig rig = new LinkRig();
        rig.line.mute(true);
        rig.started().awaitState(LinkState.ASKING);
        rig.close();
        Await.until("the thread's end", () -> threads().noneMatch(thread -> thread.equals("link")));
    }

    @Test
    void closesALineThatHangs() {
        HangingLine line = new HangingLine();
        ControllerLink link = new ControllerLink(line, LinkRig.SETUP, new FrameSlot(30, 1), System::nanoTime);
        link.start();
        Await.until("the hang", line::hangs);
        link.close();
        line.letGo();
    }

    private static Stream<String> threads() {
        return Thread.getAllStackTraces().keySet().stream().map(Thread::getName);
    }

    private static byte[] wire(MessageType type) {
        return wire(type, 0);
    }

    private static byte[] wire(MessageType type, int sequence, int... body) {
        MessageWriter writer = new MessageWriter(64);
        writer.begin(type, sequence);
        for (int value : body) {
            writer.u8(value);
        }
        return Arrays.copyOf(writer.wire(), writer.finish());
    }
}
