package dev.lampwright.tool.plan;

import dev.lampwright.wiring.Wiring;
import java.util.ArrayList;
import java.util.List;

/** A place that current flows through: a supply, or the connector of one wire. */
interface CurrentPath {
    /**
     * The current there.
     *
     * @param pixels what each pixel draws, in A
     * @param dimmers what each dimmer draws, in A
     * @return A
     */
    double amps(double[] pixels, double[] dimmers);

    /**
     * The connectors of a rig, in the order of {@link Plan#runs}.
     *
     * @param rig the rig
     * @param model its strip
     * @return one per wire
     */
    static List<CurrentPath> connectors(PlannedLights rig, StripModel model) {
        ResistorLadder ladder = model.wired();
        List<CurrentPath> places = new ArrayList<>();
        rig.wiring().strip().points().forEach(point -> places.add(atStrip(ladder, point.pixel())));
        rig.wiring().lights().forEach(light -> places.add(atLight(light)));
        return places;
    }

    /** By reciprocity, a wire carries a fixed share of each pixel's current. */
    private static CurrentPath atStrip(ResistorLadder ladder, int point) {
        double[] ohms = ladder.ohmsTo(point);
        return (pixels, dimmers) -> {
            double drop = 0;
            for (int i = 0; i < pixels.length; i++) {
                drop += ohms[i] * pixels[i];
            }
            return ladder.siemens(point) * drop;
        };
    }

    private static CurrentPath atLight(Wiring.Light light) {
        return (pixels, dimmers) ->
                light.outputs().stream().mapToDouble(i -> dimmers[i]).sum();
    }
}
