package dev.lampwright.config;

import dev.lampwright.protocol.Setup;
import java.util.ArrayList;
import java.util.List;

/** Puts the sections about what is fitted together into one set-up of the controller. */
final class Fitting {
    private static final int STRIP_SUPPLY = 0;
    private static final int MICRO = 1000;

    private Fitting() {}

    static Setup setup(StripSection strip, SupplySection supply, ControllerSection controller, DimmersSection dimmers) {
        List<Integer> ceilings = new ArrayList<>();
        ceilings.add(supply.ceilingMilliamps());
        ceilings.addAll(dimmers.ceilingsMilliamps());
        return new Setup(
                strip.pixels(),
                strip.order(),
                strip.channelMicroamps(),
                strip.darkMicroamps(),
                STRIP_SUPPLY,
                controller.holdoverMillis(),
                controller.whenSilent(),
                ceilings,
                dimmers.dimmers());
    }

    /** Complains of a ceiling below what the dark strip draws. */
    static void noteDarkStrip(Table root, StripSection strip, SupplySection supply) {
        Table supplyTable = root.table("supply");
        Table stripTable = root.table("strip");
        if (!supplyTable.right() || !stripTable.right()) {
            return;
        }
        long darkMicroamps = (long) strip.pixels() * strip.darkMicroamps();
        if (darkMicroamps <= (long) supply.ceilingMilliamps() * MICRO) {
            return;
        }
        String draw = strip.pixels() + " dark pixels draw " + Shown.number((double) darkMicroamps / MICRO) + " mA";
        String right = "raise supply.ceiling_mA if supply and wiring are built for it, or fit fewer pixels";
        if (supplyTable.has("ceiling_mA")) {
            supplyTable.mistake("ceiling_mA", "is " + supply.ceilingMilliamps() + ", but " + draw, right);
        } else {
            String ceiling = "the ceiling, as it is not given, is " + supply.ceilingMilliamps() + " mA";
            stripTable.mistake("pixels", "is too many: " + draw + ", and " + ceiling, right);
        }
    }
}
