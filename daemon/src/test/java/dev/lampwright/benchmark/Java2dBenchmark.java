package dev.lampwright.benchmark;

import java.awt.AlphaComposite;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.LinearGradientPaint;
import java.awt.MultipleGradientPaint.CycleMethod;
import java.awt.Paint;
import java.awt.RenderingHints;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.util.Random;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;

/**
 * The eight layers of {@link FrameBenchmark} as closely as Java2D can compose them, up to the strip's bytes; without guard and wire. It has
 * less to do: eight bits instead of floats, gradients in sRGB instead of OKLab, source-over for every blend, no heat to calculate (the glow
 * is an image made beforehand), random numbers only once.
 */
@State(Scope.Thread)
public class Java2dBenchmark {
    private static final int PIXELS = 300;
    private static final int HALF = PIXELS / 2;
    private static final int GLINTS = 24;
    private static final double TICK_S = 1 / 60.0;
    private static final float[] DRIFT_STOPS = {0, 1 / 3f, 2 / 3f, 1};
    private static final Color[] DRIFT = {
        new Color(0x191970), new Color(0x008080), new Color(0x663399), new Color(0x191970)
    };
    private static final Color HONEYDEW = new Color(0xF0FFF0);
    private static final Color[] TAIL = {new Color(0x00F0FFF0, true), HONEYDEW};
    private static final float[] ENDS = {0, 1};

    private final BufferedImage image = new BufferedImage(PIXELS, 1, BufferedImage.TYPE_INT_ARGB_PRE);
    private final int[] argb = ((DataBufferInt) image.getRaster().getDataBuffer()).getData();
    private final BufferedImage glow = glow();
    private final byte[] strip = new byte[3 * PIXELS];
    private double seconds;

    private static BufferedImage glow() {
        BufferedImage image = new BufferedImage(PIXELS, 1, BufferedImage.TYPE_INT_ARGB_PRE);
        Random random = new Random(1);
        for (int i = 0; i < PIXELS; i++) {
            image.setRGB(i, 0, new Color(random.nextFloat(), random.nextFloat() / 2, 0).getRGB());
        }
        return image;
    }

    /**
     * One frame.
     *
     * @return the strip's bytes
     */
    @Benchmark
    public byte[] eightLayers() {
        seconds += TICK_S;
        Graphics2D graphics = image.createGraphics();
        graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        clear(graphics);
        ramp(graphics);
        over(graphics, 0.5);
        graphics.drawImage(glow, 0, 0, null);
        bars(graphics);
        band(graphics);
        grains(graphics);
        fill(graphics, Color.ORANGE, 0.4 * swell(seconds / 4), HALF, PIXELS);
        fill(graphics, Color.WHITE, 0.8, 183.9, 186.9);
        graphics.dispose();
        encode();
        return strip;
    }

    private static void clear(Graphics2D graphics) {
        graphics.setComposite(AlphaComposite.Clear);
        graphics.fillRect(0, 0, PIXELS, 1);
    }

    private void ramp(Graphics2D graphics) {
        double offset = seconds / 20 % 1 * PIXELS;
        fill(graphics, gradient(offset, offset + PIXELS, DRIFT_STOPS, DRIFT), 0.4, 0, PIXELS);
    }

    private static void bars(Graphics2D graphics) {
        fill(graphics, new Color(0xDC143C), 0.6, 0, 99.86);
        Color[] colours = {new Color(0x2E8B57), new Color(0xFFD700)};
        fill(graphics, gradient(0, PIXELS, ENDS, colours), 0.7, 0, 185.4);
    }

    private void band(Graphics2D graphics) {
        double head = seconds * 45 % PIXELS;
        for (double at = head; at < PIXELS + 49; at += PIXELS) {
            fill(graphics, gradient(at - 49, at - 9, ENDS, TAIL), 0.5, at - 49, at);
        }
    }

    private void grains(Graphics2D graphics) {
        for (int i = 0; i < GLINTS; i++) {
            int place = i * 113 % PIXELS;
            fill(graphics, HONEYDEW, 0.6 * swell(seconds / 2.5 + 0.37 * i), place, place + 1);
        }
    }

    private void encode() {
        for (int i = 0; i < PIXELS; i++) {
            int pixel = argb[i];
            strip[3 * i] = (byte) (pixel >> 8);
            strip[3 * i + 1] = (byte) (pixel >> 16);
            strip[3 * i + 2] = (byte) pixel;
        }
    }

    private static Paint gradient(double from, double to, float[] stops, Color[] colours) {
        return new LinearGradientPaint(
                new Point2D.Double(from, 0), new Point2D.Double(to, 0), stops, colours, CycleMethod.REPEAT);
    }

    private static void fill(Graphics2D graphics, Paint paint, double alpha, double from, double to) {
        over(graphics, alpha);
        graphics.setPaint(paint);
        graphics.fill(new Rectangle2D.Double(from, 0, to - from, 1));
    }

    private static void over(Graphics2D graphics, double alpha) {
        graphics.setComposite(AlphaComposite.SrcOver.derive((float) alpha));
    }

    private static double swell(double turns) {
        return 0.5 - 0.5 * Math.cos(2 * Math.PI * turns);
    }
}
