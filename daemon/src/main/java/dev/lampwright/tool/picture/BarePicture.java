package dev.lampwright.tool.picture;

/** A film as a small moving picture of the strip alone, pixel next to pixel, without words, for use next to a text. Lamps are left out. */
public final class BarePicture {
    private static final int CELL = 8;
    private static final int GAP = 1;
    private static final int HEIGHT = 10;

    private BarePicture() {}

    /**
     * Draws the picture.
     *
     * @param film what to draw
     * @return a GIF file, the same bytes for the same film
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

    /** Dark pixels are not quite black, so that they remain visible. */
    private static int tone(int light) {
        return PictureColours.lit(PictureColours.BODY, light, 1);
    }
}
