package dev.lampwright.engine;

import dev.lampwright.config.Config;
import dev.lampwright.link.ControllerLink;
import dev.lampwright.link.FrameSlot;
import dev.lampwright.link.Line;
import dev.lampwright.link.LinkStatus;
import dev.lampwright.printer.BrokerState;
import dev.lampwright.printer.PrinterClient;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.protocol.Setup;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.LongSupplier;

/**
 * The whole daemon, put together from a configuration: three threads that meet in two slots. The newest status goes from the
 * printer's side to the frame loop, the newest frame from there to the link.
 */
public final class Daemon implements AutoCloseable {
    private static final LongSupplier CLOCK = System::nanoTime;

    private final AtomicReference<PrinterStatus> status = new AtomicReference<>(PrinterStatus.nothingHeard());
    private final PrinterClient printer;
    private final FrameLoop frames;
    private final ControllerLink link;

    /**
     * Puts the daemon together; nothing runs yet.
     *
     * @param config what to run; for this daemon alone
     * @param line the line to the controller
     */
    public Daemon(Config config, Line line) {
        Setup setup = config.setup();
        FrameSlot slot = new FrameSlot(setup.stripBytes(), setup.dimmers().size());
        Chain chain = Chain.of(config, config.cues());
        link = new ControllerLink(line, setup, slot, CLOCK);
        frames = new FrameLoop(chain, status::get, slot, link::frameReady, CLOCK, config.framesPerSecond());
        printer = new PrinterClient(config.broker(), config.bindings(), CLOCK, status::set);
    }

    /** Starts all three threads. */
    public void start() {
        link.start();
        frames.start();
        printer.start();
    }

    /** Stops hearing, drawing and sending, in that order, in about two seconds at most. The controller is said goodbye. */
    @Override
    public void close() {
        printer.close();
        frames.close();
        link.close();
    }

    /**
     * What is known of the printer.
     *
     * @return the newest
     */
    public PrinterStatus status() {
        return status.get();
    }

    /**
     * How things stand with the broker.
     *
     * @return the newest
     */
    public BrokerState broker() {
        return printer.brokerState();
    }

    /**
     * The frame loop, to ask how it does.
     *
     * @return the same each time
     */
    public FrameLoop frames() {
        return frames;
    }

    /**
     * How the link to the controller does.
     *
     * @return a snapshot
     */
    public LinkStatus link() {
        return link.status();
    }
}
