package dev.lampwright.desk;

import dev.lampwright.cue.AlarmState;

/** That what was acknowledged and is over is to go. */
final class ResetAsk implements AskHandler {
    @Override
    public Outcome done(Request request, Circumstances circumstances, StandingWishes before) throws RefusedException {
        request.word("reset");
        if (circumstances.alarm() == AlarmState.NORMAL) {
            throw new RefusedException("there is no fault to reset");
        }
        if (circumstances.alarm() == AlarmState.ALERT) {
            throw new RefusedException("the fault has not been acknowledged; acknowledge it first");
        }
        return new Outcome(before.with(before.wishes().reset()), "reset, if the fault is over");
    }
}
