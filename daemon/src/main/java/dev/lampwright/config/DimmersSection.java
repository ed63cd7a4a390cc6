package dev.lampwright.config;

import dev.lampwright.protocol.Setup;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeMap;

/**
 * The section {@code [dimmers]}.
 *
 * @param names their names, from channel 0 on
 * @param dimmers what they are, in the same order
 * @param ceilingsMilliamps ceilings of the supplies that feed only dimmers, from supply 1 on, in mA
 */
record DimmersSection(List<String> names, List<Setup.Dimmer> dimmers, List<Integer> ceilingsMilliamps) {
    private static final int MOST_MILLIAMPS = 65535;
    private static final int HIGHEST_CHANNEL = 254;
    private static final int DARK = 0;

    /** One dimmer as it stands in the file. */
    private record Entry(String name, int channel, double volts, int fullMilliamps, OptionalInt ceilingMilliamps) {}

    /**
     * Reads the section.
     *
     * @param table the section
     * @param stripVolts voltage of the strip's supply, which feeds the dimmers of that voltage too
     * @return the dimmers; each other voltage among them makes a supply
     */
    static DimmersSection read(Table table, double stripVolts) {
        List<Entry> entries = new ArrayList<>();
        table.keys().forEach(name -> entries.add(entry(name, table.table(name), stripVolts)));
        entries.sort(Comparator.comparingInt(Entry::channel));
        if (table.right()) {
            noteGaps(table, entries);
        }
        Map<Double, Integer> ceilings = ceilings(entries, stripVolts);
        if (table.right()) {
            noteUnfit(table, entries, ceilings);
        }
        List<Double> otherVolts = List.copyOf(ceilings.keySet());
        return new DimmersSection(
                entries.stream().map(Entry::name).toList(),
                entries.stream()
                        .map(entry -> new Setup.Dimmer(otherVolts.indexOf(entry.volts) + 1, entry.fullMilliamps, DARK))
                        .toList(),
                List.copyOf(ceilings.values()));
    }

    private static Entry entry(String name, Table table, double stripVolts) {
        Entry entry = new Entry(
                name,
                table.needWhole("channel", 0, HIGHEST_CHANNEL),
                table.needNumber("volts", 1, SupplySection.MOST_VOLTS),
                table.needWhole("full_mA", 1, MOST_MILLIAMPS),
                table.wholeIfThere("ceiling_mA", 1, MOST_MILLIAMPS));
        if (entry.volts == stripVolts && entry.ceilingMilliamps.isPresent()) {
            table.mistake(
                    "ceiling_mA",
                    "is for a supply of its own, but the strip's supply has " + Shown.number(stripVolts) + " V too",
                    "set ceiling_mA in [supply] for both");
        }
        return entry;
    }

    private static void noteGaps(Table table, List<Entry> entries) {
        for (int i = 0; i < entries.size(); i++) {
            Entry entry = entries.get(i);
            if (i > 0 && entry.channel == entries.get(i - 1).channel) {
                String what = "has channel " + entry.channel + ", which " + entries.get(i - 1).name + " has already";
                table.mistake(entry.name, what, "give each dimmer a channel of its own");
                return;
            }
            if (entry.channel != i) {
                String what = "has channel " + entry.channel + ", but no dimmer has channel " + i;
                table.mistake(entry.name, what, "number the channels from 0 on without a gap");
                return;
            }
        }
    }

    /** For each voltage that the strip's supply does not have, the lowest ceiling named there, else what its dimmers take. */
    private static Map<Double, Integer> ceilings(List<Entry> entries, double stripVolts) {
        Map<Double, Integer> ceilings = new TreeMap<>();
        entries.stream().map(Entry::volts).filter(volts -> volts != stripVolts).forEach(volts -> {
            List<Entry> fed =
                    entries.stream().filter(entry -> entry.volts == volts).toList();
            int sum = fed.stream().mapToInt(Entry::fullMilliamps).sum();
            ceilings.put(
                    volts,
                    fed.stream()
                            .flatMapToInt(entry -> entry.ceilingMilliamps.stream())
                            .min()
                            .orElse(sum));
        });
        return ceilings;
    }

    private static void noteUnfit(Table table, List<Entry> entries, Map<Double, Integer> ceilings) {
        List<Double> otherVolts = List.copyOf(ceilings.keySet());
        for (Entry entry : entries) {
            if (otherVolts.indexOf(entry.volts) >= Setup.MOST_SUPPLIES - 1) {
                String what = "is one voltage too many: there are " + otherVolts.size() + " beside the strip's";
                table.mistake(entry.name, what, "use at most " + (Setup.MOST_SUPPLIES - 1));
            }
            if (ceilings.getOrDefault(entry.volts, 0) > MOST_MILLIAMPS) {
                String what = "takes, with all of " + Shown.number(entry.volts) + " V, more than 65535 mA";
                table.mistake(entry.name, what, "set ceiling_mA to what their supply may give, at most 65535");
            }
        }
    }
}
