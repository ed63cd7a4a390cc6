package dev.lampwright.config;

import dev.lampwright.cue.AlarmSequence;
import dev.lampwright.cue.AlarmState;
import java.util.Map;

/** The section {@code [alarm]}: how a fault is shown until it has been acknowledged and is over. */
final class AlarmSection {
    /** The states of an alarm, by word. */
    static final Map<String, AlarmState> STATES = Words.of(AlarmState.values(), AlarmState::word);

    private static final Map<String, AlarmSequence> SEQUENCES =
            Words.of(AlarmSequence.values(), AlarmSequence::designation);
    private static final Key<AlarmSequence> SEQUENCE = Key.word("sequence", SEQUENCES)
            .usual(AlarmSequence.A_4, AlarmSequence.A_4.designation())
            .example(
                    "\"A-4\"",
                    "ISA-18.1: \"A-4\" goes with the fault, \"A\" when seen; \"M\" stays until reset; \"R\" reports its end too, until reset");

    /** How a fault is shown. */
    static final Section SECTION =
            Section.of("alarm", "how a fault is shown until it has been acknowledged and is over", SEQUENCE);

    private AlarmSection() {}

    static AlarmSequence read(Table table) {
        return table.as(SECTION).get(SEQUENCE);
    }
}
