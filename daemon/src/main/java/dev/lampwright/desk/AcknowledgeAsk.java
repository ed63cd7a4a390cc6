package dev.lampwright.desk;

import dev.lampwright.cue.AlarmState;

/** That somebody has seen the fault. */
final class AcknowledgeAsk implements AskHandler {
    @Override
    public Outcome done(Request request, Circumstances circumstances, StandingWishes before) throws RefusedException {
        request.word("acknowledge");
        if (circumstances.alarm() != AlarmState.ALERT) {
            throw new RefusedException("there is no fault that waits to be acknowledged");
        }
        return new Outcome(before.with(before.wishes().acknowledged()), "fault acknowledged");
    }
}
