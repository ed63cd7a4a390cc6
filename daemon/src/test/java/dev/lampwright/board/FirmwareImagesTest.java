package dev.lampwright.board;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.demo.MemoryController;
import dev.lampwright.protocol.Here;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FirmwareImagesTest {
    private static final Path NOTES = Path.of("..", "firmware-notes");

    @TempDir
    private Path folder;

    private static Here atmega328p(String firmware) {
        return new Here(1, firmware, 0, 400, 1219, 6, 1, 10_000, false);
    }

    private static Here rp2040(String firmware) {
        return new Here(1, firmware, 1, 4000, 12_019, 6, 2, 10_000, true, 8);
    }

    private Optional<String> update(Here here, int baud) {
        return FirmwareImages.in(folder).update(here, "/dev/ttyACM0", baud);
    }

    @Test
    void theVersionIsTheFirmwares() throws IOException {
        String header =
                Files.readString(NOTES.resolve("reference").resolve("core").resolve("controller.h"));
        assertTrue(header.contains("#define FIRMWARE_VERSION { " + FirmwareImages.VERSION.replace(".", ", ") + " }"));
    }

    /** The names and the bauds are those of the build. */
    @Test
    void theImagesAreThoseOfTheBuild() throws IOException {
        String makefile = Files.readString(NOTES.resolve("Makefile"));
        String bauds =
                FirmwareImages.BAUDS.stream().sorted().map(String::valueOf).collect(Collectors.joining(" "));
        assertTrue(makefile.contains("IMAGE_BAUDS := " + bauds + "\n"), bauds);
        assertTrue(makefile.contains("lampwright-atmega328p-%.hex"));
        assertTrue(makefile.contains("lampwright-rp2040.uf2"));
    }

    @ParameterizedTest
    @CsvSource({
        "1.0.0, true",
        "1.0.9, true",
        "0.9.9, true",
        "1.1.0, false",
        "1.1.1, false",
        "1.10.0, false",
        "2.0.0, false",
    })
    void olderByNumbers(String firmware, boolean older) {
        assertEquals(older, FirmwareImages.isOlder(firmware));
        assertEquals(older, update(atmega328p(firmware), 500_000).isPresent());
        assertEquals(older, update(rp2040(firmware), 500_000).isPresent());
    }

    @Test
    void theLoaderTakesTheImageOfTheBaud() throws IOException {
        Path image = Files.createFile(folder.resolve("lampwright-atmega328p-115200.hex"));
        assertEquals(
                "its firmware 1.0.0 is older than 1.1.0, which comes with this lampwright: stop the daemon, and run avrdude -p m328p"
                        + " -c arduino -P /dev/ttyACM0 -b 115200 -U flash:w:" + image + ":i",
                update(atmega328p("1.0.0"), 115_200).orElseThrow());
        assertEquals(
                "its firmware 1.0.0 is older than 1.1.0, which comes with this lampwright: build and flash it as"
                        + " firmware-notes/README.md says (there are images for 115200, 500000, 1000000 baud)",
                update(atmega328p("1.0.0"), 250_000).orElseThrow());
    }

    @Test
    void theRp2040TakesACopy() throws IOException {
        Path image = Files.createFile(folder.resolve("lampwright-rp2040.uf2"));
        assertEquals(
                "its firmware 1.0.0 is older than 1.1.0, which comes with this lampwright: hold the board's boot button while you"
                        + " plug it in, and copy " + image + " onto the drive that appears",
                update(rp2040("1.0.0"), 500_000).orElseThrow());
    }

    @Test
    void withoutImagesTheNotesSayHow() {
        assertTrue(update(rp2040("1.0.0"), 500_000)
                .orElseThrow()
                .endsWith(": build and flash it as firmware-notes/README.md says"));
    }

    /** Somebody else's firmware has its own versions. */
    @Test
    void aControllerOfItsOwnIsLeftAlone() {
        assertEquals(Optional.empty(), update(MemoryController.BOARD, 500_000));
    }
}
