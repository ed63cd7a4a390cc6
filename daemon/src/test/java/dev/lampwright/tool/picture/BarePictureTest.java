package dev.lampwright.tool.picture;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;

class BarePictureTest {
    private static final Film FILM = new Film(
            Films.subject(3),
            10,
            List.of(
                    new Film.Shot(new int[] {0xff0000, 0x00ff00, 0x000000}, new int[0], "words"),
                    new Film.Shot(new int[] {0xffffff, 0x0000ff, 0x000000}, new int[0], "words")));

    @Test
    void showsPixelBesidePixelAndNothingElse() throws IOException {
        List<BufferedImage> pictures = GifPictures.of(BarePicture.gif(FILM));
        assertEquals(List.of(10, 10), GifPictures.hundredths(BarePicture.gif(FILM)));
        BufferedImage last = pictures.get(1);
        assertEquals(3 * 8 + 1, last.getWidth());
        assertEquals(12, last.getHeight());
        assertEquals(0xffffff, tone(last, 0), "white stays white");
        assertEquals(0xff, tone(last, 1) & 0xff, "blue");
        assertEquals(PictureColours.BODY, tone(last, 2), "a dark pixel is seen to be there");
        assertEquals(0, last.getRGB(8, 6) & 0xffffff, "between two pixels");
    }

    private static int tone(BufferedImage picture, int pixel) {
        return picture.getRGB(pixel * 8 + 4, 6) & 0xffffff;
    }

    @Test
    void theSameFilmIsTheSameFile() {
        assertArrayEquals(BarePicture.gif(FILM), BarePicture.gif(FILM));
    }
}
