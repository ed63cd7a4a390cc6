package dev.lampwright.colour;

/** The light of a glowing body: Planck's law, seen by the CIE 1931 standard observer. Constants: SI since 2019 (CODATA 2018). */
public final class BlackBody {
    /** The lowest temperature that is calculated, in K; its glow is far too weak to be seen. */
    public static final double COLDEST_K = 500;

    /** The highest temperature that is calculated, in K; beyond it the colour hardly changes. */
    public static final double HOTTEST_K = 100_000;

    /** 2hc², in W·m²/sr. */
    private static final double FIRST_CONSTANT = 1.191042972e-16;

    /** hc/k, in m·K. */
    private static final double SECOND_CONSTANT = 1.438776877e-2;

    /** In lm/W. */
    private static final double LUMINOUS_EFFICACY = 683.002;

    private BlackBody() {}

    /**
     * The colour without its brightness.
     *
     * @param kelvin temperature, {@value #COLDEST_K} to {@value #HOTTEST_K}
     * @return its place on the Planckian locus
     * @throws IllegalArgumentException if the temperature is outside
     */
    public static Chromaticity chromaticity(double kelvin) {
        return Chromaticity.of(xyz(kelvin));
    }

    /**
     * The brightness.
     *
     * @param kelvin temperature, {@value #COLDEST_K} to {@value #HOTTEST_K}
     * @return luminance in cd/m²
     * @throws IllegalArgumentException if the temperature is outside
     */
    public static double luminance(double kelvin) {
        return LUMINOUS_EFFICACY * xyz(kelvin).second();
    }

    /**
     * The colour, as bright as it can be shown. Below 1900 K it is redder than sRGB; negative blue or green is clipped, which from 900 K up
     * cannot be seen (deltaEOK under 0.02).
     *
     * @param kelvin temperature, {@value #COLDEST_K} to {@value #HOTTEST_K}
     * @return light with its strongest channel at 1
     * @throws IllegalArgumentException if the temperature is outside
     */
    public static Light light(double kelvin) {
        Triple rgb = Rgb.FROM_XYZ.times(xyz(kelvin));
        double strongest = rgb.most();
        return Rgb.of(rgb.each(value -> value / strongest)).light();
    }

    /** In W/(sr·m²), weighted by the observer. */
    private static Triple xyz(double kelvin) {
        if (!(kelvin >= COLDEST_K && kelvin <= HOTTEST_K)) {
            throw new IllegalArgumentException("a glow of " + kelvin + " K; temperatures from " + COLDEST_K + " K to "
                    + HOTTEST_K + " K have one");
        }
        return Observer.xyz(
                metres -> FIRST_CONSTANT / (Math.pow(metres, 5) * Math.expm1(SECOND_CONSTANT / (metres * kelvin))));
    }
}
