package dev.lampwright.demo;

import dev.lampwright.engine.Daemon;
import dev.lampwright.engine.Lateness;
import dev.lampwright.link.LinkStatus;
import dev.lampwright.printer.PrinterState;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * The demo's last line.
 *
 * @param daemon whom to ask
 * @param display the strip
 */
record Summary(Daemon daemon, CheckingDisplay display) {
    @Override
    public String toString() {
        LinkStatus link = daemon.link();
        Lateness lateness = daemon.frames().lateness();
        String states = display.states().stream().map(PrinterState::word).collect(Collectors.joining(" "));
        return String.format(
                Locale.ROOT,
                "demo: shown %s; %d frames made, %d sent, %d acknowledged, %d dimmed by the controller, %d over the ceiling;"
                        + " most current %d mA; lateness p50 %.3f ms, p99 %.3f ms, p99.9 %.3f ms, %d ticks left out",
                states,
                daemon.frames().frames(),
                link.framesSent(),
                link.framesShown(),
                display.dimmed(),
                display.overCeiling(),
                daemon.frames().mostMilliamps(),
                lateness.microsAt(0.5) / 1000,
                lateness.microsAt(0.99) / 1000,
                lateness.microsAt(0.999) / 1000,
                daemon.frames().skipped());
    }
}
