package dev.lampwright.config;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Pattern;

/**
 * The file of one rig of a shop. Its name without the ending is the rig's name, in topics, on the page and in metrics.
 *
 * @param name the rig's name
 * @param path where it is
 */
public record RigFile(String name, Path path) {
    private static final String ENDING = ".toml";
    private static final Pattern NAME = Pattern.compile("[A-Za-z0-9][A-Za-z0-9_-]{0,62}");

    /**
     * The file of a rig.
     *
     * @param folder the shop's folder
     * @param name the rig's name
     */
    public static RigFile of(Path folder, String name) {
        return new RigFile(name, folder.resolve(ShopFile.RIGS).resolve(name + ENDING));
    }

    /** The file at a path. */
    static RigFile at(Path path) {
        return new RigFile(nameOf(path), path);
    }

    /**
     * The name that a file gives its rig.
     *
     * @param path a rig's file
     * @return what it is called without its ending
     */
    public static String nameOf(Path path) {
        String whole = path.getFileName().toString();
        return whole.endsWith(ENDING) ? whole.substring(0, whole.length() - ENDING.length()) : whole;
    }

    /**
     * The files of all rigs of a shop: every file that ends with {@code .toml} and does not start with a dot.
     *
     * @param folder the shop's folder
     * @return by name
     * @throws ConfigException if they cannot be listed
     */
    public static List<RigFile> in(Path folder) throws ConfigException {
        Path rigs = folder.resolve(ShopFile.RIGS);
        List<RigFile> all = new ArrayList<>();
        try (DirectoryStream<Path> found = Files.newDirectoryStream(rigs, RigFile::isOne)) {
            found.forEach(path -> all.add(at(path)));
        } catch (IOException | DirectoryIteratorException e) {
            throw new ConfigException(List.of(new Mistake(
                    rigs.toString(),
                    0,
                    "",
                    "cannot be listed (" + e.getClass().getSimpleName() + ")",
                    "make it a folder that this user can read, with a file NAME.toml for each rig")));
        }
        all.sort(Comparator.comparing(RigFile::name));
        return all;
    }

    private static boolean isOne(Path path) {
        String name = path.getFileName().toString();
        return name.endsWith(ENDING) && !name.startsWith(".") && !Files.isDirectory(path);
    }

    /**
     * Requires that the name is valid for a rig.
     *
     * @throws ConfigException if it is not
     */
    void requireName() throws ConfigException {
        if (!NAME.matcher(name).matches()) {
            throw new ConfigException(List.of(new Mistake(
                    path.toString(),
                    0,
                    "",
                    "is not a valid name for a rig",
                    "rename it: up to 63 letters, digits, - and _, the first a letter or digit, then .toml")));
        }
    }
}
