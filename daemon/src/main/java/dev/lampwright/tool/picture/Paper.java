package dev.lampwright.tool.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;

/** A picture while it is drawn. Needs no screen. */
final class Paper implements AutoCloseable {
    private static final double ARROW = 3.5;

    static {
        needNoScreen();
    }

    private final BufferedImage image;
    private final Graphics2D graphics;

    /**
     * Tells the drawing library that there is no display; otherwise it looks for one on first use, and fails without it. Call this before
     * using anything of the drawing library.
     */
    static void needNoScreen() {
        System.setProperty("java.awt.headless", "true");
    }

    /** Where a text is relative to a point. */
    enum Side {
        /** To its right. */
        RIGHT(0),
        /** Around it. */
        MIDDLE(0.5),
        /** To its left. */
        LEFT(1);

        private final double before;

        Side(double before) {
            this.before = before;
        }
    }

    /**
     * Creates a sheet of paper.
     *
     * @param width in px
     * @param height in px
     * @param ground its colour
     */
    Paper(int width, int height, int ground) {
        image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        graphics = image.createGraphics();
        graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        graphics.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        fill(0, 0, width, height, ground);
    }

    /** What has been drawn; the same each time. */
    BufferedImage image() {
        return image;
    }

    /** Fills a rectangle. */
    void fill(int x, int y, int width, int height, int tone) {
        graphics.setColor(new Color(tone));
        graphics.fillRect(x, y, width, height);
    }

    /** Sets one pixel. */
    void dot(int x, int y, int tone) {
        image.setRGB(x, y, tone);
    }

    /** Draws a line one pixel wide; whole numbers are pixel centres. */
    void line(double x1, double y1, double x2, double y2, int tone) {
        graphics.setColor(new Color(tone));
        graphics.setStroke(new BasicStroke(1));
        graphics.draw(new Line2D.Double(x1 + 0.5, y1 + 0.5, x2 + 0.5, y2 + 0.5));
    }

    /** Draws the head of an arrow that points to the right, or to the left. */
    void arrowHead(double x, double y, boolean right, int tone) {
        double back = right ? -ARROW : ARROW;
        Path2D head = new Path2D.Double();
        head.moveTo(x + 0.5 + back, y + 0.5 - ARROW);
        head.lineTo(x + 0.5, y + 0.5);
        head.lineTo(x + 0.5 + back, y + 0.5 + ARROW);
        graphics.setColor(new Color(tone));
        graphics.setStroke(new BasicStroke(1));
        graphics.draw(head);
    }

    /** Writes it. */
    void write(Lettering lettering, String text, double x, double y, Side side, int tone) {
        graphics.setColor(new Color(tone));
        lettering.write(graphics, text, x - side.before * lettering.width(text), y);
    }

    /** Rounds everything drawn so far to a few greys between the ground's colour and that of words. */
    void keepGreys(int ground, int count) {
        int dark = ground & 0xFF;
        double span = (PictureColours.WORDS & 0xFF) - dark;
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                double share = ((image.getRGB(x, y) & 0xFF) - dark) / span;
                image.setRGB(
                        x,
                        y,
                        PictureColours.between(
                                ground, PictureColours.WORDS, Math.round(share * count) / (double) count));
            }
        }
    }

    @Override
    public void close() {
        graphics.dispose();
    }
}
