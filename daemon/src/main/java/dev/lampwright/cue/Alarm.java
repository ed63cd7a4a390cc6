package dev.lampwright.cue;

/**
 * A fault as an annunciator shows it: step by step by ANSI/ISA-18.1. A new fault alerts from wherever the alarm stands, acknowledging
 * stills an alert, and resetting ends what has been acknowledged and is over. For one thread; allocates nothing.
 */
final class Alarm {
    private AlarmState state = AlarmState.NORMAL;
    private boolean abnormal;

    /**
     * Moves on by one frame. What happens in the same frame counts in the order acknowledgement, fault or its end, reset: nobody can
     * acknowledge what has not been shown.
     *
     * @param sequence how the fault is shown
     * @param fault whether there is a fault now
     * @param acknowledge whether somebody has acknowledged since the last step
     * @param reset whether somebody has reset since the last step
     * @return where the alarm stands
     */
    AlarmState step(AlarmSequence sequence, boolean fault, boolean acknowledge, boolean reset) {
        if (acknowledge && state == AlarmState.ALERT) {
            state = AlarmState.ACKNOWLEDGED;
        }
        if (fault && !abnormal) {
            state = AlarmState.ALERT;
        }
        abnormal = fault;
        if (!fault) {
            end(sequence, reset);
        }
        return state;
    }

    private void end(AlarmSequence sequence, boolean reset) {
        if (state == AlarmState.ACKNOWLEDGED || (state == AlarmState.ALERT && !sequence.locksIn())) {
            state = sequence.afterwards();
        }
        boolean waits = state == AlarmState.ACKNOWLEDGED || state == AlarmState.RINGBACK;
        if (reset && waits) {
            state = AlarmState.NORMAL;
        }
    }

    /**
     * Where the alarm stands.
     *
     * @return as the last step left it
     */
    AlarmState state() {
        return state;
    }

    /**
     * Goes on where another alarm stands.
     *
     * @param before the alarm that was followed up to now
     */
    void takeOver(Alarm before) {
        state = before.state;
        abnormal = before.abnormal;
    }
}
