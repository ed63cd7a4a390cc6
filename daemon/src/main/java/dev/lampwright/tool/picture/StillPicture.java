package dev.lampwright.tool.picture;

import dev.lampwright.tool.picture.Paper.Side;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/**
 * A film as one picture: the strip across and time down, with pixels and zones above, seconds to the left, lamps and what was happening to
 * the right.
 */
public final class StillPicture {
    private static final Lettering TITLE = new Lettering(1.9);
    private static final Lettering SMALL = new Lettering(1.35);
    private static final int MARGIN = 12;
    private static final int STRIP_PX = 420;
    private static final int WIDEST_CELL = 14;
    private static final int SCALE_PX = 30;
    private static final int TITLE_PX = 28;
    private static final int ROW_PX = 20;
    private static final int NUMBERS_PX = 16;
    private static final int LAMP_PX = 16;
    private static final int LAMP_GAP_PX = 8;
    private static final int LEADER_PX = 14;
    private static final int LINE_PX = 14;
    private static final double SECONDS_APART_PX = 26;
    private static final double NUMBERS_APART_PX = 40;
    private static final double PX_PER_SECOND = 20;
    private static final double LOWEST_PX = 120;
    private static final double HIGHEST_PX = 400;

    private final Film film;
    private final int pixels;
    private final List<Lamp> lamps;
    private final int cell;
    private final int rowPx;
    private final ZoneMarks zones;
    private final int left = MARGIN + SCALE_PX;
    private final int top;
    private final int stripPx;
    private final int lightPx;

    private StillPicture(Film film) {
        this.film = film;
        pixels = film.subject().fitting().pixels();
        lamps = Lamp.of(film.subject().fitting());
        cell = Math.max(1, Math.min(WIDEST_CELL, STRIP_PX / pixels));
        rowPx = (int)
                Math.max(1, Math.round(heightFor(film.seconds()) / film.shots().size()));
        zones = new ZoneMarks(film.subject().fitting().zones(), pixels, cell, SMALL);
        top = MARGIN + TITLE_PX + zones.rows() * ROW_PX + NUMBERS_PX;
        stripPx = pixels * cell;
        lightPx = film.shots().size() * rowPx;
    }

    /**
     * How many shots per second suit a picture.
     *
     * @param seconds length of the film
     * @param framesPerSecond the maximum
     * @return shots per second
     */
    public static double shotsPerSecond(double seconds, int framesPerSecond) {
        return Math.min(framesPerSecond, heightFor(seconds) / seconds);
    }

    /**
     * Draws the picture.
     *
     * @param film what to draw
     * @return a PNG file (W3C PNG, third edition), the same bytes for the same film
     */
    public static byte[] png(Film film) {
        return new StillPicture(film).draw();
    }

    private static double heightFor(double seconds) {
        return Math.max(LOWEST_PX, Math.min(HIGHEST_PX, seconds * PX_PER_SECOND));
    }

    private byte[] draw() {
        try (Paper paper = new Paper(width(), top + lightPx + MARGIN, PictureColours.GROUND)) {
            title(paper);
            zones.marks().forEach(mark -> zone(paper, mark));
            numbers(paper);
            seconds(paper);
            light(paper);
            captions(paper);
            return file(paper);
        }
    }

    private int width() {
        double captions = film.shots().stream()
                .map(Film.Shot::caption)
                .distinct()
                .mapToDouble(SMALL::width)
                .max()
                .orElse(0);
        double right = captions > 0 ? LEADER_PX + captions : 0;
        double titles = TITLE.width(film.subject().title())
                + MARGIN
                + SMALL.width(film.subject().note());
        return (int) Math.ceil(Math.max(lampsEnd() + right, left + titles)) + MARGIN;
    }

    private int lampX(int lamp) {
        int x = left + stripPx;
        for (int i = 0; i <= lamp; i++) {
            x += LAMP_GAP_PX + (i < lamp ? lampWidth(i) : 0);
        }
        return x;
    }

    private int lampWidth(int lamp) {
        return (int) Math.max(LAMP_PX, Math.ceil(SMALL.width(lamps.get(lamp).name())));
    }

    private int lampsEnd() {
        return lamps.isEmpty() ? left + stripPx : lampX(lamps.size() - 1) + lampWidth(lamps.size() - 1);
    }

    private void title(Paper paper) {
        double y = MARGIN + TITLE.height();
        paper.write(TITLE, film.subject().title(), left, y, Side.RIGHT, PictureColours.WORDS);
        double x = left + TITLE.width(film.subject().title()) + MARGIN;
        paper.write(SMALL, film.subject().note(), x, y, Side.RIGHT, PictureColours.FAINT);
    }

