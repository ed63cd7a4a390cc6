package dev.lampwright.colour;

import java.util.Objects;

/**
 * The inverse of what a strip's LEDs make of their duties: from linear light to the duties that show it. Without a calibration, the strip's
 * red, green and blue are assumed to be those of sRGB, and its white the three together. A value: two that give the same duties are equal.
 */
public final class Calibration {
    /** The cone responses of Bradford's adaptation. Source: ICC.1:2010, annex E. */
    private static final Matrix BRADFORD =
            new Matrix(0.8951, 0.2664, -0.1614, -0.7502, 1.7135, 0.0367, 0.0389, -0.0685, 1.0296);

    private static final Triple ONES = new Triple(1, 1, 1);

    private final Matrix dutiesOfXyz;
    private final Matrix dutiesOfLight;
    private final Triple white;

    private Calibration(Matrix dutiesOfXyz, Matrix dutiesOfLight, Triple white) {
        this.dutiesOfXyz = dutiesOfXyz;
        this.dutiesOfLight = dutiesOfLight;
        this.white = white;
    }

    /**
     * Nothing known: duties are linear sRGB.
     *
     * @return the calibration
     */
    public static Calibration none() {
        return gains(1, 1, 1);
    }

    /**
     * Reduces strong channels.
     *
     * @param red share of its duty that is used, above 0 and up to 1
     * @param green the same for green
     * @param blue the same for blue
     * @return the calibration
     * @throws IllegalArgumentException if a gain is outside
     */
    public static Calibration gains(double red, double green, double blue) {
        Triple gains = new Triple(red, green, blue);
        if (!(gains.least() > 0 && gains.most() <= 1)) {
            throw new IllegalArgumentException(
                    "gains of " + red + ", " + green + ", " + blue + "; each is above 0 and at most 1");
        }
        Matrix matrix = Matrix.diagonal(red, green, blue);
        return new Calibration(matrix.times(Rgb.FROM_XYZ), matrix, gains);
    }

    /**
     * Shows colours as they are meant, from what was measured. The brightest white then has one channel at full duty.
     *
     * @param red the red LEDs
     * @param green the green LEDs
     * @param blue the blue LEDs
     * @param target what white should look like; the other colours are adapted to it by Bradford's method
     * @return the calibration
     * @throws IllegalArgumentException if the three are collinear, or cannot produce that white
     */
    public static Calibration measured(Emitter red, Emitter green, Emitter blue, Chromaticity target) {
        Matrix duties = inverse(Matrix.columns(red.xyz(), green.xyz(), blue.xyz()));
        Matrix adapted = duties.times(adaptation(target)).times(Rgb.TO_XYZ);
        Triple neutral = adapted.times(ONES);
        if (neutral.least() <= 0) {
            throw new IllegalArgumentException("the white at " + at(target)
                    + " lies outside of what these three colours make; choose one between them");
        }
        return new Calibration(duties, adapted.times(1 / neutral.most()), neutral);
    }

    /**
     * Adds the white LEDs of a strip with four channels, if only their colour is known: at full duty they count as bright as red, green and
     * blue together can be in that colour.
     *
     * @param colour their chromaticity; {@link BlackBody#chromaticity} has it for a colour temperature
     * @return a calibration with white
     * @throws IllegalArgumentException if red, green and blue cannot produce that colour
     */
    public Calibration withWhite(Chromaticity colour) {
        Triple duties = dutiesOfXyz.times(colour.xyz(1));
        double strongest = duties.most();
        return withWhite(duties.each(duty -> duty / strongest), colour);
    }

    /**
     * Adds the white LEDs of a strip with four channels, as measured.
     *
     * @param white the white LEDs, their luminance in the unit of the others; without others measured, red, green and blue together are 1
     * @return a calibration with white
     * @throws IllegalArgumentException if red, green and blue cannot produce its colour
     */
    public Calibration withWhite(Emitter white) {
        return withWhite(dutiesOfXyz.times(white.xyz()), white.colour());
    }

    private Calibration withWhite(Triple duties, Chromaticity colour) {
        if (duties.least() <= 0) {
            throw new IllegalArgumentException("the white LED at " + at(colour)
                    + " lies outside of what red, green and blue make; measure again, or leave it out");
        }
        return new Calibration(dutiesOfXyz, dutiesOfLight, duties);
    }

    /** From linear sRGB to duties of red, green and blue; outside 0 to 1 for colours that the strip cannot show. */
    Matrix dutiesOfLight() {
        return dutiesOfLight;
    }

    /** The duties of red, green and blue that match white at full duty, each above 0. */
    Triple white() {
        return white;
    }

    /** The luminance of each channel at full duty, scaled so that white light is 1. */
    Triple luminances() {
        Matrix xyz = dutiesOfXyz.inverse();
        Triple neutral = dutiesOfLight.times(ONES);
        double full = xyz.times(neutral).second();
        return new Triple(xyz.cell(1, 0) / full, xyz.cell(1, 1) / full, xyz.cell(1, 2) / full);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Calibration calibration
                && dutiesOfXyz.equals(calibration.dutiesOfXyz)
                && dutiesOfLight.equals(calibration.dutiesOfLight)
                && white.equals(calibration.white);
    }

    @Override
    public int hashCode() {
        return Objects.hash(dutiesOfXyz, dutiesOfLight, white);
    }

    private static Matrix adaptation(Chromaticity target) {
        Triple from = BRADFORD.times(Chromaticity.of(Rgb.TO_XYZ.times(ONES)).xyz(1));
        Triple to = BRADFORD.times(target.xyz(1));
        Matrix scale =
                Matrix.diagonal(to.first() / from.first(), to.second() / from.second(), to.third() / from.third());
        return BRADFORD.inverse().times(scale).times(BRADFORD);
    }

    private static Matrix inverse(Matrix emitters) {
        try {
            return emitters.inverse();
        } catch (ArithmeticException e) {
            throw new IllegalArgumentException(
                    "red, green and blue were measured on one line of the CIE diagram; measure again", e);
        }
    }

    private static String at(Chromaticity colour) {
        return "x = " + colour.x() + ", y = " + colour.y();
    }
}
