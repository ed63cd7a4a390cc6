package dev.lampwright.metrics;

import dev.lampwright.broker.BrokerState;
import dev.lampwright.cue.AlarmState;
import dev.lampwright.desk.Ask;
import dev.lampwright.desk.AskedFor;
import dev.lampwright.engine.Daemon;
import dev.lampwright.engine.FrameLoop;
import dev.lampwright.engine.FrameReport;
import dev.lampwright.link.LinkState;
import dev.lampwright.link.LinkStatus;
import dev.lampwright.payload.OwnQuantity;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.protocol.LastReset;
import io.prometheus.metrics.model.snapshots.CounterSnapshot;
import io.prometheus.metrics.model.snapshots.CounterSnapshot.CounterDataPointSnapshot;
import io.prometheus.metrics.model.snapshots.GaugeSnapshot;
import io.prometheus.metrics.model.snapshots.GaugeSnapshot.GaugeDataPointSnapshot;
import io.prometheus.metrics.model.snapshots.Labels;
import io.prometheus.metrics.model.snapshots.MetricSnapshot;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.LongSupplier;

/**
 * The daemon's figures at one moment, with names by prometheus.io, "Metric and label naming": a prefix, base units, {@code total} for what
 * only grows. A counter restarts at 0 when its source is recreated, as Prometheus expects of counters.
 */
final class DaemonMetrics {
    /** The prefix of all names. */
    static final String PREFIX = "lampwright_";

    private static final double MILLIAMPS_PER_AMPERE = 1000;
    private static final double NANOS_PER_SECOND = 1e9;

    private final Daemon daemon;
    private final LongSupplier clock;

    /**
     * Prepares.
     *
     * @param daemon whose figures
     * @param clock the daemon's monotonic clock, in ns
     */
    DaemonMetrics(Daemon daemon, LongSupplier clock) {
        this.daemon = daemon;
        this.clock = clock;
    }

    /**
     * Reads all figures.
     *
     * @return the current values
     */
    List<MetricSnapshot> now() {
        List<MetricSnapshot> all = new ArrayList<>();
        addFrames(all, daemon.frames());
        addLink(all, daemon.link());
        addPrinter(all);
        addAsked(all, daemon.desk().asked());
        return all;
    }

    private static void addFrames(List<MetricSnapshot> all, FrameLoop loop) {
        FrameReport frame = loop.snapshot();
        all.add(counter("frames", "Frames made.", frame.frames()));
        all.add(counter("frames_left_out", "Frames not made because their time was past.", frame.skipped()));
        all.add(LateHistogram.of(PREFIX + "frame_late_seconds", "How late frames were begun.", loop.lateness()));
        all.add(counter("guard_dimmed_frames", "Frames dimmed for a ceiling.", frame.dimmedFrames()));
        all.add(counter(
                "guard_held_frames",
                "Frames held back because they would have flashed too often.",
                frame.heldFrames()));
        all.add(gauge(
                "strip_current_amperes",
                "Current that the last frame takes from the strip's supply.",
                frame.current().milliamps() / MILLIAMPS_PER_AMPERE));
        all.add(gauge(
                "strip_ceiling_amperes",
                "The most that the strip's supply may be asked for.",
                frame.current().ceilingMilliamps() / MILLIAMPS_PER_AMPERE));
        all.add(states(frame));
        all.add(alarms(frame));
    }

    private static void addLink(List<MetricSnapshot> all, LinkStatus link) {
        all.add(gauge(
                "link_up",
                "1 while the controller is set up and shows the frames it is sent.",
                link.state() == LinkState.LIT ? 1 : 0));
        all.add(counter("frames_sent", "Frames sent whole to the controller.", link.framesSent()));
        all.add(counter("frames_shown", "Frames that the controller acknowledged.", link.framesShown()));
        all.add(counter(
                "frames_replaced", "Frames replaced by a newer one before they were sent.", link.framesSkipped()));
        all.add(counter("link_lost_messages", "Messages to the controller without an answer.", link.messagesLost()));
        all.add(counter("link_refused_messages", "Messages that the controller refused.", link.refused()));
        all.add(counter(
                "link_broken_packets",
                "Packets from the controller with a wrong checksum or framing.",
                link.garbled()));
        all.add(counter(
                "controller_broken_packets",
                "Packets that the controller found broken, as it counts, modulo 65536.",
                link.broken()));
        all.add(counter("controller_overruns", "Overruns that the controller counts, modulo 65536.", link.overruns()));
        all.add(counter(
                "controller_dimmed_frames",
                "Frames that the controller had to dim to keep a ceiling, as it counts, modulo 65536.",
                link.dimmed()));
        link.lastReset().ifPresent(cause -> all.add(lastReset(cause)));
    }

