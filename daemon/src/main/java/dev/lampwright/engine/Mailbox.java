package dev.lampwright.engine;

import dev.lampwright.broker.Contact;
import dev.lampwright.desk.Answer;
import dev.lampwright.desk.Asker;
import dev.lampwright.desk.Desk;
import dev.lampwright.desk.Namesake;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.function.LongSupplier;

/** Passes asks from the broker to the desk, and notices when another daemon reports on this one's topic. */
final class Mailbox implements Contact.Asks {
    private final Desk desk;
    private final Namesake namesake;
    private final LongSupplier clock;

    /**
     * Creates one.
     *
     * @param desk handles asks
     * @param namesake notices another daemon with the same topics
     * @param clock monotonic time, in ns
     */
    Mailbox(Desk desk, Namesake namesake, LongSupplier clock) {
        this.desk = desk;
        this.namesake = namesake;
        this.clock = clock;
    }

    @Override
    public void status(String topic, byte[] payload, boolean retained) {
        namesake.saw(topic, payload, retained, clock.getAsLong());
    }

    /**
     * Retained asks are refused: they would be carried out again at every new connection, whatever was asked for since. The retain flag is
     * set only then: to existing subscribers the broker delivers a message with the flag off (MQTT 3.1.1, section 3.3.1.3), so a retained
     * ask is carried out once, when it is published.
     */
    @Override
    public String take(String word, byte[] payload, boolean retained) {
        if (retained) {
            return refusal(
                            word,
                            "this message is retained, and the broker sends it at every connection, so it is not done again; to remove it,"
                                    + " publish an empty retained message on the same topic, and ask without retain")
                    .json();
        }
        try {
            return desk.ask(word, text(payload), Asker.MQTT).json();
        } catch (CharacterCodingException e) {
            return refusal(word, "the message is not UTF-8 text; send it as UTF-8")
                    .json();
        }
    }

    private static String text(byte[] payload) throws CharacterCodingException {
        return StandardCharsets.UTF_8
                .newDecoder()
                .decode(ByteBuffer.wrap(payload))
                .toString();
    }

    private static Answer refusal(String word, String why) {
        return new Answer(word, false, why, Optional.empty(), Optional.empty());
    }
}
