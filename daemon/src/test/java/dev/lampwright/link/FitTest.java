package dev.lampwright.link;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.lampwright.protocol.Here;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.WhenSilent;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

class FitTest {
    private static Here here(int pixels, int packet, int dimmers) {
        return new Here(1, "1.0.0", 0, pixels, packet, dimmers, 1, 10_000, false);
    }

    private static Setup setup(int pixels, String order, int dimmers) {
        return new Setup(
                pixels,
                order,
                Collections.nCopies(order.length(), 12_000),
                1000,
                0,
                3000,
                WhenSilent.DARK,
                List.of(1500),
                Collections.nCopies(dimmers, new Setup.Dimmer(0, 100, 0)));
    }

    @Test
    void fitsUpToTheVeryLast() {
        assertDoesNotThrow(() -> Fit.check(here(300, 59, 6), setup(300, "GRB", 6)));
        assertDoesNotThrow(() -> Fit.check(here(300, 59, 6), setup(225, "GRBW", 6)), "900 channels either way");
    }

    @Test
    void tooManyPixels() {
        assertEquals(
                "the strip has 904 channels, and the controller has room for 900: lower [strip] pixels, or use a larger board",
                words(here(300, 1024, 6), setup(226, "GRBW", 0)));
    }

    @Test
    void tooManyDimmers() {
        assertEquals(
                "the controller has 1 dimmers, and 2 are named: remove some from [dimmers]",
                words(here(300, 1024, 1), setup(10, "GRB", 2)));
    }

    @Test
    void dataLinesThatTheControllerLacks() {
        Setup whole = setup(30, "GRB", 0);
        Setup cut = new Setup(
                30,
                whole.order(),
                whole.channelMicroamps(),
                whole.darkMicroamps(),
                0,
                3000,
                WhenSilent.DARK,
                whole.ceilingsMilliamps(),
                List.of(),
                List.of(new Setup.Run(1, 10), new Setup.Run(0, 20)));
        assertEquals(
                "the controller has 1 data line, and [strip] outputs needs 2: join the strip end to end and remove outputs, "
                        + "or use a board that has more, such as an RP2040",
                words(here(300, 1024, 6), cut));
        Here two = new Here(1, "1.0.0", 0, 300, 1024, 6, 2, 10_000, true, 2);
        assertDoesNotThrow(() -> Fit.check(two, cut));
        assertThrows(UnfitException.class, () -> Fit.checkInForce(cut, whole), "a controller that skipped the runs");
    }

    @Test
    void packetsTooShortForTheSetup() {
        // 4 bytes around a body of 25 and 5 for each dimmer (wire.md, SETUP).
        assertEquals(
                "the controller takes packets of 38 bytes, and the set-up needs 39: remove some from [dimmers]",
                words(here(300, 38, 6), setup(10, "GRB", 2)));
    }

    @Test
    void differencesInForceAreNamed() {
        String words = assertThrows(
                        UnfitException.class, () -> Fit.checkInForce(setup(10, "GRB", 0), setup(10, "RGB", 1)))
                .getMessage();
        assertEquals(
                "the controller has not accepted the set-up, so it stays dark: order asked GRB, in force RGB; dimmers asked"
                        + " [], in force [Dimmer[supply=0, fullMilliamps=100, silentDuty=0]]: check its firmware",
                words);
    }

    @Test
    void everyFieldIsCompared() {
        Setup asked = setup(10, "GRB", 0);
        assertDoesNotThrow(() -> Fit.checkInForce(asked, setup(10, "GRB", 0)));
        Setup other = new Setup(
                11,
                "RGB",
                List.of(1, 2, 3),
                4,
                1,
                5000,
                WhenSilent.KEEP,
                List.of(6, 7),
                List.of(new Setup.Dimmer(1, 8, 9)));
        String words = assertThrows(UnfitException.class, () -> Fit.checkInForce(asked, other))
                .getMessage();
        assertEquals(
                "the controller has not accepted the set-up, so it stays dark: pixels asked 10, in force 11; order asked GRB, in"
                        + " force RGB; channel currents in µA asked [12000, 12000, 12000], in force [1, 2, 3]; dark current in µA"
                        + " asked 1000, in force 4; supply of the strip asked 0, in force 1; holdover in ms asked 3000, in force"
                        + " 5000; what to show then asked DARK, in force KEEP; ceilings in mA asked [1500], in force [6, 7]; dimmers"
                        + " asked [], in force [Dimmer[supply=1, fullMilliamps=8, silentDuty=9]]: check its firmware",
                words);
    }

    private static String words(Here here, Setup setup) {
        return assertThrows(UnfitException.class, () -> Fit.check(here, setup)).getMessage();
    }
}
