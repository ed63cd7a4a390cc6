package dev.lampwright.desk;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;

/** What is done about something that is asked for. */
interface AskHandler {
    /** The deed for each ask. */
    Map<Ask, AskHandler> ALL = all();

    /**
     * Does it, or refuses and changes nothing.
     *
     * @param request what was asked
     * @param circumstances what is fitted and what goes on
     * @param before what was asked for up to now
     * @return what is asked for from now on, and a line that says so
     * @throws RefusedException if it can't be done
     */
    Outcome done(Request request, Circumstances circumstances, StandingWishes before) throws RefusedException;

    /**
     * What came of it.
     *
     * @param standing what is asked for from now on
     * @param text a line that says so
     */
    record Outcome(StandingWishes standing, String text) {}

    private static Map<Ask, AskHandler> all() {
        Map<Ask, AskHandler> all = new EnumMap<>(Ask.class);
        all.put(Ask.BRIGHTNESS, new BrightnessAsk());
        all.put(Ask.WORK, new WorkAsk());
        all.put(Ask.LOOK, new LookAsk());
        all.put(Ask.PIXELS, new PixelsAsk());
        all.put(Ask.ACKNOWLEDGE, new AcknowledgeAsk());
        all.put(Ask.RESET, new ResetAsk());
        all.put(Ask.QUIET, new QuietAsk());
        return Collections.unmodifiableMap(all);
    }
}
