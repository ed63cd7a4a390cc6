package dev.lampwright.tool.fit;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/** Combines dimmers into lights: three colours make a plain colour strip. Dimmers without a light are ignored. */
final class DimmerLights {
    private static final List<Findings.Hanging> COLOURS =
            List.of(Findings.Hanging.RED, Findings.Hanging.GREEN, Findings.Hanging.BLUE);

    private DimmerLights() {}

    /**
     * A light as in the configuration.
     *
     * @param name its name
     * @param channels the key for them, with its value
     * @param fullMilliamps current of each channel at full duty
     */
    record Entry(String name, List<Integer> channels, int fullMilliamps) {
        /** The channels as in the configuration: a key and its value. */
        String channelsText() {
            return channels.size() == 1 ? "channel = " + channels.get(0) : "channels = " + channels;
        }
    }

    /**
     * The lights on some dimmers.
     *
     * @param uses what is on each
     * @param taken names that are already in use
     */
    static List<Entry> of(List<Findings.DimmerUse> uses, Collection<String> taken) {
        Set<String> names = new HashSet<>(taken);
        uses.forEach(use -> names.add(use.name()));
        List<Entry> entries = new ArrayList<>();
        List<List<Integer>> colours =
                COLOURS.stream().map(colour -> places(uses, colour)).toList();
        int strips = colours.stream().mapToInt(List::size).min().orElse(0);
        for (int i = 0; i < strips; i++) {
            int at = i;
            List<Integer> channels =
                    colours.stream().map(places -> places.get(at)).toList();
            int full = channels.stream()
                    .mapToInt(channel -> uses.get(channel).fullMilliamps())
                    .max()
                    .orElseThrow();
            entries.add(new Entry(free("glow", names), channels, full));
        }
        for (int i = 0; i < uses.size(); i++) {
            Findings.DimmerUse use = uses.get(i);
            int colour = COLOURS.indexOf(use.what());
            boolean inStrip = colour >= 0 && colours.get(colour).indexOf(i) < strips;
            if (!inStrip && use.what() != Findings.Hanging.NOTHING) {
                entries.add(single(i, use, names));
            }
        }
        return entries;
    }

    private static Entry single(int channel, Findings.DimmerUse use, Set<String> names) {
        String name = use.name().isEmpty() ? free("light", names) : use.name();
        return new Entry(name, List.of(channel), use.fullMilliamps());
    }

    /** A free name, which is then marked as taken. */
    private static String free(String name, Set<String> taken) {
        String free = name;
        for (int i = 2; !taken.add(free); i++) {
            free = name + i;
        }
        return free;
    }

    private static List<Integer> places(List<Findings.DimmerUse> uses, Findings.Hanging what) {
        return IntStream.range(0, uses.size())
                .filter(i -> uses.get(i).what() == what)
                .boxed()
                .toList();
    }
}
