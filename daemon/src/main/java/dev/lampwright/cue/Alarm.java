package dev.lampwright.cue;

/**
 * A fault as shown by an annunciator, following ANSI/ISA-18.1. A new fault alerts in any state, acknowledging silences an alert, and
 * resetting ends an acknowledged alarm whose fault is over. For one thread; allocates nothing.
 */
final class Alarm {
    private AlarmState state = AlarmState.NORMAL;
    private boolean abnormal;

    /**
     * Advances by one frame. Events in the same frame count in the order acknowledgement, fault or its end, reset: nobody can acknowledge
     * what has not been shown.
     *
     * @param sequence how the fault is shown
     * @param fault whether there is a fault now
     * @param acknowledge whether somebody has acknowledged since the last step
     * @param reset whether somebody has reset since the last step
     * @return the state of the alarm
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
     * The state of the alarm.
     *
     * @return as of the last step
     */
    AlarmState state() {
        return state;
    }

    /**
     * Continues from the state of another alarm.
     *
     * @param before the previous alarm
     */
    void takeOver(Alarm before) {
        state = before.state;
        abnormal = before.abnormal;
    }
}
