package dev.lampwright.link;

import dev.lampwright.protocol.FrameParts;
import dev.lampwright.protocol.Here;
import dev.lampwright.protocol.MessageWriter;
import dev.lampwright.protocol.Setup;
import java.util.ArrayList;
import java.util.List;

/** Whether a controller can do what a set-up requires. */
final class Fit {
    /** Channels per pixel assumed by {@link Here#mostPixels}. */
    private static final int CHANNELS_COUNTED = 3;

    private Fit() {}

    /**
     * Compares a set-up with what the controller reports that it can do.
     *
     * @throws UnfitException if it cannot
     */
    static void check(Here here, Setup setup) throws UnfitException {
        int room = here.mostPixels() * CHANNELS_COUNTED;
        require(
                setup.stripBytes() <= room,
                "the strip has " + setup.stripBytes() + " channels, and the controller has room for " + room
                        + ": lower [strip] pixels, or use a larger board");
        require(
                setup.dimmers().size() <= here.dimmers(),
                "the controller has " + here.dimmers() + " dimmers, and "
                        + setup.dimmers().size() + " are named: remove some from [dimmers]");
        int lines = Setup.dataLines(setup.runs());
        require(
                lines <= here.outputs(),
                "the controller has " + here.outputs() + (here.outputs() == 1 ? " data line" : " data lines")
                        + ", and [strip] outputs needs " + lines + ": "
                        + (here.outputs() == 1
                                ? "join the strip end to end and remove outputs"
                                : "put the strip on fewer data lines")
                        + ", or use a board that has more, such as an RP2040");
        require(
                largestPart(setup) <= here.mostPacketBytes(),
                "the controller takes packets of " + here.mostPacketBytes() + " bytes, and the set-up needs "
                        + largestPart(setup) + ": remove some from [dimmers]");
    }

    /**
     * Compares the active set-up with the requested one.
     *
     * @throws UnfitException if they differ
     */
    static void checkInForce(Setup asked, Setup inForce) throws UnfitException {
        List<String> differences = new ArrayList<>();
        compare(differences, "pixels", asked.pixels(), inForce.pixels());
        compare(differences, "order", asked.order(), inForce.order());
        compare(differences, "channel currents in µA", asked.channelMicroamps(), inForce.channelMicroamps());
        compare(differences, "dark current in µA", asked.darkMicroamps(), inForce.darkMicroamps());
        compare(differences, "supply of the strip", asked.stripSupply(), inForce.stripSupply());
        compare(differences, "holdover in ms", asked.holdoverMillis(), inForce.holdoverMillis());
        compare(differences, "what to show then", asked.whenSilent(), inForce.whenSilent());
        compare(differences, "ceilings in mA", asked.ceilingsMilliamps(), inForce.ceilingsMilliamps());
        compare(differences, "dimmers", asked.dimmers(), inForce.dimmers());
        compare(differences, "runs of the strip", asked.runs(), inForce.runs());
        require(
                differences.isEmpty(),
                "the controller has not accepted the set-up, so it stays dark: " + String.join("; ", differences)
                        + ": check its firmware");
    }

    private static int largestPart(Setup setup) {
        int dimmers = setup.dimmers().size();
        int setUp = setup.bodyBytes();
        int firstPart = FrameParts.HEADER + 2 * dimmers + 1;
        return MessageWriter.OVERHEAD + Math.max(setUp, firstPart);
    }

    private static void compare(List<String> differences, String what, Object asked, Object inForce) {
        if (!asked.equals(inForce)) {
            differences.add(what + " asked " + asked + ", in force " + inForce);
        }
    }

    private static void require(boolean fits, String words) throws UnfitException {
        if (!fits) {
            throw new UnfitException(words);
        }
    }
}
