package dev.lampwright.look;

import java.util.List;

/** What the strip and the dimmers show: a stack of layers, and a level for each dimmer. */
public final class Look {
    private final String name;
    private final List<Layer> layers;
    private final float[] dimmers;

    /**
     * Makes a look.
     *
     * @param name its name
     * @param layers the lowest first
     * @param dimmers 0 to 1 for each dimmer in use
     */
    Look(String name, List<Layer> layers, float[] dimmers) {
        this.name = name;
        this.layers = List.copyOf(layers);
        this.dimmers = dimmers.clone();
    }

    /**
     * The name of this look.
     *
     * @return as the configuration has it
     */
    public String name() {
        return name;
    }

    /**
     * Draws the look.
     *
     * @param moment the time and the signals
     * @param canvas what to draw on; everything on it is replaced
     */
    public void draw(Moment moment, Canvas canvas) {
        canvas.clear();
        for (int i = 0; i < layers.size(); i++) {
            layers.get(i).draw(moment, canvas);
        }
        System.arraycopy(dimmers, 0, canvas.dimmers(), 0, dimmers.length);
    }
}
