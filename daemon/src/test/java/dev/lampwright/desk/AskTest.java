package dev.lampwright.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.cue.AlarmState;
import dev.lampwright.look.Fitting;
import dev.lampwright.look.Fitting.DimmerUse;
import dev.lampwright.look.Zone;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class AskTest {
    private static final Fitting FITTING =
            new Fitting(10, Map.of("strip", Zone.run(0, 9), "bed", Zone.run(0, 4)), List.of(DimmerUse.white("work")));

    private static Ask.Circumstances circumstances(Ask ask) {
        Desk.Alarm alarm = ask == Ask.RESET
                ? new Desk.Alarm(AlarmState.ACKNOWLEDGED, false)
                : new Desk.Alarm(AlarmState.ALERT, true);
        return new Ask.Circumstances(
                FITTING,
                new KnownLooks(Set.of("done"), Set.of()),
                new Alarms(List.of(alarm)),
                true,
                1,
                new Now(0, Instant.EPOCH));
    }

    private static Ask.Outcome done(Ask ask, String payload) throws RefusedException {
        Request request = new Request(payload, ask.word());
        Ask.Outcome outcome = ask.done(request, circumstances(ask), StandingWishes.NONE);
        request.requireNothingLeft();
        return outcome;
    }

    @Test
    void theReferenceIsWhatTheCodeSays() throws IOException {
        assertEquals(AskReference.text(), AskReference.checkedIn(), AskReference::advice);
    }

    @ParameterizedTest
    @EnumSource
    void theExampleOfAMessageIsDone(Ask ask) throws RefusedException {
        assertFalse(done(ask, ask.about().message()).text().isEmpty());
    }

    @ParameterizedTest
    @EnumSource
    void theKeysThatAreDescribedAreTaken(Ask ask) throws RefusedException {
        String main = ask.about().message();
        String object = main.startsWith("{")
                ? main.substring(0, main.length() - 1)
                : "{\"%s\": %s".formatted(ask.word(), main.matches("[0-9.]+") ? main : '"' + main + '"');
        for (Ask.Key key : ask.keys()) {
            String value = switch (key) {
                case DIMMER -> "\"work\"";
                case UNTIL -> "\"changed\"";
                default -> "5";
            };
            String payload = object + ", \"" + key.key() + "\": " + value + "}";
            String words = done(ask, payload).text();
            String told = switch (key) {
                case DIMMER -> "work";
                case UNTIL -> " until changed";
                case FADE -> "";
                default -> " for 5 s";
            };
            assertTrue(words.contains(told), payload + ": " + words);
        }
    }

    @ParameterizedTest
    @EnumSource
    void helpIsALineWithoutAFullStop(Ask ask) {
        assertTrue(ask.help().length() <= 60, ask.help());
        assertFalse(ask.help().endsWith("."), ask.help());
        assertEquals(ask, Ask.of(ask.word()).orElseThrow());
    }
}
