package dev.lampwright.config;

import dev.lampwright.look.Fitting;
import dev.lampwright.protocol.Setup;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * The section {@code [dimmers]}.
 *
 * @param outputs what each dimmer is for the controller, from channel 0 on
 * @param entries the lights on them
 * @param ceilingsMilliamps ceilings of the supplies that feed only dimmers, from supply 1 on, in mA
 * @param supplyVolts voltage of each supply, from supply 0, the strip's, on
 */
record DimmersSection(
        List<Setup.Dimmer> outputs,
        List<DimmerEntry> entries,
        List<Integer> ceilingsMilliamps,
        List<Double> supplyVolts) {
    /** The zone of all plain colour strips. */
    static final String PLAIN = "plain";

    private static final int MOST_MILLIAMPS = 65_535;
    private static final int DARK = 0;

    /** One channel and its light. */
    private record Output(int channel, DimmerEntry entry) {}

    /**
     * Reads the section.
     *
     * @param table the section
     * @param stripVolts voltage of the strip's supply, which feeds the dimmers of that voltage too
     * @return the dimmers; each other voltage among them is a separate supply
     */
    static DimmersSection read(Table table, double stripVolts) {
        List<DimmerEntry> entries = table.keys().stream()
                .map(name -> DimmerEntry.read(name, table.table(name), stripVolts))
                .toList();
        entries.stream()
                .filter(DimmerEntry::isColourStrip)
                .map(DimmerEntry::name)
                .filter(Set.of(ZonesSection.STRIP, PLAIN)::contains)
                .forEach(name ->
                        table.mistake(name, "is the name of a zone that is always there", "choose another name"));
        noteTwice(table, entries);
        List<Output> outputs = table.right() ? outputs(entries, stripVolts) : List.of();
        Map<Double, Integer> ceilings = ceilings(entries, stripVolts);
        if (table.right()) {
            noteUnfit(table, entries, ceilings);
        }
        List<Double> otherVolts = List.copyOf(ceilings.keySet());
        return new DimmersSection(
                outputs.stream()
                        .map(Output::entry)
                        .map(entry ->
                                new Setup.Dimmer(otherVolts.indexOf(entry.volts()) + 1, entry.fullMilliamps(), DARK))
                        .toList(),
                entries,
                List.copyOf(ceilings.values()),
                Stream.concat(Stream.of(stripVolts), otherVolts.stream()).toList());
    }

    /**
     * The names of the plain colour strips.
     *
     * @return in the order of the file
     */
    List<String> colourStrips() {
        return entries.stream()
                .filter(DimmerEntry::isColourStrip)
                .map(DimmerEntry::name)
                .toList();
    }

    /**
     * Where the lights are.
     *
     * @return by name, in the order of the file; unused ones are left out
     */
    Map<String, Mounting.Side> sides() {
        Map<String, Mounting.Side> sides = new LinkedHashMap<>();
        entries.stream().filter(entry -> !entry.unused()).forEach(entry -> sides.put(entry.name(), entry.hangs()));
        return sides;
    }

    /**
     * What each dimmer is for.
     *
     * @param pixels pixels of the strip; those of the plain colour strips follow
     * @return the uses, from channel 0 on
     */
    List<Fitting.DimmerUse> uses(int pixels) {
        List<String> colourStrips = colourStrips();
        List<Fitting.DimmerUse> uses = new ArrayList<>();
        for (Output output : outputs(entries, supplyVolts.get(0))) {
            uses.add(use(output, pixels + colourStrips.indexOf(output.entry.name())));
        }
        return uses;
    }

    private static Fitting.DimmerUse use(Output output, int colourPixel) {
        DimmerEntry entry = output.entry;
        if (entry.unused()) {
            return Fitting.DimmerUse.none();
        }
        return entry.isColourStrip()
                ? new Fitting.DimmerUse(
                        entry.name(), colourPixel, entry.channels().indexOf(output.channel))
                : Fitting.DimmerUse.white(entry.name());
    }

    /** All channels up to the highest with a light; those without a light are unused. */
    private static List<Output> outputs(List<DimmerEntry> entries, double stripVolts) {
        Map<Integer, DimmerEntry> byChannel = new TreeMap<>();
        entries.forEach(entry -> entry.channels().forEach(channel -> byChannel.put(channel, entry)));
        int count = byChannel.keySet().stream()
                .mapToInt(channel -> channel + 1)
                .max()
                .orElse(0);
        return IntStream.range(0, count)
                .mapToObj(channel ->
                        new Output(channel, byChannel.getOrDefault(channel, DimmerEntry.unused(channel, stripVolts))))
                .toList();
    }

    private static void noteTwice(Table table, List<DimmerEntry> entries) {
        Map<Integer, String> taken = new TreeMap<>();
        for (DimmerEntry entry : entries) {
            for (int channel : entry.channels()) {
                String other = taken.putIfAbsent(channel, entry.name());
                if (other != null && table.right()) {
                    String what = "has channel " + channel + ", which " + other + " has already";
                    table.mistake(entry.name(), what, "give each dimmer a channel of its own");
                }
            }
        }
    }

    /** For each voltage that the strip's supply does not have, the lowest ceiling given there, or else what its dimmers draw. */
    private static Map<Double, Integer> ceilings(List<DimmerEntry> entries, double stripVolts) {
        Map<Double, Integer> ceilings = new TreeMap<>();
        entries.stream()
                .map(DimmerEntry::volts)
                .filter(volts -> volts != stripVolts)
                .forEach(volts -> {
                    List<DimmerEntry> fed = entries.stream()
                            .filter(entry -> entry.volts() == volts)
                            .toList();
                    int sum = fed.stream()
                            .mapToInt(entry -> entry.channels().size() * entry.fullMilliamps())
                            .sum();
                    ceilings.put(
                            volts,
                            fed.stream()
                                    .flatMapToInt(entry -> entry.ceilingMilliamps().stream())
                                    .min()
                                    .orElse(sum));
                });
        return ceilings;
    }

    private static void noteUnfit(Table table, List<DimmerEntry> entries, Map<Double, Integer> ceilings) {
        List<Double> otherVolts = List.copyOf(ceilings.keySet());
        for (DimmerEntry entry : entries) {
            if (otherVolts.indexOf(entry.volts()) >= Setup.MOST_SUPPLIES - 1) {
                String what = "is one voltage too many: there are " + otherVolts.size() + " beside the strip's";
                table.mistake(entry.name(), what, "use at most " + (Setup.MOST_SUPPLIES - 1));
            }
            if (ceilings.getOrDefault(entry.volts(), 0) > MOST_MILLIAMPS) {
                String what = "takes, with all of " + Wording.number(entry.volts()) + " V, more than 65535 mA";
                table.mistake(entry.name(), what, "set ceiling_mA to what their supply may give, at most 65535");
            }
        }
    }
}
