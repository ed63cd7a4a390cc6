package dev.lampwright.config;

import java.util.List;

/** Every section of the file, in the order of the users' reference. */
final class Keys {
    static final List<Section> SECTIONS = List.of(
            ConfigFile.SECTION,
            BrokerSection.SECTION,
            PrinterSection.SECTION,
            PrinterSection.FAULT_TEXT,
            StateSection.SECTION,
            ConditionSection.SECTION,
            ConditionSection.AND,
            ReadingsSection.SECTION,
            OwnReadings.SECTION,
            WillSection.SECTION,
            EventsSection.SECTION,
            ControllerSection.SECTION,
            SupplySection.SECTION,
            StripSection.SECTION,
            StripColours.MEASURED,
            StripColours.EMITTER,
            WiringSection.SECTION,
            WiredSupplies.SECTION,
            WiredStrip.SECTION,
            WiredLight.SECTION,
            WiringSection.BOARD,
            WiringSection.COMPUTER,
            ZonesSection.SECTION,
            ViewsSection.SECTION,
            DimmerEntry.SECTION,
            GuardSection.SECTION,
            AlarmSection.SECTION,
            DeskSection.SECTION,
            DeskSection.QUIET,
            ConfigFile.HISTORY,
            ConfigFile.METRICS,
            PageSection.SECTION,
            LooksSection.SECTION,
            LooksSection.LEVEL,
            LayerKeys.SECTION,
            CuesSection.SECTION);

    private Keys() {}
}
