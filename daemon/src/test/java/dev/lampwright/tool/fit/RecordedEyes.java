package dev.lampwright.tool.fit;

import dev.lampwright.demo.MemoryController;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.Recording;
import java.util.List;

/** Looks at a {@link StripModel} that a controller in memory drives: what it showed last is what can be seen. */
record RecordedEyes(Recording recording, StripModel strip) implements Eyes {
    /** Longer than the slowest band takes, at 30 frames a second. */
    private static final int FRAMES_OF_A_RUN = 200;

    static byte[] bytes(Recording.Entry entry) {
        byte[] bytes = new byte[entry.strip().size()];
        for (int i = 0; i < bytes.length; i++) {
            bytes[i] = entry.strip().get(i).byteValue();
        }
        return bytes;
    }

    /** Whether all is dark. */
    boolean dark() {
        return recording.lastIs(entry -> entry.strip().stream().allMatch(value -> value == 0)
                && entry.duties().stream().allMatch(duty -> duty == 0));
    }

    /** The most that the strip drew in any of the first frames, in mA. */
    double most(int entries) {
        return recording.entries().subList(0, entries).stream()
                .mapToDouble(entry -> strip.milliamps(bytes(entry)))
                .max()
                .orElse(0);
    }

    /** How many frames the controller had to dim. */
    long dimmed() {
        return recording.entries().stream()
                .filter(entry -> entry.light() == MemoryController.Light.DIMMED)
                .count();
    }

    @Override
    public List<StripModel.Pixel> pixels() {
        return strip.clock(bytes(recording.last()));
    }

    @Override
    public int drift() {
        int from = recording.size();
        Await.until("a band that has run its way", () -> recording.size() >= from + FRAMES_OF_A_RUN);
        int away = 0;
        double before = -1;
        for (Recording.Entry entry : recording.entries().subList(from, from + FRAMES_OF_A_RUN)) {
            double now = centre(strip.clock(bytes(entry)));
            away += now < 0 || before < 0 ? 0 : (int) Math.signum(now - before);
            before = now;
        }
        return away;
    }

    /** The mean place of what is lit; −1 if nothing is. */
    static double centre(List<StripModel.Pixel> pixels) {
        double sum = 0;
        int count = 0;
        for (int i = 0; i < pixels.size(); i++) {
            if (pixels.get(i).lit()) {
                sum += i;
                count++;
            }
        }
        return count == 0 ? -1 : sum / count;
    }

    @Override
    public int dimmer() {
        List<Integer> duties = recording.last().duties();
        for (int i = 0; i < duties.size(); i++) {
            if (duties.get(i) > 0) {
                return i;
            }
        }
        return -1;
    }

    @Override
    public double meter() {
        return Math.round(strip.milliamps(bytes(recording.last())) * 10) / 10.0;
    }
}
