package dev.lampwright.guard;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;

import dev.lampwright.protocol.Frame;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * The pictures of {@code daemon/doc/flash-limit.md} show what the guard does now. Time runs to the right, four seconds of it; one row is
 * one pixel; above is what the look demands, below what is shown. {@code -Dpictures.write=true} writes them.
 */
class FlashPicturesTest {
    private static final Path FOLDER = Path.of("doc", "pictures");
    private static final int RATE = 60;
    private static final int FRAMES = 4 * RATE;
    private static final int PIXELS = 32;
    private static final int WIDE = 3;
    private static final int HIGH = 4;
    private static final int GAP = 12;

    /** The requested light. */
    enum Pattern {
        /** Bands of four run through eight pixels fifteen times a second; their mean never changes. */
        CHASE {
            @Override
            int level(int pixel, int frame) {
                return Math.floorMod(pixel - 2 * frame, 8) < 4 ? 255 : 0;
            }
        },
        /** Eight pixels blink six times a second in the middle of slowly pulsing light. */
        BLINK_IN_CALM {
            @Override
            int level(int pixel, int frame) {
                boolean blinks = pixel >= 12 && pixel < 20;
                return blinks
                        ? frame / 5 % 2 * 255
                        : (int) (90 + 80 * Math.sin(2 * Math.PI * frame / 180 + pixel / 6.0));
            }
        },
        /** Blinking that gets faster and then stops. */
        FASTER {
            @Override
            int level(int pixel, int frame) {
                double seconds = frame / (double) RATE;
                return seconds > 2.5
                        ? 60
                        : (int) (Math.round(0.5 + 0.5 * Math.sin(2 * Math.PI * (seconds + 1.2 * seconds * seconds)))
                                * 255);
            }
        };

        abstract int level(int pixel, int frame);

        Path file() {
            return FOLDER.resolve(name().toLowerCase(Locale.ROOT).replace('_', '-') + ".png");
        }
    }

    @ParameterizedTest
    @EnumSource
    void showsWhatTheGuardDoes(Pattern pattern) throws IOException {
        BufferedImage now = picture(pattern);
        if (Boolean.getBoolean("pictures.write")) {
            Files.createDirectories(FOLDER);
            ImageIO.write(now, "png", pattern.file().toFile());
        }
        BufferedImage there = ImageIO.read(pattern.file().toFile());
        assertArrayEquals(bytes(now), bytes(there), "written with -Dpictures.write=true");
    }

    private static BufferedImage picture(Pattern pattern) {
        Fitted fitted = Fitted.strip(PIXELS, Map.of());
        GuardSettings settings = new GuardSettings(Optional.empty(), 2, false, List.of());
        Guards guards = new Guards(fitted.setup(), fitted.fitting(), settings, RATE);
        BufferedImage image = new BufferedImage(FRAMES * WIDE, 2 * PIXELS * HIGH + GAP, BufferedImage.TYPE_BYTE_GRAY);
        image.createGraphics().fillRect(0, 0, image.getWidth(), image.getHeight());
        for (int frame = 0; frame < FRAMES; frame++) {
            Frame light = fitted.frame();
            for (int pixel = 0; pixel < PIXELS; pixel++) {
                for (int channel = 0; channel < 3; channel++) {
                    light.strip()[3 * pixel + channel] = (byte) pattern.level(pixel, frame);
                }
            }
            draw(light, frame, 0, image);
            guards.hold(light, frame * 1_000_000_000L / RATE);
            draw(light, frame, PIXELS * HIGH + GAP, image);
        }
        return image;
    }

    private static void draw(Frame light, int frame, int top, BufferedImage image) {
        for (int pixel = 0; pixel < PIXELS; pixel++) {
            byte[] grey = new byte[WIDE * HIGH];
            Arrays.fill(grey, light.strip()[3 * pixel]);
            image.getRaster().setDataElements(frame * WIDE, top + pixel * HIGH, WIDE, HIGH, grey);
        }
    }

    private static int[] bytes(BufferedImage image) {
        return image.getRaster().getPixels(0, 0, image.getWidth(), image.getHeight(), (int[]) null);
    }
}
