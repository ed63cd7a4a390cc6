package dev.lampwright.engine;

import dev.lampwright.config.LightSpec;
import dev.lampwright.cue.Wishes;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.printer.Statuses;
import java.util.Map;

/**
 * What printers do by one clock, for a chain that runs by another: a job of hours in a few seconds of light. Everything that depends on how
 * fast readings change is found by the printers' clock, and looks move by the chain's. For one thread.
 */
public final class OtherClock {
    private final FollowedPrinters printers;
    private Statuses heard = Statuses.NOTHING_HEARD;

    /**
     * Starts with printers that have not been heard.
     *
     * @param light the light whose printers it follows
     */
    public OtherClock(LightSpec light) {
        printers = FollowedPrinters.of(light);
    }

    /**
     * Takes in what is known at a time.
     *
     * @param statuses what is known about the printers
     * @param nanos by the printers' clock, never earlier than before
     */
    public void hear(Statuses statuses, long nanos) {
        heard = statuses;
        pass(nanos);
    }

    private void pass(long nanos) {
        printers.take(heard);
        printers.moveTo(nanos, Wishes.NONE);
    }

    /**
     * What a chain gets for its next frame. Also sets the chain's signals to their values by the printers' clock.
     *
     * @param chain a chain of the same light
     * @param nanos the time by the printers' clock
     * @param shownNanos the time of the frame, by the chain's clock
     * @return the state of each printer and the events that last, as if they had just been heard
     */
    public Statuses show(Chain chain, long nanos, long shownNanos) {
        pass(nanos);
        Statuses shown = Statuses.NOTHING_HEARD;
        for (int i = 0; i < printers.all().size(); i++) {
            FollowedPrinter printer = printers.get(i);
            chain.printers().get(i).signals().holdAs(printer.signals(), nanos);
            shown = shown.with(printer.name(), status(printer, nanos, shownNanos));
        }
        return shown;
    }

    private static PrinterStatus status(FollowedPrinter printer, long nanos, long shownNanos) {
        PrinterState state = printer.state();
        PrinterStatus shown = PrinterStatus.nothingHeard().withState(state, shownNanos);
        for (Map.Entry<String, Long> event : printer.status().eventEnds().entrySet()) {
            if (printer.status().eventAt(event.getKey(), nanos)) {
                shown = shown.withEvent(event.getKey(), shownNanos + event.getValue() - nanos, shownNanos);
            }
        }
        return shown;
    }
}
