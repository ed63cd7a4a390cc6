package dev.lampwright.guard;

import dev.lampwright.look.Zone;
import dev.lampwright.protocol.Frame;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Any light: a few parts of the strip, each in any colour, turning on and off in any way, quickly or slowly, fading, jumping to something
 * else, and flickering by a level like dithering; now and then a frame of pure noise.
 */
final class AnyLight {
    private final Fitted fitted;
    private final SplittableRandom chance;
    private final List<Zone> zones;
    private final Part[] parts;
    private int frames;

    /** A stretch that alternates. */
    private record Part(Zone zone, List<Integer> colour, double period, double sharpness, double depth) {
        double level(int frame) {
            double wave = Math.sin(2 * Math.PI * frame / period) * sharpness;
            return 1 - depth * (0.5 - 0.5 * Math.max(-1, Math.min(1, wave)));
        }
    }

    AnyLight(Fitted fitted, SplittableRandom chance) {
        this.fitted = fitted;
        this.chance = chance;
        zones = List.copyOf(fitted.fitting().zones().values());
        parts = new Part[1 + chance.nextInt(3)];
        renew();
    }

    /** The next frame. */
    Frame next() {
        frames++;
        if (chance.nextInt(60) == 0) {
            renew();
        }
        Frame frame = fitted.frame();
        boolean noise = chance.nextInt(40) == 0;
        for (Part part : parts) {
            draw(part, frame);
        }
        for (int i = 0; i < frame.strip().length; i++) {
            int level = noise ? chance.nextInt(256) : (frame.strip()[i] & 0xFF) + chance.nextInt(2);
            frame.strip()[i] = (byte) Math.min(255, level);
        }
        for (int i = 0; i < frame.duties().length; i++) {
            frame.duties()[i] = noise ? chance.nextInt(65_536) : (int) (65_535 * parts[0].level(frames));
        }
        return frame;
    }

    private void draw(Part part, Frame frame) {
        int channels = fitted.setup().channels();
        for (int i = 0; i < part.zone.pixelCount(); i++) {
            int pixel = part.zone.pixel(i);
            for (int channel = 0; pixel < fitted.setup().pixels() && channel < channels; channel++) {
                frame.strip()[pixel * channels + channel] = (byte) (part.colour.get(channel) * part.level(frames));
            }
        }
    }

    private void renew() {
        for (int i = 0; i < parts.length; i++) {
            int[] colour = chance.ints(4, 0, 256).toArray();
            if (chance.nextInt(3) == 0) {
                colour = new int[4];
                colour[fitted.setup().order().indexOf('R')] = 20 + chance.nextInt(236);
            }
            Zone zone = zones.get(chance.nextInt(zones.size()));
            parts[i] = new Part(
                    zone,
                    Arrays.stream(colour).boxed().toList(),
                    2 + chance.nextInt(24),
                    chance.nextDouble(1, 20),
                    chance.nextDouble(0.05, 1));
        }
    }
}
