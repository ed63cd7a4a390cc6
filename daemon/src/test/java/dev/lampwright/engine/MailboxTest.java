package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.cue.Wishes;
import dev.lampwright.desk.Desk;
import dev.lampwright.desk.DeskSettings;
import dev.lampwright.desk.KnownLooks;
import dev.lampwright.desk.Namesake;
import dev.lampwright.desk.Signature;
import dev.lampwright.look.Fitting;
import dev.lampwright.look.Zone;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;

class MailboxTest {
    private final AtomicReference<Wishes> slot = new AtomicReference<>();
    private final Mailbox mailbox = new Mailbox(
            new Desk(
                    DeskSettings.USUAL,
                    new Fitting(3, Map.of("strip", Zone.run(0, 2)), List.of()),
                    new KnownLooks(Set.of("idle"), Set.of()),
                    new Desk.Clocks(() -> 0, () -> Instant.EPOCH),
                    () -> Desk.Alarm.NONE,
                    slot::set),
            new Namesake(Signature.begun("lampwright")),
            () -> 0);

    @Test
    void asksTheDesk() {
        byte[] payload = "0.5".getBytes(StandardCharsets.UTF_8);
        assertEquals(
                "{\"ask\":\"brightness\",\"done\":true,\"now\":\"brightness 0.5\"}",
                mailbox.take("brightness", payload, false));
        assertEquals(0.5f, slot.get().brightness());
    }

    @Test
    void whatTheBrokerHadKeptIsRefused() {
        byte[] payload = "0.5".getBytes(StandardCharsets.UTF_8);
        assertEquals(
                "{\"ask\":\"brightness\",\"done\":false,\"why\":\"this message is retained, and the broker sends it at every connection, so it"
                        + " is not done again; to remove it, publish an empty retained message on the same topic, and ask without retain\"}",
                mailbox.take("brightness", payload, true));
        assertEquals(1, slot.get().brightness());
    }

    @Test
    void whatIsNotTextIsRefused() {
        assertEquals(
                "{\"ask\":\"look\",\"done\":false,\"why\":\"the message is not UTF-8 text; send it as UTF-8\"}",
                mailbox.take("look", new byte[] {(byte) 0xC3, 0x28}, false));
    }
}
