package dev.lampwright.tool.picture;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StillPictureTest {
    private static BufferedImage read(byte[] png) throws IOException {
        return ImageIO.read(new ByteArrayInputStream(png));
    }

    /** W3C PNG, third edition, 5.2: the signature. */
    @Test
    void itIsAPng() {
        byte[] png = StillPicture.png(Films.random(5, 30, 1));
        assertArrayEquals(new byte[] {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'}, Arrays.copyOf(png, 8));
    }

    @Test
    void theSameFilmGivesTheSameBytes() {
        assertArrayEquals(
                StillPicture.png(Films.random(40, 30, 7, "work")), StillPicture.png(Films.random(40, 30, 7, "work")));
    }

    /** Each colour of the film occurs once, so it must be in one rectangle, and the rectangles in the order of pixels and time. */
    @ParameterizedTest
    @CsvSource({"1, 1", "3, 30", "7, 60", "20, 300", "9, 700", "400, 3"})
    void everyPixelOfEveryShotStandsInItsPlace(int shots, int pixels) throws IOException {
        Film film = Films.random(shots, pixels, 3, "work", "colour");
        BufferedImage image = read(StillPicture.png(film));
        int left = -1;
        int top = -1;
        int beforeX = -1;
        int beforeY = -1;
        for (int row = 0; row < shots; row++) {
            int y = find(image, film.shots().get(row).pixel(0), left, beforeY + 1)[1];
            assertTrue(y > beforeY, "row " + row);
            beforeX = -1;
            for (int pixel = 0; pixel < pixels; pixel++) {
                int x = beforeX + 1;
                while (x < image.getWidth()
                        && (image.getRGB(x, y) & 0xFFFFFF)
                                != film.shots().get(row).pixel(pixel)) {
                    x++;
                }
                assertTrue(x < image.getWidth(), "pixel " + pixel + " of row " + row);
                beforeX = x;
                left = left < 0 ? x : left;
                top = top < 0 ? y : top;
            }
            for (int lamp = 0; lamp < 2; lamp++) {
                assertTrue(find(image, film.shots().get(row).lamp(lamp), -1, y)[0] > beforeX, "lamp " + lamp);
            }
            beforeY = y;
        }
    }

    /** The first place of a colour, at a column if one is given, from a line on. */
    private static int[] find(BufferedImage image, int tone, int column, int fromY) {
        for (int y = fromY; y < image.getHeight(); y++) {
            for (int x = Math.max(0, column); x < image.getWidth(); x++) {
                if ((image.getRGB(x, y) & 0xFFFFFF) == tone) {
                    return new int[] {x, y};
                }
            }
        }
        throw new AssertionError("no pixel of colour " + Integer.toHexString(tone));
    }

    @Test
    void captionsNeverRunOutOfThePicture() throws IOException {
        List<Film.Shot> shots = IntStream.range(0, 400)
                .mapToObj(i -> new Film.Shot(new int[] {i}, new int[0], "state " + i))
                .toList();
        BufferedImage image = read(StillPicture.png(new Film(Films.subject(1), 60, shots)));
        for (int x = 0; x < image.getWidth(); x++) {
            for (int y : new int[] {0, 1, image.getHeight() - 2, image.getHeight() - 1}) {
                assertEquals(PictureColours.GROUND, image.getRGB(x, y) & 0xFFFFFF, "at the edge");
            }
        }
    }

    @Test
    void aPictureIsNeitherFlatNorEndless() {
        assertEquals(60, StillPicture.shotsPerSecond(0.5, 60));
        assertEquals(20, StillPicture.shotsPerSecond(12, 60), 1e-9);
        assertEquals(400.0 / 36_000, StillPicture.shotsPerSecond(36_000, 60), 1e-9);
    }
}
