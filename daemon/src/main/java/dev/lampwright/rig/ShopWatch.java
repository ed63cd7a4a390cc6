package dev.lampwright.rig;

import dev.lampwright.config.ConfigException;
import dev.lampwright.config.Overlays;
import dev.lampwright.config.RigFile;
import dev.lampwright.config.ShopFile;
import dev.lampwright.file.FileMark;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;

/** Notices that a file of a shop was added, changed or removed, once none is being written any more. Checks them when called. */
public final class ShopWatch {
    private final Path folder;
    private final Overlays overlays;
    private Map<String, String> taken;
    private Map<String, String> seen;

    /**
     * Starts with the files as they are.
     *
     * @param folder the shop's folder
     * @param overlays finds the looks that are kept apart from the rigs' files
     */
    public ShopWatch(Path folder, Overlays overlays) {
        this.folder = folder;
        this.overlays = overlays;
        taken = marks();
        seen = taken;
    }

    /**
     * Checks the files.
     *
     * @return true once for each change, when all files are the same in two checks
     */
    public boolean changed() {
        Map<String, String> now = marks();
        boolean atRest = now.equals(seen);
        seen = now;
        if (!atRest || now.equals(taken)) {
            return false;
        }
        taken = now;
        return true;
    }

    private Map<String, String> marks() {
        Map<String, String> marks = new TreeMap<>();
        marks.put("", mark(folder.resolve(ShopFile.NAME)));
        try {
            for (RigFile file : RigFile.in(folder)) {
                String looks = overlays.of(file.path()).map(ShopWatch::mark).orElse("");
                marks.put(file.name(), mark(file.path()) + " " + looks);
            }
        } catch (ConfigException e) {
            marks.put("/", e.getMessage());
        }
        return marks;
    }

    private static String mark(Path file) {
        try {
            return FileMark.of(file);
        } catch (IOException e) {
            return "";
        }
    }
}
