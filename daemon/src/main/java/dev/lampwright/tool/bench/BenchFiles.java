package dev.lampwright.tool.bench;

import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.config.Examined;
import dev.lampwright.config.LooksOverlay;
import dev.lampwright.config.RigFile;
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
 * @param recording the file that the daemon records what the printer reports in; empty if it does not
 */
public record BenchFiles(Path file, Path overlay, Optional<Path> recording) {
    private static final String ENDING = ".looks.toml";

    /**
     * Those of a daemon that records nothing.
     *
     * @param file its configuration file
     * @param overlay as above
     */
    public BenchFiles(Path file, Path overlay) {
        this(file, overlay, Optional.empty());
    }

    /** The file with earlier versions. */
    Path versions() {
        return beside(".looks-versions.json");
    }

    /** The file with drafts. */
    Path drafts() {
        return beside(".looks-drafts.json");
    }

    private Path beside(String ending) {
        String name = overlay.getFileName().toString();
        String stem = name.endsWith(ENDING) ? name.substring(0, name.length() - ENDING.length()) : name;
        return overlay.resolveSibling(stem + ending);
    }

    /**
     * Why this user cannot write a file, as far as that can be found out without trying.
     *
     * @param path whether it is there or not
     * @return what is wrong and what to do; empty if nothing is
     */
    Optional<BenchRefusal> whyNotWritten(Path path) {
        if (Files.isSymbolicLink(path)) {
            return Optional.of(
                    notWritten("link", path, "is a symbolic link, which is not written through; put a file there"));
        }
        Path there = Files.exists(path) ? path : folder(path);
        boolean can = Files.isWritable(there) && Files.isWritable(folder(path));
        return can
                ? Optional.empty()
                : Optional.of(notWritten(
                        "not_written",
                        path,
                        "cannot be written by this user; let the user who runs lampwright write to its folder"));
    }

    private static BenchRefusal notWritten(String code, Path path, String why) {
        return new BenchRefusal(507, code, path + ": " + why).with("file", path.toString());
    }

    /** The nearest folder around a file that is there. */
    private static Path folder(Path path) {
        Path folder = path.toAbsolutePath().getParent();
        while (folder.getParent() != null && !Files.exists(folder)) {
            folder = folder.getParent();
        }
        return folder;
    }

    /** All texts, as they are now. */
    BenchTexts texts() throws BenchRefusal {
        Optional<String> kept = Files.exists(overlay) ? Optional.of(read(overlay)) : Optional.empty();
        Optional<Path> shop = shop();
        return new BenchTexts(read(file), kept, shop.isPresent() ? Optional.of(read(shop.get())) : Optional.empty());
    }

    /** The file that something is in; only the first two can be written. */
    Path path(LookShelves.From in) {
        return switch (in) {
            case OVERLAY -> overlay;
            case SHOP -> shop().orElse(file);
            default -> file;
        };
    }

    /** The file that all rigs share; empty if there is none. */
    Optional<Path> shop() {
        return ShopFile.around(file).map(folder -> folder.resolve(ShopFile.NAME));
    }

    /** The name of the rig, which replaces {@value ShopFile#RIG} in the file that all rigs share. */
    String rig() {
        return RigFile.nameOf(file);
    }

    private static String read(Path path) throws BenchRefusal {
        try {
            return EditedFile.read(path).text();
        } catch (IOException e) {
            throw BenchRefusal.notRead(path, e);
        }
    }

    /**
     * Reads the files as the daemon does, with a look on top that is in none of them.
     *
     * @param look the look
     * @throws ConfigException with all mistakes
     */
    Examined examine(BenchLook look) throws BenchRefusal, ConfigException {
        BenchTexts texts = texts();
        List<LooksOverlay> over = overlays(texts.kept());
        over.add(new LooksOverlay("the look", look.toml()));
        return ConfigFile.examine(file, unmarked(texts.file()), over);
    }

    /**
     * Reads texts as if they were in the files.
     *
     * @param texts the texts
     * @throws ConfigException with all mistakes
     */
    Examined examine(BenchTexts texts) throws ConfigException {
        return ConfigFile.examine(file, unmarked(texts.file()), overlays(texts.kept()));
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
