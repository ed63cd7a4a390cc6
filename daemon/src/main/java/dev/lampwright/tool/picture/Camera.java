package dev.lampwright.tool.picture;

import dev.lampwright.colour.Decoder;
import dev.lampwright.protocol.Frame;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Watches frames and takes shots: each is the mean light of the frames within it. For one thread. */
public final class Camera {
    private static final double SECONDS_PER_NANO = 1e-9;
    private static final int COLOURS = 3;

    /** Times of frames are whole ns, so they may be early by less than one. */
    private static final long ROUNDED_NANOS = 1;

    private final Film.Subject subject;
    private final double shotsPerSecond;
    private final Decoder decoder;
    private final List<Lamp> lamps;
    private final float[] stripLight;
    private final float[] lampLight;
    private final List<Film.Shot> shots = new ArrayList<>();
    private String caption = "";
    private int gathered;

    /**
     * Creates a camera that has seen nothing.
     *
     * @param subject what is in front of it
     * @param shotsPerSecond how many shots it takes per second, above 0 and no more than there are frames
     */
    public Camera(Film.Subject subject, double shotsPerSecond) {
        this.subject = subject;
        this.shotsPerSecond = shotsPerSecond;
        decoder = new Decoder(subject.order());
        lamps = Lamp.of(subject.fitting());
        stripLight = new float[COLOURS * subject.fitting().pixels()];
        lampLight = new float[COLOURS * lamps.size()];
    }

    /**
     * Sees a frame.
     *
     * @param nanos its time, in ns since the first, later than the previous one
     * @param frame what the lights show
     * @param words what is happening, in a word or two; may be empty
     */
    public void see(long nanos, Frame frame, String words) {
        long shot = (long) Math.floor((nanos + ROUNDED_NANOS) * SECONDS_PER_NANO * shotsPerSecond);
        if (gathered > 0 && shot > shots.size()) {
            take(shot);
        }
        gather(frame);
        caption = words;
    }

    /**
     * Ends the film.
     *
     * @return what has been seen, at least one frame
     */
    public Film film() {
        if (gathered > 0) {
            take(shots.size() + 1L);
        }
        return new Film(subject, shotsPerSecond, shots);
    }

    /** A time without frames looks like the time before it: the lights keep what they show. */
    private void take(long until) {
        Film.Shot shot = new Film.Shot(colours(stripLight), colours(lampLight), caption);
        while (shots.size() < until) {
            shots.add(shot);
        }
        Arrays.fill(stripLight, 0);
        Arrays.fill(lampLight, 0);
        gathered = 0;
    }

    private void gather(Frame frame) {
        for (int i = 0; i < stripLight.length; i++) {
            stripLight[i] += decoder.light(frame.strip(), i / COLOURS, i % COLOURS);
        }
        for (int i = 0; i < lampLight.length; i++) {
            lampLight[i] += lamps.get(i / COLOURS).light(frame.duties(), i % COLOURS);
        }
        gathered++;
    }

    private int[] colours(float[] light) {
        int[] colours = new int[light.length / COLOURS];
        for (int i = 0; i < colours.length; i++) {
            colours[i] = PictureColours.of(
                    light[COLOURS * i] / gathered,
                    light[COLOURS * i + 1] / gathered,
                    light[COLOURS * i + 2] / gathered);
        }
        return colours;
    }
}
