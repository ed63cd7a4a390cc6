package dev.lampwright.cli;

import dev.lampwright.engine.Daemon;
import dev.lampwright.link.LinkState;
import dev.lampwright.rig.Rig;
import dev.lampwright.rig.Rigs;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** The status of the rigs of a process, in a line for {@code systemctl status}: how many are in which state, then what is wrong. */
final class ShopWords {
    private static final int MOST_TROUBLES = 8;

    private ShopWords() {}

    /**
     * The status of the rigs.
     *
     * @param rigs of the process
     * @return one line
     */
    static String of(Rigs rigs) {
        List<Rig> all = rigs.all();
        List<String> parts = new ArrayList<>();
        parts.add(all.size() + (all.size() == 1 ? " rig" : " rigs") + states(all));
        rigs.mistakes().stream().findFirst().ifPresent(mistake -> parts.add("all run as before: " + mistake));
        List<String> troubles = all.stream()
                .filter(rig -> !trouble(rig).isEmpty())
                .map(rig -> rig.name() + ": " + trouble(rig))
                .toList();
        parts.addAll(troubles.subList(0, Math.min(MOST_TROUBLES, troubles.size())));
        if (troubles.size() > MOST_TROUBLES) {
            parts.add((troubles.size() - MOST_TROUBLES) + " more rigs have trouble");
        }
        return String.join("; ", parts);
    }

    private static String states(List<Rig> all) {
        Map<String, Integer> counts = new TreeMap<>();
        all.forEach(rig -> counts.merge(state(rig), 1, Integer::sum));
        List<String> words = new ArrayList<>();
        counts.forEach((state, count) -> words.add(count + " " + state));
        return words.isEmpty() ? "" : " (" + String.join(", ", words) + ")";
    }

    private static String state(Rig rig) {
        return rig.daemon()
                .map(daemon -> daemon.frames().snapshot().state().word())
                .orElse(rig.trouble().isEmpty() ? "starting" : "off");
    }

    private static String trouble(Rig rig) {
        return rig.trouble().isEmpty()
                ? rig.daemon().map(ShopWords::linkTrouble).orElse("")
                : rig.trouble();
    }

    private static String linkTrouble(Daemon daemon) {
        return daemon.link().state() == LinkState.LIT ? "" : daemon.link().trouble();
    }
}
