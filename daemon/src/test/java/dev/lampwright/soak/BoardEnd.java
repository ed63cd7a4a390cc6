package dev.lampwright.soak;

import dev.lampwright.demo.MemoryController.Light;
import dev.lampwright.testing.EmulatedBoard;
import dev.lampwright.testing.EmulatedBoard.Latched;
import dev.lampwright.testing.Firmware;
import dev.lampwright.testing.Recording.Entry;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Consumer;

/**
 * The reference firmware on the emulated board. What it shows is read from its pins, so it is unknown which message brought a frame, and
 * dark frames and the beacon count as its own.
 */
final class BoardEnd implements FarEnd {
    private static final double FULL_DUTY = 65_535;
    private static final int ONE_DOWN_IN = 400;
    private static final int ONE_UP_IN = 100;
    private static final int MANY = 1_000_000;
    /** Time in which earlier frames are still reported. */
    private static final long PRESS_NANOS = 100_000_000;

    private static final int LONG_MS = 600_000;

    private final EmulatedBoard board;

    /**
     * Plugs it in.
     *
     * @param folder where its device node will appear
     */
    BoardEnd(Path folder) {
        board = EmulatedBoard.start(Firmware.USUAL.get(0), folder.resolve("controller"));
    }

    @Override
    public Path port() {
        return board.port();
    }

    @Override
    public void unplug() {
        board.command("unplug");
    }

    @Override
    public void plug() {
        board.command("plug");
    }

    @Override
    public void restart() {
        board.command("reset");
        LockSupport.parkNanos(PRESS_NANOS);
    }

    @Override
    public void hang() {
        board.command("stall " + LONG_MS);
    }

    @Override
    public void goOn() {
        board.command("stall 0");
    }

    @Override
    public void corrupt(long seed) {
        damage(MANY);
    }

    /** The firmware is what it is. */
    @Override
    public boolean canRefuse() {
        return false;
    }

    @Override
    public void refuse() {
        throw new UnsupportedOperationException("the emulated board runs the firmware as it is");
    }

    @Override
    public void restore() {
        damage(0);
    }

    private void damage(int bytes) {
        for (String kind : List.of("drop", "flip", "double")) {
            damage(kind + " down " + bytes, bytes > 0, ONE_DOWN_IN);
            damage(kind + " up " + bytes, bytes > 0, ONE_UP_IN);
        }
    }

    private void damage(String order, boolean any, int oneIn) {
        board.command(order + (any ? " every " + oneIn : ""));
    }

    @Override
    public List<Entry> drain(Consumer<String> violations) {
        List<Latched> latched = board.drainFrames();
        latched.stream()
                .filter(frame -> !frame.faults().isEmpty())
                .forEach(frame -> violations.accept("the strip's waveform is wrong: " + frame));
        return latched.stream().map(BoardEnd::entry).toList();
    }

    /** Its clock is emulated, so frames are timed when they are reported. */
    private static Entry entry(Latched frame) {
        boolean own = frame.strip().stream().mapToInt(Integer::intValue).max().orElse(0) <= 16;
        List<Integer> duties = frame.duties().stream()
                .limit(1)
                .map(duty -> (int) Math.floor(Math.min(1, duty.isNaN() ? 0 : duty) * FULL_DUTY))
                .toList();
        List<Integer> strip = frame.strip().subList(0, Math.min(frame.strip().size(), 3 * Rowan.PIXELS));
        return new Entry(own ? Light.DARK : Light.WHOLE, 0, frame.heardNanos(), strip, duties);
    }

    @Override
    public String figures() {
        return String.format(Locale.ROOT, "the board says %s", board.stats());
    }

    @Override
    public void close() {
        board.close();
    }
}
