package dev.lampwright.engine;

import dev.lampwright.config.LightSpec;
import dev.lampwright.config.PrinterLight;
import dev.lampwright.cue.Pressing;
import dev.lampwright.cue.Wishes;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.printer.Statuses;
import dev.lampwright.signal.PrinterSignals;
import dev.lampwright.signal.Signal;
import dev.lampwright.signal.Signals;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** The printers that a chain shows. For one thread; allocates nothing after construction. */
final class FollowedPrinters {
    /** Differs from everything that can be taken, so that what is taken next is treated as new. */
    private static final Statuses NONE_TAKEN = Statuses.of(PrinterStatus.nothingHeard());

    private final LightSpec light;
    private final Optional<PrinterSignals> together;
    private final List<FollowedPrinter> all = new ArrayList<>();
    private final List<Signal> reported;
    private final PrinterState[] states;
    private final PrinterStatus[] next;
    private Statuses taken = NONE_TAKEN;

    private FollowedPrinters(LightSpec light, Optional<PrinterSignals> together, Optional<Signals> only) {
        this.light = light;
        this.together = together;
        List<PrinterLight> printers = light.printers();
        for (int i = 0; i < printers.size(); i++) {
            Signals signals = together.isPresent() ? together.get().of(i) : only.orElseThrow();
            all.add(new FollowedPrinter(printers.get(i), signals, light.alarmSequence()));
        }
        reported = together.isPresent() ? light.named() : all.get(0).signals().all();
        states = new PrinterState[all.size()];
        Arrays.fill(states, PrinterState.SILENT);
        next = new PrinterStatus[all.size()];
        Arrays.fill(next, PrinterStatus.nothingHeard());
    }

    /** Printers that have not been heard yet. */
    static FollowedPrinters of(LightSpec light) {
        if (!light.isNamed()) {
            return new FollowedPrinters(light, Optional.empty(), Optional.of(new Signals(light.room(), light.own())));
        }
        PrinterSignals together = PrinterSignals.of(
                light.printers().stream().map(PrinterLight::room).toList(), light.own());
        return new FollowedPrinters(light, Optional.of(together), Optional.empty());
    }

    /** The printers of the next configuration. If they are the same, their signals continue. */
    static FollowedPrinters after(FollowedPrinters before, LightSpec light) {
        boolean same = rooms(light).equals(rooms(before.light)) && light.own().equals(before.light.own());
        return same
                ? new FollowedPrinters(
                        light, before.together, Optional.of(before.all.get(0).signals()))
                : of(light);
    }

    private static List<Object> rooms(LightSpec light) {
        return light.printers().stream()
                .flatMap(printer -> Stream.<Object>of(printer.name(), printer.room()))
                .toList();
    }

    List<FollowedPrinter> all() {
        return all;
    }

    /** A printer that never reports, for light that shows none. */
    FollowedPrinter nobody() {
        return new FollowedPrinter(light.printers().get(0), all.get(0).signals(), light.alarmSequence());
    }

    FollowedPrinter get(int printer) {
        return all.get(printer);
    }

    /** What each is doing, as of the last frame; kept up to date; must not be modified. */
    PrinterState[] states() {
        return states;
    }

    /** The signals that can be distinguished: with the names of the printers, if they have any. The same list each time. */
    List<Signal> reported() {
        return reported;
    }

    double value(Signal signal, long nanos) {
        return all.get(0).signals().value(signal, nanos);
    }

    /** Takes the newest of each by its name. */
    void take(Statuses statuses) {
        if (statuses != taken) {
            taken = statuses;
            for (int i = 0; i < next.length; i++) {
                next[i] = statuses.of(all.get(i).name());
            }
        }
    }

    /** Takes one status for all of them. */
    void take(PrinterStatus status) {
        taken = NONE_TAKEN;
        Arrays.fill(next, status);
    }

    /** Whether the statuses taken are those that the last frame showed. */
    boolean isSame() {
        for (int i = 0; i < next.length; i++) {
            if (next[i] != all.get(i).status()) {
                return false;
            }
        }
        return true;
    }

    /** Advances by a frame. */
    void moveTo(long nanos, Wishes wishes) {
        for (int i = 0; i < next.length; i++) {
            all.get(i).moveTo(next[i], nanos, wishes);
            states[i] = all.get(i).state();
        }
        if (together.isPresent()) {
            together.get().count(states);
        }
    }

    /** How long all states stay the same, in ns, if nothing new is heard. */
    long stillFor(long nanos) {
        long still = Signals.FOREVER;
        for (int i = 0; i < next.length; i++) {
            still = Math.min(still, all.get(i).stillFor(nanos));
        }
        return still;
    }

    /** The one that needs attention most: by its alarm, then by its state. */
    FollowedPrinter first() {
        FollowedPrinter first = all.get(0);
        for (int i = 1; i < next.length; i++) {
            FollowedPrinter other = all.get(i);
            if (Pressing.rank(other.alarm(), other.state()) < Pressing.rank(first.alarm(), first.state())) {
                first = other;
            }
        }
        return first;
    }

    /** Carries over the alarms of printers that keep their names. */
    void takeOver(FollowedPrinters before, Wishes asked) {
        for (FollowedPrinter printer : all) {
            Optional<FollowedPrinter> same = before.all.stream()
                    .filter(other -> other.name().equals(printer.name()))
                    .findFirst();
            same.ifPresentOrElse(printer::takeOver, () -> printer.beginWith(asked));
        }
    }
}
