package dev.lampwright.config;

import dev.lampwright.look.Fitting;
import dev.lampwright.look.Zone;
import dev.lampwright.protocol.Setup;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Combines the sections about what is fitted: into a set-up for the controller, and a fitting for the looks. */
final class SetupParts {
    private static final int STRIP_SUPPLY = 0;
    private static final int MICRO = 1000;

    private SetupParts() {}

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
                dimmers.outputs(),
                strip.runs());
    }

    /**
     * What looks are made for.
     *
     * @param pixels pixels of the strip
     * @param zones zones of the strip
     * @param dimmers the dimmers
     * @return the fitting, with a zone for each plain colour strip, and one for all of them
     */
    static Fitting fitting(int pixels, Map<String, Zone> zones, DimmersSection dimmers) {
        Map<String, Zone> all = new LinkedHashMap<>(zones);
        Zone plain = Zone.empty();
        for (String name : dimmers.colourStrips()) {
            Zone zone = Zone.run(pixels + plain.length(), pixels + plain.length());
            all.put(name, zone.named(name));
            plain = plain.then(zone);
        }
        if (plain.length() > 0) {
            all.put(DimmersSection.PLAIN, plain.named(DimmersSection.PLAIN));
        }
        return new Fitting(pixels, all, dimmers.uses(pixels));
    }

    /** Reports a ceiling below what the dark strip draws. */
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
        String draw = strip.pixels() + " dark pixels draw " + Wording.number((double) darkMicroamps / MICRO) + " mA";
        String right = "raise supply.ceiling_mA if supply and wiring are built for it, or fit fewer pixels";
        if (supplyTable.has("ceiling_mA")) {
            supplyTable.mistake("ceiling_mA", "is " + supply.ceilingMilliamps() + ", but " + draw, right);
        } else {
            String ceiling = "the ceiling, as it is not given, is " + supply.ceilingMilliamps() + " mA";
            stripTable.mistake("pixels", "is too many: " + draw + ", and " + ceiling, right);
        }
    }
}
