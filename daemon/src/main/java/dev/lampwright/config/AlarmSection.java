package dev.lampwright.config;

import dev.lampwright.cue.AlarmSequence;
import dev.lampwright.cue.AlarmState;
import java.util.Map;

/** The section {@code [alarm]}: how a fault is shown until it is seen and over. */
final class AlarmSection {
    /** Where an alarm can stand, by word. */
    static final Map<String, AlarmState> STATES = Words.of(AlarmState.values(), AlarmState::word);

    private static final Map<String, AlarmSequence> SEQUENCES =
            Words.of(AlarmSequence.values(), AlarmSequence::designation);
    private static final AlarmSequence USUAL = AlarmSequence.A_4;

    private AlarmSection() {}

    static AlarmSequence read(Table table) {
        return table.has("sequence")
                ? table.oneOf("sequence", SEQUENCES).orElse(USUAL)
                : table.defaultOf("sequence", USUAL, USUAL.designation());
    }
}
