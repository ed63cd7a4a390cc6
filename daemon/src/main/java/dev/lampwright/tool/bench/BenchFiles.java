package dev.lampwright.tool.bench;

import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.config.Examined;
import dev.lampwright.config.LooksOverlay;
import dev.lampwright.config.ShopFile;
import dev.lampwright.file.EditedFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Where a daemon's looks are.
 *
 * @param file its configuration file
 * @param overlay the file of looks that is read after it, whether it is there or not
 */
public record BenchFiles(Path file, Path overlay) {
    private static final String ENDING = ".looks.toml";

    /** Where is kept what files were before they were changed. */
    Path versions() {
        return beside(".looks-versions.json");
    }

    /** Where looks are kept that are not finished. */
    Path drafts() {
        return beside(".looks-drafts.json");
    }

    private Path beside(String ending) {
        String name = overlay.getFileName().toString();
        String stem = name.endsWith(ENDING) ? name.substring(0, name.length() - ENDING.length()) : name;
        return overlay.resolveSibling(stem + ending);
    }

    /**
     * Why a file cannot be written by this user, as far as that can be said without trying.
     *
     * @param path whether it is there or not
     * @return what is wrong and what to do; empty if nothing is
     */
    Optional<String> whyNotWritten(Path path) {
        if (Files.isSymbolicLink(path)) {
            return Optional.of(path + ": is a symbolic link, which is not written through; put a file there");
        }
        Path there = Files.exists(path) ? path : folder(path);
        boolean can = Files.isWritable(there) && Files.isWritable(folder(path));
        return can
                ? Optional.empty()
                : Optional.of(path + ": cannot be written by this user; make its folder one that the user who runs"
                        + " lampwright may write to");
    }

    /** The nearest folder around a file that is there. */
    private static Path folder(Path path) {
        Path folder = path.toAbsolutePath().getParent();
        while (folder.getParent() != null && !Files.exists(folder)) {
            folder = folder.getParent();
        }
        return folder;
    }

    /** The text of the configuration file. */
    String text() throws BenchRefusal {
        return read(file);
    }

    /** The text of the looks that are kept apart; empty if there are none. */
    Optional<String> kept() throws BenchRefusal {
        return Files.exists(overlay) ? Optional.of(read(overlay)) : Optional.empty();
    }

    /** The text of the file that all rigs share; empty if there is none. */
    Optional<String> shared() throws BenchRefusal {
        Optional<Path> shop = ShopFile.around(file);
        return shop.isPresent() ? Optional.of(read(shop.get().resolve(ShopFile.NAME))) : Optional.empty();
    }

    private static String read(Path path) throws BenchRefusal {
        try {
            return EditedFile.read(path).text();
        } catch (IOException e) {
            throw new BenchRefusal(500, "not_read", e.getMessage());
        }
    }

    /**
     * Reads the files as the daemon does, with a look on top that is in none of them.
     *
     * @param look the look
     * @throws ConfigException with all mistakes
     */
    Examined examine(BenchLook look) throws BenchRefusal, ConfigException {
        List<LooksOverlay> over = overlays(kept());
        over.add(new LooksOverlay("the look", look.toml()));
        return ConfigFile.examine(file, unmarked(text()), over);
    }

    /**
     * Reads the files as the daemon does.
     *
     * @throws ConfigException with all mistakes
     */
    Examined examine() throws BenchRefusal, ConfigException {
        return examine(text(), kept());
    }

    /**
     * Reads texts as if they were in the files.
     *
     * @param text that of the configuration file
     * @param kept that of the looks that are kept apart
     * @throws ConfigException with all mistakes
     */
    Examined examine(String text, Optional<String> kept) throws ConfigException {
        return ConfigFile.examine(file, unmarked(text), overlays(kept));
    }

    private List<LooksOverlay> overlays(Optional<String> kept) {
        List<LooksOverlay> over = new ArrayList<>();
        kept.ifPresent(text -> over.add(new LooksOverlay(overlay.toString(), text)));
        return over;
    }

    private static String unmarked(String text) {
        return text.startsWith("\uFEFF") ? text.substring(1) : text;
    }
}
