package dev.lampwright.board;

import dev.lampwright.protocol.Here;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The images of the reference firmware that come with this Lampwright, and which controllers have older firmware. */
public final class FirmwareImages {
    /** Their version, as in {@code firmware-notes/reference/core/controller.h}. */
    public static final String VERSION = "1.1.0";

    /** The baud rates for which there is an image for the ATmega328P. */
    static final List<Integer> BAUDS = List.of(115_200, 500_000, 1_000_000);

    private static final Path PACKAGED = Path.of("/usr/share/lampwright/firmware");
    private static final String BY_HAND = "build and flash it as firmware-notes/README.md says";

    private final Path folder;

    private FirmwareImages(Path folder) {
        this.folder = folder;
    }

    /**
     * The images of the Debian package.
     *
     * @return the images, whether or not the package is installed
     */
    public static FirmwareImages packaged() {
        return new FirmwareImages(PACKAGED);
    }

    /** Those of a folder. */
    static FirmwareImages in(Path folder) {
        return new FirmwareImages(folder);
    }

    /**
     * What to do about the firmware of a controller.
     *
     * @param here what it reports about itself
     * @param port where it answers
     * @param baud in bits per second
     * @return that its firmware is older than these images, and how to install the newer one; empty if it is not, or if it is not the
     *     reference firmware
     */
    public Optional<String> update(Here here, String port, int baud) {
        return BoardKind.of(here)
                .filter(kind -> isOlder(here.firmware()))
                .map(kind -> "its firmware " + here.firmware() + " is older than " + VERSION
                        + ", which comes with this lampwright: " + howTo(kind, port, baud));
    }

    /**
     * Whether a version is older than that of the images.
     *
     * @param firmware {@code major.minor.patch}, of numbers
     * @return false for the same version
     */
    static boolean isOlder(String firmware) {
        return Arrays.compare(numbers(firmware), numbers(VERSION)) < 0;
    }

    private static int[] numbers(String version) {
        return Arrays.stream(version.split("\\.", -1))
                .mapToInt(Integer::parseInt)
                .toArray();
    }

    private String howTo(BoardKind kind, String port, int baud) {
        return kind == BoardKind.RP2040 ? byCopying() : byLoader(port, baud);
    }

    private String byCopying() {
        Path image = folder.resolve("lampwright-rp2040.uf2");
        return Files.exists(image)
                ? "hold the board's boot button while you plug it in, and copy " + image
                        + " onto the drive that appears"
                : BY_HAND;
    }

    private static String bauds() {
        return BAUDS.stream().map(String::valueOf).collect(Collectors.joining(", ", "", " baud"));
    }

    private String byLoader(String port, int baud) {
        Path image = folder.resolve("lampwright-atmega328p-" + baud + ".hex");
        if (!Files.exists(image)) {
            return Files.exists(folder) && !BAUDS.contains(baud)
                    ? BY_HAND + " (there are images for " + bauds() + ")"
                    : BY_HAND;
        }
        return "stop the daemon, and run avrdude -p m328p -c arduino -P " + port + " -b 115200 -U flash:w:" + image
                + ":i";
    }
}
