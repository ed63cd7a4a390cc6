package dev.lampwright.tool.picture;

/**
 * A film as a small moving picture of the strip alone, pixel beside pixel, without words: to stand beside a text. Lamps are not in it.
 */
public final class BarePicture {
    private static final int CELL = 8;
    private static final int GAP = 1;
    private static final int HEIGHT = 10;

    private BarePicture() {}

    /**
     * Draws the picture.
     *
     * @param film what to draw
     * @return a file of GIF, the same bytes for the same film
     */
    public static byte[] gif(Film film) {
        GifFile file = new GifFile();
        int pixels = film.subject().fitting().pixels();
        for (int i = 0; i < film.shots().size(); i++) {
            try (Paper paper = new Paper(pixels * CELL + GAP, HEIGHT + 2 * GAP, PictureColours.OFF)) {
                for (int pixel = 0; pixel < pixels; pixel++) {
                    int left = pixel * CELL + GAP;
                    paper.fill(
                            left,
                            GAP,
                            CELL - GAP,
                            HEIGHT,
                            tone(film.shots().get(i).pixel(pixel)));
                }
                file.add(paper.image(), film.hundredths(i));
            }
        }
        return file.end();
    }

    /** What is dark is not quite black, so that it is seen to be there. */
    private static int tone(int light) {
        return PictureColours.lit(PictureColours.BODY, light, 1);
    }
}
