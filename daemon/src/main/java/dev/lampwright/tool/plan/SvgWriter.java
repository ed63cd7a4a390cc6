package dev.lampwright.tool.plan;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Writes a picture as SVG 1.1. Lengths are in px from the upper left corner. */
final class SvgWriter {
    /** Which part of a text is at its x. */
    enum Anchor {
        START,
        MIDDLE,
        END
    }

    /** A point. */
    record At(double x, double y) {}

    private final StringBuilder body = new StringBuilder();

    /** A straight line through some points. */
    void line(String colour, double width, At... points) {
        polyline(colour, width, "", List.of(points));
    }

    /** A dashed one. */
    void dashed(String colour, double width, At... points) {
        polyline(colour, width, " stroke-dasharray=\"6 5\"", List.of(points));
    }

    /** A curve through many points. */
    void curve(String colour, double width, List<At> points) {
        polyline(colour, width, "", points);
    }

    private void polyline(String colour, double width, String more, List<At> points) {
        String path = points.stream().map(p -> number(p.x) + "," + number(p.y)).collect(Collectors.joining(" "));
        element(
                "<polyline points=\"%s\" fill=\"none\" stroke=\"%s\" stroke-width=\"%s\"%s/>",
                path, colour, number(width), more);
    }

    /** A box with an edge. */
    void box(double x, double y, double width, double height, String fill, String edge) {
        element(
                "<rect x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\" rx=\"4\" fill=\"%s\" stroke=\"%s\" stroke-width=\"1.5\"/>",
                number(x), number(y), number(width), number(height), fill, edge);
    }

    /** A filled rectangle without an edge. */
    void patch(double x, double y, double width, double height, String fill) {
        element(
                "<rect x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\" fill=\"%s\"/>",
                number(x), number(y), number(width), number(height), fill);
    }

    /** A dot where wires are joined. */
    void dot(double x, double y, String colour) {
        element("<circle cx=\"%s\" cy=\"%s\" r=\"5\" fill=\"%s\"/>", number(x), number(y), colour);
    }

    /** One line of text. */
    void text(double x, double y, Anchor anchor, double size, String colour, String text) {
        write(x, y, anchor, number(size) + "px", "normal", colour, text);
    }

    /** One line of bold text. */
    void bold(double x, double y, Anchor anchor, double size, String colour, String text) {
        write(x, y, anchor, number(size) + "px", "bold", colour, text);
    }

    private void write(double x, double y, Anchor anchor, String size, String weight, String colour, String text) {
        element(
                "<text x=\"%s\" y=\"%s\" text-anchor=\"%s\" font-size=\"%s\" font-weight=\"%s\" fill=\"%s\">%s</text>",
                number(x), number(y), anchor.name().toLowerCase(Locale.ROOT), size, weight, colour, escaped(text));
    }

    /**
     * The whole picture.
     *
     * @param title what it is, for those who cannot see it
     * @param width its width
     * @param height its height
     * @return an XML document
     */
    String document(String title, double width, double height) {
        return String.format(
                        Locale.ROOT,
                        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%1$s\" height=\"%2$s\" viewBox=\"0 0 %1$s %2$s\""
                                + " font-family=\"DejaVu Sans, Verdana, sans-serif\">%n<title>%3$s</title>%n"
                                + "<rect width=\"%1$s\" height=\"%2$s\" fill=\"white\"/>%n",
                        number(width),
                        number(height),
                        escaped(title))
                + body
                + "</svg>\n";
    }

    private void element(String format, Object... values) {
        body.append(String.format(Locale.ROOT, format, values)).append('\n');
    }

    private static String number(double number) {
        return FigureText.plain(number);
    }

    /** XML 1.0, sections 2.2 and 2.4: markup is escaped, characters that XML cannot hold are left out. */
    private static String escaped(String text) {
        return text.codePoints()
                .filter(c -> c >= ' ' && c != 0xFFFE && c != 0xFFFF && !(c >= 0xD800 && c <= 0xDFFF))
                .mapToObj(SvgWriter::escaped)
                .collect(Collectors.joining());
    }

    private static String escaped(int c) {
        return switch (c) {
            case '&' -> "&amp;";
            case '<' -> "&lt;";
            case '>' -> "&gt;";
            case '"' -> "&quot;";
            default -> Character.toString(c);
        };
    }
}
