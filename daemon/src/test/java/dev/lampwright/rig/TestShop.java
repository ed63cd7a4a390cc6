package dev.lampwright.rig;

import dev.lampwright.colour.CssColour;
import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.Shop;
import dev.lampwright.cue.CueSpec;
import dev.lampwright.cue.Easing;
import dev.lampwright.demo.MemoryController;
import dev.lampwright.demo.MemoryLine;
import dev.lampwright.engine.Daemon;
import dev.lampwright.engine.RigPlace;
import dev.lampwright.engine.StatusWatch;
import dev.lampwright.look.AllExtent;
import dev.lampwright.look.Blend;
import dev.lampwright.look.LayerSpec;
import dev.lampwright.look.Level;
import dev.lampwright.look.LookSpec;
import dev.lampwright.look.Rhythm;
import dev.lampwright.look.SolidPaint;
import dev.lampwright.look.Zone;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.SupplyDraw;
import dev.lampwright.testing.Await;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.LongSupplier;

/**
 * The rigs of a folder in this process, each with an in-memory controller that checks every frame against the ceiling. The light moves, so
 * that every frame is different.
 */
public final class TestShop implements AutoCloseable {
    private static final String SHARED = """
            frames_per_s = %d
            broker.url = "%s"
            printer.state.topic = "shop/{rig}/job"
            printer.state.printing = ["RUN"]
            controller.port = "memory-{rig}"
            supply.ceiling_mA = 300
            strip.pixels = 30
            [looks.silent]
            layers = [{ paint = "ramp", colours = ["red", "lime", "blue"], cycle_s = 20 }]
            [looks.printing]
            layers = [{ paint = "ramp", colours = ["white", "blue"], cycle_s = 10 }]
            """;

    private final Path folder;
    private final Rigs rigs;
    private final Map<String, FarEnd> farEnds = new ConcurrentHashMap<>();
    private final Map<String, StatusWatch> watches = new ConcurrentHashMap<>();
    private final Set<String> broken = ConcurrentHashMap.newKeySet();

    /** The controller of a rig, and the line to it, which outlive the rig's daemon. */
    public static final class FarEnd implements MemoryController.Display {
        private final TroubledLine line;
        private final SupplyDraw draw;
        private final AtomicLong shown = new AtomicLong();
        private final AtomicLong over = new AtomicLong();

        FarEnd(Config config) {
            MemoryController controller = new MemoryController(MemoryController.BOARD, this);
            line = new TroubledLine(
                    new MemoryLine(controller, config.controller().baud(), System::nanoTime));
            draw = new SupplyDraw(config.setup());
        }

        @Override
        public void show(MemoryController.Light light, int sequence, Frame frame, long nanos) {
            if (light == MemoryController.Light.DIMMED
                    || (light == MemoryController.Light.WHOLE && draw.idle(0) + draw.load(0, frame) > draw.limit(0))) {
                over.incrementAndGet();
            }
            shown.incrementAndGet();
        }

        TroubledLine line() {
            return line;
        }

        /** How many frames have been shown. */
        public long shown() {
            return shown.get();
        }

        /** How many of them were over the ceiling. */
        long over() {
            return over.get();
        }
    }

    /**
     * Creates a folder without rigs.
     *
     * @param folder an empty folder
     * @param broker where the printers of its rigs report
     * @param framesPerSecond of all rigs
     * @param clock the clock that the watch over rigs uses
     */
    public TestShop(Path folder, URI broker, int framesPerSecond, LongSupplier clock) {
        this.folder = folder;
        rigs = new Rigs(this::daemon, clock);
        try {
            Files.createDirectories(folder.resolve("rigs"));
            Files.writeString(folder.resolve("shop.toml"), SHARED.formatted(framesPerSecond, broker));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Daemon daemon(Path file, Config config, RigPlace place) {
        String name = file.getFileName().toString().replace(".toml", "");
        FarEnd farEnd = farEnds.computeIfAbsent(config.controller().port(), port -> new FarEnd(config));
        Config made = broken.contains(name) ? withBrokenLook(config) : config;
        return new Daemon(
                made, same -> farEnd.line(), watches.getOrDefault(name, StatusWatch.NOBODY), Optional.empty(), place);
    }

    /** Its only look has a layer on a pixel that does not exist, which no file can describe. */
    private static Config withBrokenLook(Config config) {
        int pixels = config.setup().pixels();
        LayerSpec layer = new LayerSpec(
                Zone.run(pixels, pixels),
                new SolidPaint(CssColour.colour("white")),
                new AllExtent(),
                Rhythm.FIXED,
                Level.fixed(1),
                Blend.NORMAL);
        LookSpec look = new LookSpec("broken", List.of(layer), List.of(), false);
        return config.with(config.light().showing(List.of(new CueSpec(look, List.of(), 0, Easing.LINEAR))));
    }

    /** Stops a rig and starts it again, with looks that fail or with its own. */
    void startAgain(String name, boolean looksFail) throws ConfigException {
        remove(name).read();
        if (looksFail) {
            broken.add(name);
        } else {
            broken.remove(name);
        }
        rig(name, "").read();
    }

    /** Removes the file of a rig. */
    TestShop remove(String name) {
        try {
            Files.delete(file(name));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return this;
    }

    /** Has a rig's frames watched from its next start on. */
    void watch(String name, StatusWatch watch) {
        watches.put(name, watch);
    }

    /** Writes the file of a rig, which {@link #read} reads. */
    public TestShop rig(String name, String text) {
        try {
            Files.writeString(file(name), text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return this;
    }

    Path file(String name) {
        return folder.resolve("rigs").resolve(name + ".toml");
    }

    /** Has all files read. */
    public TestShop read() throws ConfigException {
        rigs.follow(Shop.read(folder, rigs.daemons().keySet()));
        return this;
    }

    /** Waits until rigs make frames. */
    public TestShop awaitRunning(String... names) {
        for (String name : names) {
            Await.until(
                    name + " makes frames",
                    () -> rigs.find(name)
                            .flatMap(Rig::daemon)
                            .filter(daemon -> daemon.pulse() > 0)
                            .isPresent());
        }
        return this;
    }

    /** Waits until rigs are lit. */
    public TestShop awaitLit(String... names) {
        for (String name : names) {
            Await.until(name + " is lit", () -> farEnd(name).map(FarEnd::shown).orElse(0L) > 3);
        }
        return this;
    }

    private Optional<FarEnd> farEnd(String name) {
        return Optional.ofNullable(farEnds.get("memory-" + name));
    }

    /** The controller of a rig whose file names no other port. */
    public FarEnd at(String name) {
        return farEnd(name).orElseThrow();
    }

    public Rigs rigs() {
        return rigs;
    }

    /** The daemon of a running rig. */
    public Daemon daemon(String name) {
        return rigs.find(name).flatMap(Rig::daemon).orElseThrow();
    }

    @Override
    public void close() {
        farEnds.values().forEach(farEnd -> farEnd.line().free());
        rigs.close();
    }
}
