package dev.lampwright.look;

/** One layer of a look: paint × extent × rhythm on a zone, laid over what is below. Keeps its buffers, so it allocates nothing. */
final class Layer {
    private final PixelRun zone;
    private final Paint paint;
    private final Extent extent;
    private final Rhythm rhythm;
    private final float opacity;
    private final float[] rgb;
    private final float[] cover;

    /**
     * Makes a layer.
     *
     * @param zone the pixels it lies on
     * @param paint what colour
     * @param extent which pixels
     * @param rhythm when
     * @param opacity how strongly, 0 to 1
     */
    Layer(PixelRun zone, Paint paint, Extent extent, Rhythm rhythm, double opacity) {
        this.zone = zone;
        this.paint = paint;
        this.extent = extent;
        this.rhythm = rhythm;
        this.opacity = (float) opacity;
        rgb = new float[3 * zone.length()];
        cover = new float[zone.length()];
    }

    /**
     * Lays this over what is there: source-over on premultiplied light. Source: W3C Compositing and Blending Level 1, 9.1.4.
     *
     * @param moment the time and the signals
     * @param canvas where to draw
     */
    void draw(Moment moment, Canvas canvas) {
        float strength = opacity * rhythm.level(moment.seconds());
        if (strength == 0) {
            return;
        }
        int pixels = zone.length();
        paint.paint(moment, rgb, pixels);
        extent.cover(moment, cover, pixels);
        float[] rgba = canvas.rgba();
        for (int i = 0; i < pixels; i++) {
            float alpha = cover[i] * strength;
            int at = 4 * zone.pixel(i);
            for (int channel = 0; channel < 3; channel++) {
                rgba[at + channel] = rgb[3 * i + channel] * alpha + rgba[at + channel] * (1 - alpha);
            }
            rgba[at + 3] = alpha + rgba[at + 3] * (1 - alpha);
        }
    }
}
