package dev.lampwright.tool.picture;

import dev.lampwright.tool.picture.Paper.Side;
import java.util.List;
import java.util.Locale;

/** A film as a moving picture: the strip's pixels as round lights in a row, below them the lamps, what is happening, and the time. */
public final class MovingPicture {
    /** How many shots per second are enough for the eye. */
    public static final double USUAL_SHOTS_PER_SECOND = 20;
    /** Most programs do not show more shots per second than this. Common practice, no source. */
    public static final double MOST_SHOTS_PER_SECOND = 50;

    private static final Lettering WORDS = new Lettering(2);
    private static final Lettering SMALL = new Lettering(1.5);
    private static final int MARGIN = 16;
    private static final int ROW_PX = 720;
    private static final int LONGEST_ROW = 120;
    private static final int LEAST_CELL = 8;
    private static final int MOST_CELL = 20;
    private static final int LAMP_PX = 20;
    private static final int LINE_PX = 30;
    private static final int GAP_PX = 4;
    private static final int TOP = MARGIN + LINE_PX;
    private static final int GREYS = 16;

    private final Film film;
    private final int pixels;
    private final List<Lamp> lamps;
    private final int perRow;
    private final int cell;
    private final int rows;
    private final int width;
    private final Glow pixelGlow;
    private final Glow lampGlow = Glow.alone(LAMP_PX);

    private MovingPicture(Film film) {
        this.film = film;
        pixels = film.subject().fitting().pixels();
        lamps = Lamp.of(film.subject().fitting());
        rows = (pixels + LONGEST_ROW - 1) / LONGEST_ROW;
        perRow = (pixels + rows - 1) / rows;
        cell = Math.max(LEAST_CELL, Math.min(MOST_CELL, ROW_PX / perRow));
        pixelGlow = Glow.washing(cell);
        width = 2 * MARGIN + Math.max(ROW_PX / 2, perRow * cell);
    }

    /**
     * Draws the picture.
     *
     * @param film what to draw
     * @return a GIF file, the same bytes for the same film
     */
    public static byte[] gif(Film film) {
        return new MovingPicture(film).draw();
    }

    private byte[] draw() {
        GifFile file = new GifFile();
        for (int i = 0; i < film.shots().size(); i++) {
            try (Paper paper = new Paper(width, height(), PictureColours.NIGHT)) {
                shot(paper, film.shots().get(i), i / film.shotsPerSecond());
                file.add(paper.image(), film.hundredths(i));
            }
        }
        return file.end();
    }

    private int height() {
        return 2 * MARGIN + LINE_PX + rows * pixelGlow.height() + LINE_PX;
    }

    private void shot(Paper paper, Film.Shot shot, double seconds) {
        int[] lampX = lampPlaces();
        words(paper, shot, seconds, lampX);
        paper.keepGreys(PictureColours.NIGHT, GREYS);
        for (int i = 0; i < pixels; i++) {
            pixelGlow.draw(paper, MARGIN + i % perRow * cell, TOP + i / perRow * pixelGlow.height(), shot.pixel(i));
        }
        for (int i = 0; i < lampX.length; i++) {
            lampGlow.draw(paper, lampX[i], MARGIN + (int) SMALL.height() / 2 - LAMP_PX / 2, shot.lamp(i));
        }
    }

    private void words(Paper paper, Film.Shot shot, double seconds, int[] lampX) {
        double line = MARGIN + SMALL.height();
        paper.write(SMALL, film.subject().title(), MARGIN, line, Side.RIGHT, PictureColours.FAINT);
        for (int i = 0; i < lampX.length; i++) {
            paper.write(SMALL, lamps.get(i).name(), lampX[i] - GAP_PX, line, Side.LEFT, PictureColours.FAINT);
        }
        double base = TOP + rows * pixelGlow.height() + LINE_PX;
        paper.write(WORDS, shot.caption(), MARGIN, base, Side.RIGHT, PictureColours.WORDS);
        String time = String.format(Locale.ROOT, "%.1f s", seconds);
        paper.write(WORDS, time, width - MARGIN, base, Side.LEFT, PictureColours.FAINT);
    }

    /** The left edges of the lamps, in the upper right corner, the last one outermost. */
    private int[] lampPlaces() {
        int[] places = new int[lamps.size()];
        int x = width - MARGIN;
        for (int i = places.length - 1; i >= 0; i--) {
            places[i] = x - LAMP_PX;
            x = places[i] - GAP_PX - (int) SMALL.width(lamps.get(i).name()) - MARGIN;
        }
        return places;
    }
}
