package dev.lampwright.printer;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.payload.PayloadPath;
import dev.lampwright.payload.Quantity;
import dev.lampwright.payload.Source;
import dev.lampwright.testing.Alder;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class ConditionsTest {
    private static final Source ALARM = bare("rowan/alarm");
    private static final Source PAUSE = bare("rowan/pause");
    private static final Source RUN = bare("rowan/run");
    private static final Source CODE = bare("rowan/code");

    private PrinterStatus status = PrinterStatus.nothingHeard();
    private long now;

    private static Source bare(String topic) {
        return new Source(topic, PayloadPath.BARE);
    }

    private static Bindings.OfCondition on(PrinterState state, Source... sources) {
        return new Bindings.OfCondition(
                state,
                List.of(sources).stream()
                        .map(source -> new Bindings.Sign(source, List.of("true", "1"), List.of()))
                        .toList());
    }

    private static StatusReader reader(Bindings.OfCondition... conditions) {
        return new StatusReader(new Bindings(List.of(), Map.of(), Map.of()).withConditions(List.of(conditions)));
    }

    private PrinterState hear(StatusReader reader, String topic, String payload) {
        status = reader.read(status, topic, Alder.bytes(payload), now++);
        return status.state();
    }

    /** Each flag has its own topic: the newest message must not hide what another flag said before. */
    @Test
    void aFaultStaysUntilItsOwnFlagGoes() {
        StatusReader reader = reader(on(PrinterState.FAULT, ALARM), on(PrinterState.PRINTING, RUN));
        hear(reader, "rowan/alarm", "false");
        assertEquals(PrinterState.PRINTING, hear(reader, "rowan/run", "true"));
        assertEquals(PrinterState.FAULT, hear(reader, "rowan/alarm", "true"));
        assertEquals(PrinterState.FAULT, hear(reader, "rowan/run", "true"));
        assertEquals(PrinterState.PRINTING, hear(reader, "rowan/alarm", "false"));
        assertEquals(PrinterState.IDLE, hear(reader, "rowan/run", "false"));
    }

    @Test
    void allPlacesOfAConditionHaveToBeMet() {
        StatusReader reader = reader(on(PrinterState.HELD, RUN, PAUSE), on(PrinterState.PRINTING, RUN));
        hear(reader, "rowan/pause", "1");
        assertEquals(PrinterState.HELD, hear(reader, "rowan/run", "1"));
        assertEquals(PrinterState.PRINTING, hear(reader, "rowan/pause", "0"));
    }

    @Test
    void anyOtherCodeIsAFaultAndItsText() {
        StatusReader reader = reader(new Bindings.OfCondition(
                PrinterState.FAULT, List.of(new Bindings.Sign(CODE, List.of(), List.of("0", "none")))));
        for (String fine : List.of("0", "", "none")) {
            assertEquals(PrinterState.IDLE, hear(reader, "rowan/code", fine), fine);
        }
        assertEquals(PrinterState.FAULT, hear(reader, "rowan/code", "17"));
        assertEquals(Optional.of("17"), status.faultText());
        hear(reader, "rowan/code", "0");
        assertEquals(Optional.empty(), status.faultText());
    }

    /** JSON's null means nothing. */
    @Test
    void aTextThatIsNotEmptyIsAFault() {
        Source text = new Source("rowan/job", PayloadPath.at("/trouble"));
        StatusReader reader = reader(new Bindings.OfCondition(
                PrinterState.FAULT, List.of(new Bindings.Sign(text, List.of("*"), List.of()))));
        assertEquals(PrinterState.IDLE, hear(reader, "rowan/job", "{\"trouble\": \"\"}"));
        assertEquals(PrinterState.FAULT, hear(reader, "rowan/job", "{\"trouble\": \"tip blocked\"}"));
        assertEquals(PrinterState.IDLE, hear(reader, "rowan/job", "{\"trouble\": null}"));
    }

    /** What the printer says in words holds while no condition is met. */
    @Test
    void countsBeforeTheWord() {
        StatusReader reader = new StatusReader(new Bindings(Alder.bindings().states(), Map.of(), Map.of())
                .withConditions(List.of(on(PrinterState.FAULT, ALARM))));
        assertEquals(PrinterState.PRINTING, hear(reader, Alder.JOB, "{\"phase\": \"RUN\"}"));
        assertEquals(PrinterState.FAULT, hear(reader, "rowan/alarm", "true"));
        assertEquals(PrinterState.FAULT, hear(reader, Alder.JOB, "{\"phase\": \"RUN\"}"));
        assertEquals(PrinterState.PRINTING, hear(reader, "rowan/alarm", "false"));
    }

    /** If only pause and fault have conditions, the readings decide the rest. */
    @Test
    void whatNoConditionShowsFollowsFromTheReadings() {
        StatusReader reader = new StatusReader(new Bindings(
                        List.of(),
                        Map.of(Quantity.JOB_PROGRESS, List.of(new Bindings.OfReading(bare("rowan/progress")))),
                        Map.of())
                .withConditions(List.of(on(PrinterState.HELD, PAUSE))));
        hear(reader, "rowan/pause", "0");
        assertEquals(PrinterState.PRINTING, hear(reader, "rowan/progress", "0.4"));
        assertEquals(PrinterState.HELD, hear(reader, "rowan/pause", "1"));
        assertEquals(PrinterState.HELD, hear(reader, "rowan/progress", "0.4"));
    }
}
