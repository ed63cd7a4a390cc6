package dev.lampwright.tool.picture;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;

/** Writes with its own letters, drawn with one stroke, so that it needs no font. */
final class Lettering {
    /** Units from the top of a capital to the baseline. */
    static final double CAPITAL = 6;

    private static final double GAP = 1.7;
    private static final double STROKE = 0.95;
    private static final Map<Integer, Letter> LETTERS = letters();
    private static final Letter UNKNOWN = new Letter(3.4, path("0,0 3.4,0 3.4,6 0,6 0,0"));

    private final double unit;

    private record Letter(double width, Shape strokes) {}

    /**
     * Creates letters of a size.
     *
     * @param unit px of a sixth of a capital's height
     */
    Lettering(double unit) {
        this.unit = unit;
    }

    /** The height of a capital, in px. */
    double height() {
        return CAPITAL * unit;
    }

    /** The width of a text, in px. */
    double width(String text) {
        double units = text.codePoints().mapToDouble(c -> letter(c).width + GAP).sum();
        return Math.max(0, units - GAP) * unit;
    }

    /**
     * Writes a text.
     *
     * @param graphics the drawing, with its current colour
     * @param text the text
     * @param x its left end, in px
     * @param y its baseline, in px
     */
    void write(Graphics2D graphics, String text, double x, double y) {
        graphics.setStroke(new BasicStroke((float) (STROKE * unit), BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        double at = x;
        for (int c : text.codePoints().toArray()) {
            Letter letter = letter(c);
            AffineTransform place = new AffineTransform(unit, 0, 0, unit, at, y - height());
            graphics.draw(place.createTransformedShape(letter.strokes));
            at += (letter.width + GAP) * unit;
        }
    }

    private static Letter letter(int c) {
        return LETTERS.getOrDefault(c, UNKNOWN);
    }

    private static Map<Integer, Letter> letters() {
        try (InputStream in = Lettering.class.getResourceAsStream("lettering.txt")) {
            Map<Integer, Letter> letters = new HashMap<>();
            new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("##"))
                    .map(line -> line.split("\\|", 3))
                    .forEach(part -> letters.put(
                            part[0].codePointAt(0), new Letter(Double.parseDouble(part[1]), path(part[2]))));
            return letters;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Path2D path(String strokes) {
        Path2D path = new Path2D.Double();
        for (String stroke : strokes.split(" / ", -1)) {
            if (stroke.startsWith("~")) {
                addSmooth(path, numbers(stroke.substring(1)));
            } else if (!stroke.isEmpty()) {
                addStraight(path, numbers(stroke));
            }
        }
        return path;
    }

    private static double[] numbers(String points) {
        String[] texts = points.split("[, ]", -1);
        double[] numbers = new double[texts.length];
        for (int i = 0; i < texts.length; i++) {
            numbers[i] = Double.parseDouble(texts[i]);
        }
        return numbers;
    }

    private static void addStraight(Path2D path, double[] xy) {
        path.moveTo(xy[0], xy[1]);
        for (int i = 2; i < xy.length; i += 2) {
            path.lineTo(xy[i], xy[i + 1]);
        }
    }

    /** Quadratic curves between the midpoints of the polygon's sides, each bent towards the corner in between. */
    private static void addSmooth(Path2D path, double[] xy) {
        path.moveTo(xy[0], xy[1]);
        int last = xy.length - 2;
        for (int i = 2; i < last; i += 2) {
            boolean ends = i + 2 == last;
            double x = ends ? xy[last] : (xy[i] + xy[i + 2]) / 2;
            double y = ends ? xy[last + 1] : (xy[i + 1] + xy[i + 3]) / 2;
            path.quadTo(xy[i], xy[i + 1], x, y);
        }
    }
}