    private static GaugeSnapshot lastReset(LastReset told) {
        GaugeSnapshot.Builder causes = GaugeSnapshot.builder()
                .name(PREFIX + "controller_last_reset")
                .help("1 for what last made the controller start.");
        for (LastReset cause : LastReset.values()) {
            if (cause != LastReset.UNKNOWN) {
                causes.dataPoint(GaugeDataPointSnapshot.builder()
                        .labels(Labels.of("cause", cause.word()))
                        .value(cause == told ? 1 : 0)
                        .build());
            }
        }
        return causes.build();
    }

    private void addPrinter(List<MetricSnapshot> all) {
        boolean connected = daemon.broker().phase() == BrokerState.Phase.CONNECTED;
        all.add(gauge("broker_connected", "1 while the broker is connected and subscribed to.", connected ? 1 : 0));
        all.add(counter("printer_messages", "Messages received from the broker.", daemon.messages()));
        addAges(all);
        addOwnReadings(all);
    }

    private void addAges(List<MetricSnapshot> all) {
        GaugeSnapshot.Builder ages = GaugeSnapshot.builder()
                .name(PREFIX + "printer_message_age_seconds")
                .help("Time since the last message from the printer.");
        boolean any = false;
        for (String printer : daemon.printers()) {
            PrinterStatus status = daemon.statuses().of(printer);
            if (status.heard()) {
                double seconds = Math.max(0, clock.getAsLong() - status.heardAtNanos()) / NANOS_PER_SECOND;
                ages.dataPoint(point(of(printer), seconds));
                any = true;
            }
        }
        if (any) {
            all.add(ages.build());
        }
    }

    /** The printer that it concerns, if printers have names. */
    private static Labels of(String printer, String... others) {
        Labels labels = Labels.of(others);
        return printer.isEmpty() ? labels : labels.add("printer", printer);
    }

    /** In the units in which they are reported: only the user knows what they are. */
    private void addOwnReadings(List<MetricSnapshot> all) {
        GaugeSnapshot.Builder readings = GaugeSnapshot.builder()
                .name(PREFIX + "own_reading")
                .help("Readings that the configuration names, in its own units.");
        boolean any = false;
        for (String printer : daemon.printers()) {
            Map<OwnQuantity, Double> own = daemon.ownReadings(printer);
            own.values().removeIf(value -> value.isNaN());
            own.forEach((quantity, value) ->
                    readings.dataPoint(point(of(printer, "reading", quantity.key(), "unit", quantity.unit()), value)));
            any |= !own.isEmpty();
        }
        if (any) {
            all.add(readings.build());
        }
    }

    /** Kinds without an ask have a count of 0 and no end. */
    private static void addAsked(List<MetricSnapshot> all, AskedFor asked) {
        GaugeSnapshot.Builder counts = GaugeSnapshot.builder()
                .name(PREFIX + "asked")
                .help("How many things people have asked for and not released, such as white lights.");
        GaugeSnapshot.Builder ends = GaugeSnapshot.builder()
                .name(PREFIX + "asked_until_timestamp_seconds")
                .help("When the last of them ends, since 1970; +Inf for those that stay until changed.");
        for (Ask ask : Ask.thatStay()) {
            Labels labels = Labels.of("ask", ask.word());
            counts.dataPoint(point(labels, asked.count(ask)));
            asked.endEpochSeconds(ask).ifPresent(end -> ends.dataPoint(point(labels, end)));
        }
        all.add(counts.build());
        all.add(ends.build());
    }

    private static GaugeDataPointSnapshot point(Labels labels, double value) {
        return GaugeDataPointSnapshot.builder().labels(labels).value(value).build();
    }

    private static GaugeSnapshot states(FrameReport frame) {
        GaugeSnapshot.Builder states =
                GaugeSnapshot.builder().name(PREFIX + "printer_state").help("1 for the state that is shown.");
        for (FrameReport.Printer printer : frame.printers()) {
            for (PrinterState state : PrinterState.values()) {
                states.dataPoint(point(of(printer.name(), "state", state.word()), state == printer.state() ? 1 : 0));
            }
        }
        return states.build();
    }

    private static GaugeSnapshot alarms(FrameReport frame) {
        GaugeSnapshot.Builder alarms = GaugeSnapshot.builder()
                .name(PREFIX + "printer_alarm")
                .help("1 for the state of the alarm of a fault, by ISA-18.1.");
        for (FrameReport.Printer printer : frame.printers()) {
            for (AlarmState alarm : AlarmState.values()) {
                alarms.dataPoint(point(of(printer.name(), "state", alarm.word()), alarm == printer.alarm() ? 1 : 0));
            }
        }
        return alarms.build();
    }

    /** The library adds {@code _total}. */
    private static CounterSnapshot counter(String name, String help, long value) {
        return CounterSnapshot.builder()
                .name(PREFIX + name)
                .help(help)
                .dataPoint(
                        CounterDataPointSnapshot.builder().value((double) value).build())
                .build();
    }

    private static GaugeSnapshot gauge(String name, String help, double value) {
        return GaugeSnapshot.builder()
                .name(PREFIX + name)
                .help(help)
                .dataPoint(GaugeDataPointSnapshot.builder().value(value).build())
                .build();
    }
}
