package dev.lampwright.colour;

/**
 * How colours look to people who lack one kind of cone. Source: G. M. Machado, M. M. Oliveira and L. A. F. Fernandes, "A
 * Physiologically-based Model for Simulation of Color Vision Deficiency", IEEE Transactions on Visualization and Computer Graphics
 * 15(6), 2009, the published matrices for severity 1.0, applied to linear light.
 */
public enum ColourVision {
    /** Without long-wave cones: red is dark and hard to distinguish from green. */
    PROTAN,
    /** Without middle-wave cones: red is hard to distinguish from green. */
    DEUTAN,
    /** Without short-wave cones: blue is hard to distinguish from green. */
    TRITAN;

    private static final Matrix WITHOUT_LONG =
            new Matrix(0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998);
    private static final Matrix WITHOUT_MIDDLE =
            new Matrix(0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881);
    private static final Matrix WITHOUT_SHORT =
            new Matrix(1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.303900);

    /**
     * Shows how a colour looks to them.
     *
     * @param light the colour
     * @return the corresponding colour, clipped channel by channel if it cannot be shown
     */
    public Light seen(Light light) {
        return Rgb.of(matrix().times(Rgb.of(light).numbers())).light();
    }

    private Matrix matrix() {
        return switch (this) {
            case PROTAN -> WITHOUT_LONG;
            case DEUTAN -> WITHOUT_MIDDLE;
            case TRITAN -> WITHOUT_SHORT;
        };
    }
}
