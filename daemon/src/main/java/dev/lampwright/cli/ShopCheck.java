package dev.lampwright.cli;

import dev.lampwright.config.ConfigException;
import dev.lampwright.config.Examined;
import dev.lampwright.config.Mistake;
import dev.lampwright.config.RigReading;
import dev.lampwright.config.Shop;
import dev.lampwright.tool.check.LookMistakes;
import dev.lampwright.tool.check.Progress;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** What {@code check} says about a folder with several rigs: for each rig what it says about a file. */
final class ShopCheck {
    private final Path folder;
    private final Shop shop;
    private final List<Checked> rigs = new ArrayList<>();

    private record Checked(RigReading rig, List<Mistake> mistakes) {
        boolean isGood() {
            return mistakes.isEmpty();
        }
    }

    private ShopCheck(Path folder, Shop shop) {
        this.folder = folder;
        this.shop = shop;
    }

    /**
     * Reads all files and draws all looks.
     *
     * @param folder the folder
     * @param err a terminal that may show the progress of drawing
     * @throws ConfigException if the shop's own file is not valid
     */
    static ShopCheck of(Path folder, PrintWriter err) throws ConfigException {
        ShopCheck check = new ShopCheck(folder, Shop.read(folder, Set.of(), KeptLooks.OF_ANY_DAEMON));
        for (RigReading rig : check.shop.rigs()) {
            check.rigs.add(new Checked(rig, mistakes(rig, err)));
        }
        return check;
    }

    private static List<Mistake> mistakes(RigReading rig, PrintWriter err) {
        if (rig.examined().isEmpty()) {
            return rig.mistakes();
        }
        Progress progress = DrawingLine.onTerminal(err, rig.file().path());
        return LookMistakes.of(rig.examined().get(), progress);
    }

    /** Whether every rig is valid. */
    boolean isGood() {
        return rigs.stream().allMatch(Checked::isGood);
    }

    /** Prints a short line for each valid rig, and a line for each mistake and each warning: forty rigs are to fit on a screen. */
    void print(PrintWriter out, PrintWriter err) {
        for (Checked checked : rigs) {
            checked.mistakes().forEach(err::println);
            if (checked.isGood()) {
                Examined examined = checked.rig().examined().orElseThrow();
                String file = checked.rig().file().path().toString();
                out.println(CheckCommand.verdict(file, examined, ConfigSummary.controller(examined.config())));
                ConfigWarnings.about(examined.config())
                        .forEach(misgiving -> err.println(file + ": warning: " + misgiving));
            }
        }
        out.println(folder + ": " + verdict());
    }

    private String verdict() {
        if (rigs.isEmpty()) {
            return "no rigs yet; add a file NAME.toml to its folder rigs";
        }
        long good = rigs.stream().filter(Checked::isGood).count();
        return good + " of " + rigs.size() + (rigs.size() == 1 ? " rig is good" : " rigs are good");
    }

    /** The same by name, for programs. */
    Map<String, Object> map() {
        List<Map<String, Object>> all = new ArrayList<>();
        for (Checked checked : rigs) {
            String file = checked.rig().file().path().toString();
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("rig", checked.rig().name());
            if (checked.isGood()) {
                Examined examined = checked.rig().examined().orElseThrow();
                one.putAll(ConfigSummary.map(file, examined));
                one.put("warnings", ConfigWarnings.about(examined.config()));
            } else {
                one.putAll(ConfigSummary.map(file, new ConfigException(checked.mistakes())));
            }
            all.add(one);
        }
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("folder", folder.toString());
        map.put("good", isGood());
        map.put("rigs", all);
        return map;
    }
}
