package dev.lampwright.look;

/** The result of a part of a layer at each place of a zone. */
final class Places {
    private Places() {}

    /** How far each place is covered; 0 where it is not reached. */
    static float[] covered(Extent extent, Moment moment, int pixels) {
        Cover cover = new Cover(pixels);
        cover.begin(pixels);
        extent.cover(moment, cover);
        float[] all = new float[pixels];
        for (int i = cover.from(); i < cover.to(); i++) {
            all[i] = cover.values()[cover.step() * i];
        }
        return all;
    }

    /** The colour and the alpha of each place: four floats. */
    static float[] painted(Paint paint, Moment moment, int pixels) {
        Cover cover = new Cover(pixels);
        cover.begin(pixels);
        cover.all();
        float[] colours = paint.paint(moment, cover, new float[4 * pixels]);
        float[] all = new float[4 * pixels];
        for (int i = 0; i < pixels; i++) {
            System.arraycopy(colours, paint.isEven() ? 0 : 4 * i, all, 4 * i, 4);
        }
        return all;
    }
}
