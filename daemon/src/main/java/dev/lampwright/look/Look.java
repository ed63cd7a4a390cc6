package dev.lampwright.look;

import dev.lampwright.signal.Signals;
import java.util.List;
import java.util.function.Consumer;

/**
 * What the strip and the dimmers show: a stack of layers, and a level for each dimmer. A layer or a level that fails, or whose light is not
 * a number from 0 to 1, is dark from then on, and the rest continues. {@link LookSpec} describes one. For one thread.
 */
public final class Look {
    private static final String UNSOUND = "its light is not a number from 0 to 1";

    private final String name;
    private final List<Layer> layers;
    private final List<Level> dimmers;
    private final boolean steadyForCamera;
    private final boolean[] darkLayers;
    private final boolean[] darkDimmers;

    /**
     * Creates a look.
     *
     * @param name its name
     * @param layers the lowest first
     * @param dimmers a level for each dimmer in use
     * @param steadyForCamera whether its light stays steady while pictures are taken
     */
    public Look(String name, List<Layer> layers, List<Level> dimmers, boolean steadyForCamera) {
        this.name = name;
        this.layers = List.copyOf(layers);
        this.dimmers = List.copyOf(dimmers);
        this.steadyForCamera = steadyForCamera;
        darkLayers = new boolean[layers.size()];
        darkDimmers = new boolean[dimmers.size()];
    }

    /**
     * The name of this look.
     *
     * @return as in the configuration
     */
    public String name() {
        return name;
    }

    /**
     * Whether light stays steady while pictures are taken.
     *
     * @return the look's camera flag
     */
    public boolean steadyForCamera() {
        return steadyForCamera;
    }

    /**
     * Draws the look. Allocates nothing unless a part fails.
     *
     * @param moment the time and the signals
     * @param canvas what to draw on; everything on it is replaced
     * @param faults receives each part that fails, once
     */
    public void draw(Moment moment, Canvas canvas, Consumer<LookFault> faults) {
        drawLayers(moment, canvas, faults);
        if (!canvas.isSound()) {
            drawWithoutUnsound(moment, canvas, faults);
        }
        for (int i = 0; i < darkDimmers.length; i++) {
            drawDimmer(i, moment, canvas, faults);
        }
    }

    /**
     * How long this draws the same as at a moment, if nothing new is heard.
     *
     * @param moment the time and the signals, as last drawn
     * @return ns: 0 if it may move, {@link Signals#FOREVER} if it does not
     */
    public long stillFor(Moment moment) {
        long still = Signals.FOREVER;
        for (int i = 0; i < darkLayers.length && still > 0; i++) {
            still = darkLayers[i] ? still : Math.min(still, layers.get(i).stillFor(moment));
        }
        for (int i = 0; i < darkDimmers.length && still > 0; i++) {
            still = darkDimmers[i] ? still : Math.min(still, dimmers.get(i).stillFor(moment));
        }
        return still;
    }

    /** Starts over without a layer that fails, because it may have drawn some of its light. */
    private void drawLayers(Moment moment, Canvas canvas, Consumer<LookFault> faults) {
        canvas.clear();
        for (int i = 0; i < darkLayers.length; i++) {
            if (!drawLayer(i, moment, canvas, faults)) {
                drawLayers(moment, canvas, faults);
                return;
            }
        }
    }

    /** Returns false if the layer fails; it is dark from then on. */
    private boolean drawLayer(int layer, Moment moment, Canvas canvas, Consumer<LookFault> faults) {
        if (darkLayers[layer]) {
            return true;
        }
        try {
            layers.get(layer).draw(moment, canvas);
            return true;
        } catch (RuntimeException e) {
            darkLayers[layer] = true;
            faults.accept(new LookFault(name, "layers." + layer, e.toString()));
            return false;
        }
    }

    /** Starts over, checking the light after each layer, until no layer produces invalid light. */
    private void drawWithoutUnsound(Moment moment, Canvas canvas, Consumer<LookFault> faults) {
        canvas.clear();
        for (int i = 0; i < darkLayers.length; i++) {
            boolean drawn = drawLayer(i, moment, canvas, faults);
            if (drawn && !canvas.isSound()) {
                drawn = false;
                darkLayers[i] = true;
                faults.accept(new LookFault(name, "layers." + i, UNSOUND));
            }
            if (!drawn) {
                drawWithoutUnsound(moment, canvas, faults);
                return;
            }
        }
    }

    private void drawDimmer(int dimmer, Moment moment, Canvas canvas, Consumer<LookFault> faults) {
        if (darkDimmers[dimmer]) {
            return;
        }
        String fault = UNSOUND;
        try {
            float level = (float) dimmers.get(dimmer).at(moment);
            if (Canvas.isSound(level)) {
                canvas.dimmers()[dimmer] = level;
                return;
            }
        } catch (RuntimeException e) {
            fault = e.toString();
        }
        darkDimmers[dimmer] = true;
        faults.accept(new LookFault(name, "dimmers." + dimmer, fault));
    }
}
