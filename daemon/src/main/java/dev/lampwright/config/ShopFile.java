package dev.lampwright.config;

import dev.lampwright.toml.Toml;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * The file {@value #NAME} of a shop: what all its rigs share. {@code [page]} and {@code [metrics]} are for the whole process; every other
 * section applies to each rig, unless the rig's own file says otherwise. {@value #RIG} in a text stands for the rig's name.
 */
public final class ShopFile {
    /** The name of the file. */
    public static final String NAME = "shop.toml";
    /** The folder next to it that holds a file for each rig. */
    public static final String RIGS = "rigs";

    /** What its texts have where the name of the rig goes. */
    public static final String RIG = "{rig}";

    private static final String PAGE = "page";
    private static final String METRICS = "metrics";

    private final Origin origin;
    private final Optional<PageSettings> page;
    private final OptionalInt metricsPort;

    private ShopFile(Origin origin, Optional<PageSettings> page, OptionalInt metricsPort) {
        this.origin = origin;
        this.page = page;
        this.metricsPort = metricsPort;
    }

    /**
     * Whether a folder is a shop, that is, has a {@value #NAME}.
     *
     * @param folder any path
     * @return false also if there is no such folder
     */
    public static boolean isIn(Path folder) {
        return Files.exists(folder.resolve(NAME));
    }

    /**
     * The shop that a rig's file belongs to.
     *
     * @param file a configuration file
     * @return its folder; empty if the file is not in the folder {@value #RIGS} of a shop
     */
    public static Optional<Path> around(Path file) {
        Path rigs = file.toAbsolutePath().normalize().getParent();
        return rigs == null || !rigs.endsWith(RIGS)
                ? Optional.empty()
                : Optional.ofNullable(rigs.getParent()).filter(ShopFile::isIn);
    }

    /**
     * Reads the file of a shop. What it says for rigs is checked together with each rig's file.
     *
     * @param folder the shop's folder
     * @return its content
     * @throws ConfigException with all mistakes, if it cannot be read or is not valid
     */
    public static ShopFile read(Path folder) throws ConfigException {
        Path file = folder.resolve(NAME);
        Origin origin = new Origin(file.toString(), Toml.read(FileText.read(file)), folder.toAbsolutePath());
        Mistakes findings = new Mistakes(Origins.of(origin));
        Table root = findings.root().as(ConfigFile.SECTION);
        ConfigFile.SECTION.names().forEach(root::has);
        Optional<PageSettings> page = PageSection.read(root);
        OptionalInt metricsPort = ConfigFile.metricsPort(root);
        ConfigFile.notePortTwice(root, page, metricsPort);
        root.noteUnknown();
        findings.throwIfMistaken();
        return new ShopFile(origin, page, metricsPort);
    }

    /**
     * The live page of all rigs.
     *
     * @return empty if there is none
     */
    public Optional<PageSettings> page() {
        return page;
    }

    /**
     * Where the figures of all rigs are served.
     *
     * @return a loopback port; empty if they are not
     */
    public OptionalInt metricsPort() {
        return metricsPort;
    }

    /** Combines it with a rig's own file. */
    Origins with(Origin rigs, String name) {
        return Origins.of(rigs, origin, sharedWith(name));
    }

    private Map<String, Object> sharedWith(String name) {
        Map<String, Object> shared = new LinkedHashMap<>(origin.document().values());
        shared.keySet().removeAll(List.of(PAGE, METRICS));
        shared.replaceAll((key, value) -> named(value, name));
        return shared;
    }

    /**
     * A value of the file as it applies to a rig.
     *
     * @param value as in the file
     * @param name the rig's name
     * @return the same with the name in each text that asks for it
     */
    public static Object named(Object value, String name) {
        if (value instanceof String text) {
            return text.replace(RIG, name);
        }
        if (value instanceof List<?> elements) {
            return elements.stream().map(element -> named(element, name)).toList();
        }
        if (value instanceof Map<?, ?> table) {
            Map<Object, Object> named = new LinkedHashMap<>();
            table.forEach((key, inner) -> named.put(key, named(inner, name)));
            return named;
        }
        return value;
    }

    /** Reports what a rig's file has that is for the whole process. */
    static void noteNotOfARig(Table rig) {
        if (rig.has(METRICS)) {
            noteShared(rig, METRICS);
            rig.table(METRICS).leaveOut();
        }
    }

    /** Notes a key of a rig's file that can only be in that of the shop. */
    static void noteShared(Table table, String key) {
        table.mistake(key, "is for all rigs together", "move it to " + NAME);
    }
}
