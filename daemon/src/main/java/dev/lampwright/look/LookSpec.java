package dev.lampwright.look;

import dev.lampwright.signal.Signal;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.UnaryOperator;

/**
 * Describes what the strip and the dimmers show: a stack of layers, and a level for each dimmer. Immutable; one description can make any
 * number of looks.
 *
 * @param name its name, as in the configuration
 * @param layers the lowest first
 * @param dimmers a level for each dimmer in use
 * @param steadyForCamera whether its light stays steady while pictures are taken
 */
public record LookSpec(String name, List<LayerSpec> layers, List<Level> dimmers, boolean steadyForCamera) {
    /** Keeps copies of the lists. */
    public LookSpec {
        layers = List.copyOf(layers);
        dimmers = List.copyOf(dimmers);
    }

    /**
     * Creates the look.
     *
     * @return a new one in which nothing has failed yet
     */
    public Look make() {
        return new Look(name, layers.stream().map(LayerSpec::make).toList(), dimmers, steadyForCamera);
    }

    /**
     * Whether the rhythm of any of its layers flashes.
     *
     * @return false if light only swells, fades and moves
     */
    public boolean flashes() {
        return layers.stream().anyMatch(layer -> layer.rhythm().flashes());
    }

    /**
     * The signals that its layers and its dimmers follow.
     *
     * @return each once, in the order in which the layers follow them
     */
    public Set<Signal> signals() {
        Set<Signal> signals = new LinkedHashSet<>();
        for (LayerSpec layer : layers) {
            layer.follows().forEach(follow -> signals.add(follow.signal()));
        }
        dimmers.forEach(level -> level.follows().ifPresent(follow -> signals.add(follow.signal())));
        return signals;
    }

    /**
     * The same with one of its layers lit all the time, to find out what its rhythm does.
     *
     * @param layer which, from 0, the lowest
     * @return another description
     */
    public LookSpec withoutRhythm(int layer) {
        List<LayerSpec> others = new ArrayList<>(layers);
        LayerSpec steady = layers.get(layer);
        others.set(
                layer,
                new LayerSpec(
                        steady.zone(),
                        steady.paint(),
                        steady.extent(),
                        Rhythm.FIXED,
                        steady.opacity(),
                        steady.blend()));
        return new LookSpec(name, others, dimmers, steadyForCamera);
    }

    /**
     * The same on another strip.
     *
     * @param zones gives each zone's counterpart on the other strip
     * @return another description
     */
    public LookSpec on(UnaryOperator<Zone> zones) {
        List<LayerSpec> others = layers.stream()
                .map(layer -> new LayerSpec(
                        zones.apply(layer.zone()),
                        layer.paint(),
                        layer.extent(),
                        layer.rhythm(),
                        layer.opacity(),
                        layer.blend()))
                .toList();
        return new LookSpec(name, others, dimmers, steadyForCamera);
    }

    /**
     * The same without one of its layers, to find out what that does.
     *
     * @param layer which, from 0, the lowest
     * @return another description
     */
    public LookSpec without(int layer) {
        List<LayerSpec> others = new ArrayList<>(layers);
        others.remove(layer);
        return new LookSpec(name, others, dimmers, steadyForCamera);
    }
}
