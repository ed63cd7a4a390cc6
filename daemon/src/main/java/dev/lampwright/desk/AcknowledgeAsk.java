package dev.lampwright.desk;

import dev.lampwright.cue.AlarmState;
import dev.lampwright.desk.Ask.Outcome;

/** That somebody has seen the fault. */
final class AcknowledgeAsk implements Ask.Deed {
    @Override
    public Outcome done(Request request, Circumstances circumstances, Standing before) throws RefusedException {
        request.word("acknowledge");
        if (circumstances.alarm() != AlarmState.ALERT) {
            throw new RefusedException("there is no fault that waits to be acknowledged");
        }
        return new Outcome(before.with(before.wishes().acknowledged()), "fault acknowledged");
    }
}
