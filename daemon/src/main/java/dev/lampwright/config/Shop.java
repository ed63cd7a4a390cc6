package dev.lampwright.config;

import java.io.IOException;
import java.nio.file.InvalidPathException;
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
        return read(folder, running, Overlays.NONE);
    }

    /**
     * Reads all files, with the looks that are kept apart from them.
     *
     * @param folder the folder
     * @param running names of the rigs that run: where two rigs cannot both run, these come first
     * @param overlays finds the looks
     * @return what they say
     * @throws ConfigException if the shop's own file is not valid, or the rigs cannot be listed
     */
    public static Shop read(Path folder, Set<String> running, Overlays overlays) throws ConfigException {
        ShopFile shared = ShopFile.read(folder);
        List<RigReading> read = new ArrayList<>();
        for (RigFile file : RigFile.in(folder)) {
            read.add(RigReading.of(file, shared, overlays));
        }
        read.sort(Comparator.comparing((RigReading rig) -> !running.contains(rig.name()))
                .thenComparing(RigReading::name));
        List<RigReading> apart = apart(read);
        apart.sort(Comparator.comparing(RigReading::name));
        return new Shop(shared, apart);
    }

    /** Two rigs cannot share a controller or topics. A controller is identified by its device, which may have several names. */
    private static List<RigReading> apart(List<RigReading> read) {
        Map<String, RigReading> devices = new HashMap<>();
        Map<String, RigReading> prefixes = new HashMap<>();
        List<RigReading> apart = new ArrayList<>();
        for (RigReading rig : read) {
            RigReading kept = rig;
            if (rig.config().isPresent()) {
                Config config = rig.config().get();
                String device = device(port(rig));
                String prefix = config.broker().url() + " " + config.talk().prefix();
                if (devices.containsKey(device)) {
                    kept = refused(rig, List.of("controller", "port"), samePort(rig, devices.get(device)));
                } else if (prefixes.containsKey(prefix)) {
                    String same = sameValue(config.talk().prefix(), prefixes.get(prefix));
                    kept = refused(rig, List.of("desk", "prefix"), same);
                } else {
                    devices.put(device, rig);
                    prefixes.put(prefix, rig);
                }
            }
            apart.add(kept);
        }
        return apart;
    }

    private static String port(RigReading rig) {
        return rig.config().orElseThrow().controller().port();
    }

    /** The device that a port leads to through all links; the port as it is written while there is none. */
    private static String device(String port) {
        try {
            return Path.of(port).toRealPath().toString();
        } catch (IOException | InvalidPathException e) {
            return port;
        }
    }

    private static String samePort(RigReading rig, RigReading other) {
        return port(rig).equals(port(other))
                ? sameValue(port(rig), other)
                : "is " + Wording.quoted(port(rig)) + ", the same device as " + Wording.quoted(port(other))
                        + " of the rig " + other.name();
    }

    private static String sameValue(String value, RigReading other) {
        return "is " + Wording.quoted(value) + ", which the rig " + other.name() + " has too";
    }

    private static RigReading refused(RigReading rig, List<String> path, String what) {
        return rig.refused(rig.examined().orElseThrow().mistake(path, what, "give each rig its own"));
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
