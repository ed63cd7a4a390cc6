package dev.lampwright.tool.picture;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MovingPictureTest {
    /** GIF89a (CompuServe, 1990), sections 17 and 27: the signature and the trailer. */
    @Test
    void itIsAGif() {
        byte[] gif = MovingPicture.gif(Films.random(3, 30, 1));
        assertEquals("GIF89a", new String(Arrays.copyOf(gif, 6), StandardCharsets.US_ASCII));
        assertEquals(0x3B, gif[gif.length - 1]);
    }

    @Test
    void theSameFilmGivesTheSameBytes() {
        assertArrayEquals(
                MovingPicture.gif(Films.random(6, 30, 7, "work")), MovingPicture.gif(Films.random(6, 30, 7, "work")));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 60, 120, 121, 300})
    void theMiddleOfEveryPixelIsItsLight(int pixels) throws IOException {
        List<Film.Shot> shots = List.of(lit(pixels, 0xFF0000), lit(pixels, 0x000000), lit(pixels, 0x0000FF));
        List<BufferedImage> pictures = GifPictures.of(MovingPicture.gif(new Film(Films.subject(pixels), 20, shots)));
        assertEquals(3, pictures.size());
        assertTrue(count(pictures.get(0), 0xFF0000) > 9L * pixels, "red in the first");
        assertEquals(0, count(pictures.get(1), 0xFF0000));
        assertTrue(count(pictures.get(1), PictureColours.BODY) > 9L * pixels, "dark bodies in the second");
        assertTrue(count(pictures.get(2), 0x0000FF) > 9L * pixels, "blue in the third");
    }

    private static Film.Shot lit(int pixels, int tone) {
        int[] strip = new int[pixels];
        Arrays.fill(strip, tone);
        return new Film.Shot(strip, new int[0], "idle");
    }

    /** The brightest channel is full; light adds up, so the body's own colour may show a little in the others. */
    private static long count(BufferedImage image, int tone) {
        long count = 0;
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                count += isLike(image.getRGB(x, y), tone) ? 1 : 0;
            }
        }
        return count;
    }

    private static boolean isLike(int seen, int tone) {
        boolean like = true;
        for (int shift = 0; shift <= 16; shift += 8) {
            like &= Math.abs((seen >> shift & 0xFF)
                            - Math.max(tone >> shift & 0xFF, PictureColours.BODY >> shift & 0xFF))
                    <= 8;
        }
        return like;
    }

    @Test
    void picturesOfFewColoursComeBackAsTheyWere() throws IOException {
        Random random = new Random(4);
        List<BufferedImage> pictures = new ArrayList<>();
        GifFile file = new GifFile();
        BufferedImage before = picture(random);
        for (int i = 0; i < 12; i++) {
            BufferedImage next = changed(before, random);
            pictures.add(next);
            file.add(next, 5);
            before = next;
        }
        List<BufferedImage> read = GifPictures.of(file.end());
        assertEquals(pictures.size(), read.size());
        for (int i = 0; i < pictures.size(); i++) {
            assertEquals(0, GifFile.difference(pictures.get(i), read.get(i)).length, "picture " + i);
        }
    }

    private static BufferedImage picture(Random random) {
        BufferedImage image = new BufferedImage(20, 10, BufferedImage.TYPE_INT_RGB);
        random.ints(200, 0, 0x1000000).forEach(tone -> image.setRGB(random.nextInt(20), random.nextInt(10), tone));
        return image;
    }

    private static BufferedImage changed(BufferedImage before, Random random) {
        BufferedImage image = new BufferedImage(20, 10, BufferedImage.TYPE_INT_RGB);
        image.setData(before.getData());
        for (int i = 0; i < 3; i++) {
            image.setRGB(random.nextInt(20), random.nextInt(10), random.nextInt(0x1000000));
        }
        return image;
    }

    @Test
    void picturesThatAreTheSameAreOneShownForLonger() throws IOException {
        BufferedImage picture = picture(new Random(1));
        GifFile file = new GifFile();
        file.add(picture, 5);
        file.add(changed(picture, new Random(2)), 5);
        file.add(changed(picture, new Random(2)), 7);
        byte[] gif = file.end();
        assertEquals(List.of(5, 12), GifPictures.hundredths(gif));
    }

    /** 30 per second is not a whole number of hundredths; the total time is still right. */
    @Test
    void timeDoesNotDrift() throws IOException {
        Film film = new Film(Films.subject(3), 30, Films.random(90, 3, 5).shots());
        int sum = GifPictures.hundredths(MovingPicture.gif(film)).stream()
                .mapToInt(Integer::intValue)
                .sum();
        assertEquals(300, sum);
    }
}
