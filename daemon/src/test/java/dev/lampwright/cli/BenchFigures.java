package dev.lampwright.cli;

import dev.lampwright.engine.FrameLoop;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/** How fast the bench draws 300 pixels, and how late the daemon's own frames are meanwhile. To be run by hand, with a number of seconds. */
final class BenchFigures {
    private static final Map<String, Object> LOOK = Map.of(
            "layers",
            List.of(
                    Map.of("paint", "ramp", "colours", List.of("midnightblue", "seagreen"), "cycle_s", 9),
                    Map.of("paint", "ember", "opacity", 0.5),
                    Map.of("colour", "gold", "extent", "grains", "density", 0.1),
                    Map.of("zone", "job", "colour", "seagreen", "extent", "bar", "by", "job.progress")));

    private BenchFigures() {}

    /**
     * Measures.
     *
     * @param args how many seconds
     */
    public static void main(String... args) throws IOException, InterruptedException {
        int seconds = args.length == 0 ? 10 : Integer.parseInt(args[0]);
        Path folder = Files.createTempDirectory("bench");
        try (BenchRig rig = new BenchRig(folder, "", 300)) {
            TimeUnit.SECONDS.sleep(2);
            System.out.println(frames(rig, "nobody draws", () -> TimeUnit.SECONDS.sleep(seconds)));
            System.out.println(frames(rig, "previews one after the other", () -> previews(rig, seconds)));
        } finally {
            Files.deleteIfExists(folder.resolve("birch.toml"));
            Files.deleteIfExists(folder);
        }
    }

    private interface Meanwhile {
        void happens() throws InterruptedException;
    }

    private static String frames(BenchRig rig, String when, Meanwhile meanwhile) throws InterruptedException {
        FrameLoop frames = rig.daemon().frames();
        long made = frames.snapshot().frames();
        long late = frames.lateness().upTo(TimeUnit.MILLISECONDS.toNanos(5));
        long total = frames.lateness().total();
        long begin = System.nanoTime();
        meanwhile.happens();
        double seconds = (System.nanoTime() - begin) / 1e9;
        long looked = frames.lateness().total() - total;
        return "%s: %.1f frames a second, %.2f %% of them within 5 ms"
                .formatted(
                        when,
                        (frames.snapshot().frames() - made) / seconds,
                        100.0 * (frames.lateness().upTo(TimeUnit.MILLISECONDS.toNanos(5)) - late) / looked);
    }

    private static void previews(BenchRig rig, int seconds) {
        Map<String, Object> body =
                Map.of("name", "mine", "look", LOOK, "printer", Map.of("signals", Map.of("job.progress", 0.6)));
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(seconds);
        int films = 0;
        while (System.nanoTime() - end < 0) {
            films += rig.post("preview", body).status() == 200 ? 1 : 0;
        }
        System.out.printf("%.0f pictures a second of 300 pixels%n", 200.0 * films / seconds);
    }
}
