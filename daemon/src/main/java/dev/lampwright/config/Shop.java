package dev.lampwright.config;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * A folder with a {@value ShopFile#NAME} and a file for each rig, as read. A mistake in one rig's file does not affect the others.
 *
 * @param shared what all rigs share
 * @param rigs by name
 */
public record Shop(ShopFile shared, List<RigReading> rigs) {
    /** Keeps a copy of the list. */
    public Shop {
        rigs = List.copyOf(rigs);
    }

    /**
     * Reads all files.
     *
     * @param folder the folder
     * @param running names of the running rigs: if two rigs cannot both run, these take precedence
     * @return their content
     * @throws ConfigException if the shop's own file is not valid, or the rigs cannot be listed
     */
    public static Shop read(Path folder, Set<String> running) throws ConfigException {
        ShopFile shared = ShopFile.read(folder);
        List<RigReading> read = new ArrayList<>();
        for (RigFile file : RigFile.in(folder)) {
            read.add(RigReading.of(file, shared));
        }
        read.sort(Comparator.comparing((RigReading rig) -> !running.contains(rig.name()))
                .thenComparing(RigReading::name));
        List<RigReading> apart = apart(read);
        apart.sort(Comparator.comparing(RigReading::name));
        return new Shop(shared, apart);
    }

    /** Two rigs cannot share a controller or topics. */
    private static List<RigReading> apart(List<RigReading> read) {
        Map<String, String> ports = new HashMap<>();
        Map<String, String> prefixes = new HashMap<>();
        List<RigReading> apart = new ArrayList<>();
        for (RigReading rig : read) {
            RigReading kept = rig;
            if (rig.config().isPresent()) {
                Config config = rig.config().get();
                String port = config.controller().port();
                String prefix = config.broker().url() + " " + config.talk().prefix();
                if (ports.containsKey(port)) {
                    kept = refused(rig, List.of("controller", "port"), port, ports.get(port));
                } else if (prefixes.containsKey(prefix)) {
                    kept = refused(rig, List.of("desk", "prefix"), config.talk().prefix(), prefixes.get(prefix));
                } else {
                    ports.put(port, rig.name());
                    prefixes.put(prefix, rig.name());
                }
            }
            apart.add(kept);
        }
        return apart;
    }

    private static RigReading refused(RigReading rig, List<String> path, String value, String other) {
        return rig.refused(rig.examined()
                .orElseThrow()
                .mistake(
                        path,
                        "is " + Wording.quoted(value) + ", which the rig " + other + " has too",
                        "give each rig its own"));
    }

    /**
     * Finds the file of a rig.
     *
     * @param folder the shop's folder
     * @param name the rig's name
     * @return its file
     * @throws ConfigException if there is no such rig; the message names those that exist
     */
    public static RigFile rig(Path folder, String name) throws ConfigException {
        List<RigFile> all = RigFile.in(folder);
        return all.stream()
                .filter(file -> file.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new ConfigException(List.of(new Mistake(
                        folder.resolve(ShopFile.RIGS).toString(),
                        0,
                        "",
                        "has no rig " + Wording.quoted(name),
                        Nearest.to(name, all.stream().map(RigFile::name).toList())
                                .map(near -> "did you mean " + near + "?")
                                .orElse("the rigs are: " + names(all))))));
    }

    private static String names(List<RigFile> all) {
        return all.isEmpty()
                ? "none yet"
                : String.join(", ", all.stream().map(RigFile::name).toList());
    }
}
