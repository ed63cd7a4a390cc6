package dev.lampwright.look;

import java.util.ArrayList;
import java.util.List;

/** What the strip and the dimmers show: a stack of layers, and a level for each dimmer. For one thread. */
public final class Look {
    private final String name;
    private final List<Layer> layers;
    private final List<Level> dimmers;
    private final boolean steadyForCamera;

    /**
     * Makes a look.
     *
     * @param name its name
     * @param layers the lowest first
     * @param dimmers a level for each dimmer in use
     * @param steadyForCamera whether its light keeps still while pictures are taken
     */
    public Look(String name, List<Layer> layers, List<Level> dimmers, boolean steadyForCamera) {
        this.name = name;
        this.layers = List.copyOf(layers);
        this.dimmers = List.copyOf(dimmers);
        this.steadyForCamera = steadyForCamera;
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
     * Whether light keeps still while pictures are taken.
     *
     * @return the look's camera flag
     */
    public boolean steadyForCamera() {
        return steadyForCamera;
    }

    /**
     * Whether the rhythm of any of its layers flashes.
     *
     * @return false if light only swells, sinks and moves
     */
    public boolean flashes() {
        return layers.stream().anyMatch(Layer::flashes);
    }

    /**
     * How many layers the look has.
     *
     * @return 0 or more
     */
    public int layers() {
        return layers.size();
    }

    /**
     * The same look without one of its layers, to find out what that does. The two are not to be drawn in turn.
     *
     * @param layer which, from 0, the lowest
     * @return a new look
     */
    public Look without(int layer) {
        List<Layer> others = new ArrayList<>(layers);
        others.remove(layer);
        return new Look(name, others, dimmers, steadyForCamera);
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
        for (int i = 0; i < dimmers.size(); i++) {
            canvas.dimmers()[i] = (float) dimmers.get(i).at(moment);
        }
    }
}
