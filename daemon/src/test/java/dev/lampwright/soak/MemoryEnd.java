package dev.lampwright.soak;

import dev.lampwright.protocol.MessageType;
import dev.lampwright.testing.Faults;
import dev.lampwright.testing.PtyController;
import dev.lampwright.testing.Recording.Entry;
import dev.lampwright.testing.Rewriter;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;

/** The controller in memory behind a pseudo-terminal, with a tap on the line before anything has happened to the bytes. */
final class MemoryEnd implements FarEnd {
    /** A byte in a thousand, and one in fifty: some frames get through, or hardly any answer does. */
    private static final double[] CHANCES = {0.001, 0.02};

    /** Code of a complaint, by {@code wire.md}: a message with the wrong length. */
    private static final byte WRONG_LENGTH = 6;

    private final PtyController controller;
    private final SentCheck sent = new SentCheck();
    private final Tap tap = new Tap(sent);
    private final AtomicLong corrupted = new AtomicLong();

    /**
     * Plugs it in.
     *
     * @param folder where its device node will appear
     */
    MemoryEnd(Path folder) {
        controller = PtyController.pluggedIn(folder);
        restore();
    }

    @Override
    public Path port() {
        return controller.port();
    }

    @Override
    public void unplug() {
        controller.unplug();
    }

    @Override
    public void plug() {
        controller.plug();
    }

    @Override
    public void restart() {
        controller.reset();
    }

    @Override
    public void hang() {
        controller.freeze();
    }

    @Override
    public void goOn() {
        controller.thaw();
    }

    @Override
    public void corrupt(long seed) {
        double harm = CHANCES[Math.floorMod(seed, CHANCES.length)];
        UnaryOperator<byte[]> faults = counted(Faults.all(seed, harm));
        controller.fromHost(bytes -> faults.apply(tap.take(bytes)));
        controller.toHost(counted(Faults.all(seed + 1, harm)));
    }

    @Override
    public boolean canRefuse() {
        return true;
    }

    @Override
    public void refuse() {
        controller.toHost(
                Rewriter.to(MessageType.SHOWN, MessageType.COMPLAINT, body -> new byte[] {WRONG_LENGTH, 0, 0}));
    }

    private UnaryOperator<byte[]> counted(UnaryOperator<byte[]> faults) {
        return bytes -> {
            byte[] changed = faults.apply(bytes);
            corrupted.addAndGet(Arrays.equals(bytes, changed) ? 0 : 1);
            return changed;
        };
    }

    @Override
    public void restore() {
        controller.fromHost(tap::take);
        controller.toHost(Faults.none());
    }

    @Override
    public List<Entry> drain(Consumer<String> violations) {
        List<Entry> shown = controller.recording().drain();
        shown.stream()
                .filter(Entry::fromHost)
                .forEach(entry -> sent.judge(entry).ifPresent(violations));
        return shown;
    }

    /** A checksum of 16 bits lets one in 65536 broken packets through. */
    @Override
    public String figures() {
        return tap.frames() + " frames left the daemon; " + corrupted.get() + " pieces were corrupted, "
                + "of which chance may let one in 65536 pass the checksum";
    }

    @Override
    public void close() {
        controller.close();
    }
}
