package dev.lampwright.tool.replay;

import dev.lampwright.config.Config;
import dev.lampwright.config.LightSpec;
import dev.lampwright.config.PrinterLight;
import dev.lampwright.cue.Wishes;
import dev.lampwright.desk.WishLines;
import dev.lampwright.engine.Chain;
import dev.lampwright.engine.Delivery;
import dev.lampwright.engine.Early;
import dev.lampwright.engine.Ticks;
import dev.lampwright.look.LookSpec;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.StatusLines.Entry;
import dev.lampwright.printer.Statuses;
import dev.lampwright.protocol.Frame;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;

/** Plays a timeline through the chain, without a clock: frame by frame as the daemon makes them, byte for byte. For one thread. */
public final class Replay {
    private static final long FARTHEST_NANOS = TimeUnit.SECONDS.toNanos(1);

    private final int framesPerSecond;
    private final Chain chain;
    private final List<Entry> messages;
    private final List<Entry> gaps;
    private final List<WishLines.Entry> asked;
    private final List<Delivery> deliveries;
    private final Map<Long, Long> early;
    private final List<String> printers;
    private Statuses statuses = Statuses.NOTHING_HEARD;
    private Wishes wishes = Wishes.NONE;
    private long tick = -1;
    private int nextMessage;
    private int nextGap;
    private int nextAsked;
    private int nextDelivery;

    private Replay(Config config, LightSpec light, Timeline timeline) {
        framesPerSecond = config.framesPerSecond();
        printers = light.printers().stream().map(PrinterLight::name).toList();
        chain = Chain.of(config.setup(), light, framesPerSecond);
        messages = timeline.entries().stream()
                .filter(entry -> entry.leftOut() == 0)
                .toList();
        asked = timeline.wishes();
        asked.forEach(entry -> chain.prepare(entry.wishes()));
        deliveries = timeline.deliveries();
        early = timeline.early().stream()
                .collect(Collectors.toMap(Early::tick, Early::nanos, (first, second) -> second));
        gaps = timeline.entries().stream().filter(entry -> entry.leftOut() > 0).toList();
    }

    /**
     * Plays a timeline as shown by the cues of a configuration.
     *
     * @param config the configuration
     * @param timeline what the printer reports
     * @return a replay before its first frame
     * @throws IOException if the timeline was recorded at a different frame rate
     */
    public static Replay of(Config config, Timeline timeline) throws IOException {
        return of(config, config.light(), timeline);
    }

    /**
     * Plays a timeline in one look.
     *
     * @param config the configuration
     * @param look one of its looks
     * @param timeline what the printer reports
     * @return a replay before its first frame
     * @throws IOException if the timeline was recorded at a different frame rate
     */
    public static Replay of(Config config, LookSpec look, Timeline timeline) throws IOException {
        return of(config, config.light().showing(look), timeline);
    }

    private static Replay of(Config config, LightSpec light, Timeline timeline) throws IOException {
        Replay replay = new Replay(config, light, timeline);
        replay.requireRate(timeline.name());
        replay.requirePrinters(timeline.name());
        return replay;
    }

    private void requirePrinters(String name) throws IOException {
        Optional<String> unknown = messages.stream()
                .map(Entry::printer)
                .filter(printer -> !printer.isEmpty() && !printers.contains(printer))
                .findFirst();
        if (unknown.isPresent()) {
            throw new IOException(name + ": mentions the printer " + unknown.get()
                    + ", which is not in the configuration; give the configuration that it was recorded with");
        }
    }

    /** A message is shown in the next frame; if frame and time are far apart, the recording has a different frame rate. */
    private void requireRate(String name) throws IOException {
        if (messages.isEmpty()) {
            return;
        }
        Entry last = messages.get(messages.size() - 1);
        Optional<Long> apart = last.tick().map(shown -> Ticks.nanos(shown, framesPerSecond) - last.atNanos());
        if (apart.isPresent() && Math.abs(apart.get()) > FARTHEST_NANOS) {
            throw new IOException(name + ": was not recorded at " + framesPerSecond
                    + " frames a second; give the configuration that it was recorded with");
        }
    }

    /**
     * Makes the next frame. Frames skipped in the recording are skipped again.
     *
     * @param frame where to write it
     */
    public void next(Frame frame) {
        tick++;
        while (nextGap < gaps.size() && gaps.get(nextGap).tick().orElseThrow() == tick) {
            tick += gaps.get(nextGap).leftOut();
            nextGap++;
        }
        while (nextMessage < messages.size() && isDue(messages.get(nextMessage))) {
            take(messages.get(nextMessage));
            nextMessage++;
        }
        while (nextAsked < asked.size() && asked.get(nextAsked).tick() <= tick) {
            wishes = asked.get(nextAsked).wishes();
            nextAsked++;
        }
        while (nextDelivery < deliveries.size() && deliveries.get(nextDelivery).tick() <= tick) {
            chain.delivered(deliveries.get(nextDelivery));
            nextDelivery++;
        }
        chain.make(statuses, wishes, nanos(), frame);
    }

    /** A message that names no printer applies to all of them. */
    private void take(Entry message) {
        List<String> meant = message.printer().isEmpty() ? printers : List.of(message.printer());
        for (String printer : meant) {
            statuses = statuses.with(printer, message.status());
        }
    }

    private boolean isDue(Entry message) {
        return message.tick().map(shown -> shown <= tick).orElse(message.atNanos() <= nanos());
    }

    /**
     * The number of the last frame.
     *
     * @return counted from 0; −1 before the first
     */
    long tick() {
        return tick;
    }

    /**
     * The time of the last frame.
     *
     * @return ns since frame 0
     */
    public long nanos() {
        return Ticks.nanos(tick, framesPerSecond) - early.getOrDefault(tick, 0L);
    }

    /**
     * The state that the last frame shows.
     *
     * @return silent before the first
     */
    public PrinterState state() {
        return chain.state();
    }

    /**
     * The name of the current look, or the one fading in.
     *
     * @return as in the configuration
     */
    public String look() {
        return chain.look();
    }
}