    private void zone(Paper paper, ZoneMarks.Mark mark) {
        double y = top - NUMBERS_PX - mark.row() * ROW_PX - 6.0;
        for (ZoneMarks.Run run : mark.runs()) {
            double from = left + (run.from() + 0.5) * cell;
            double to = left + (run.to() + 0.5) * cell;
            double half = (from <= to ? -1 : 1) * Math.max(0, cell / 2.0 - 1);
            paper.line(from + half, y, to - half, y, PictureColours.LINES);
            paper.line(from + half, y - 2, from + half, y + 2, PictureColours.LINES);
            paper.arrowHead(to - half, y, from <= to, PictureColours.LINES);
        }
        double middle = left + (mark.middle() + 0.5) * cell;
        double half = SMALL.width(mark.name()) / 2;
        double held = Math.max(left + half, Math.min(left + stripPx - half, middle));
        paper.write(SMALL, mark.name(), held, y - 4, Side.MIDDLE, PictureColours.WORDS);
    }

    private void numbers(Paper paper) {
        int step = RoundSteps.counts(cell, NUMBERS_APART_PX);
        for (int pixel = 0; pixel < pixels; pixel += step) {
            double x = left + (pixel + 0.5) * cell - 0.5;
            paper.write(SMALL, Integer.toString(pixel), x, top - 5.0, Side.MIDDLE, PictureColours.FAINT);
            paper.line(x, top - 3, x, top - 1, PictureColours.LINES);
        }
        for (int i = 0; i < lamps.size(); i++) {
            double x = lampX(i) + lampWidth(i) / 2.0;
            paper.write(SMALL, lamps.get(i).name(), x, top - 5.0, Side.MIDDLE, PictureColours.WORDS);
        }
    }

    private void seconds(Paper paper) {
        double pxEach = lightPx / film.seconds();
        int step = RoundSteps.seconds(pxEach, SECONDS_APART_PX);
        for (int second = 0; second <= film.seconds(); second += step) {
            double y = top + second * pxEach;
            paper.line(left - 5, y, left - 1, y, PictureColours.LINES);
            double base = y + SMALL.height() / 2;
            paper.write(SMALL, second + " s", left - 8.0, base, Side.LEFT, PictureColours.FAINT);
        }
    }

    private void light(Paper paper) {
        int gap = cell > 3 ? 1 : 0;
        paper.fill(left, top, stripPx, lightPx, PictureColours.OFF);
        for (int row = 0; row < film.shots().size(); row++) {
            Film.Shot shot = film.shots().get(row);
            int y = top + row * rowPx;
            for (int pixel = 0; pixel < pixels; pixel++) {
                paper.fill(left + pixel * cell, y, cell - gap, rowPx, shot.pixel(pixel));
            }
            for (int lamp = 0; lamp < lamps.size(); lamp++) {
                int x = lampX(lamp) + (lampWidth(lamp) - LAMP_PX) / 2;
                paper.fill(x, y, LAMP_PX, rowPx, shot.lamp(lamp));
            }
        }
    }

    private void captions(Paper paper) {
        String before = "";
        double next = top + SMALL.height() / 2;
        for (int row = 0; row < film.shots().size(); row++) {
            String caption = film.shots().get(row).caption();
            if (!caption.equals(before) && next < top + lightPx) {
                double y = top + row * (double) rowPx;
                double middle = Math.max(y, next);
                leader(paper, y, middle);
                paper.write(
                        SMALL,
                        caption,
                        lampsEnd() + LEADER_PX,
                        middle + SMALL.height() / 2,
                        Side.RIGHT,
                        PictureColours.WORDS);
                next = middle + LINE_PX;
            }
            before = caption;
        }
    }

    private void leader(Paper paper, double y, double middle) {
        int x = lampsEnd();
        paper.line(x + 2, y, x + 5, y, PictureColours.LINES);
        paper.line(x + 5, y, x + 8, middle, PictureColours.LINES);
        paper.line(x + 8, middle, x + 11, middle, PictureColours.LINES);
    }

    private static byte[] file(Paper paper) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        ImageWriter writer = ImageIO.getImageWritersByFormatName("png").next();
        ImageWriteParam smallest = writer.getDefaultWriteParam();
        smallest.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
        smallest.setCompressionQuality(0);
        try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            writer.setOutput(out);
            writer.write(null, new IIOImage(paper.image(), null, null), smallest);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }

    /** Round distances for the marks of a scale. */
    private static final class RoundSteps {
        private static final int[] COUNTS = {
            1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000, 50_000
        };
        private static final int[] SECONDS = {1, 2, 5, 10, 20, 30, 60, 120, 300, 600, 1800, 3600, 7200, 21_600, 86_400};

        private RoundSteps() {}

        /** The distance between marks of a counting scale. */
        static int counts(double pxEach, double leastPx) {
            return step(COUNTS, pxEach, leastPx);
        }

        /** The distance between marks of a time scale, in s. */
        static int seconds(double pxEach, double leastPx) {
            return step(SECONDS, pxEach, leastPx);
        }

        private static int step(int[] steps, double pxEach, double leastPx) {
            for (int step : steps) {
                if (step * pxEach >= leastPx) {
                    return step;
                }
            }
            return steps[steps.length - 1];
        }
    }
}
