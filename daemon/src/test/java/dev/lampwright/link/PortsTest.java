package dev.lampwright.link;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The layout is that of Linux: {@code Documentation/ABI/testing/sysfs-tty} for {@code type}, and the names below {@code
 * /dev/serial/by-id} as udev's rules make them; from memory.
 */
class PortsTest {
    @TempDir
    Path root;

    @Test
    void findsWhatIsPluggedInAndNothingElse() throws IOException {
        Path device = root.resolve("sys/devices/usb1/1-1");
        write(device.resolve("manufacturer"), "Alder Works\n");
        write(device.resolve("product"), "Strip Board\n");
        tty("ttyACM0", device.resolve("1-1:1.0"));
        tty("ttyS0", root.resolve("sys/devices/platform/serial"));
        write(root.resolve("sys/class/tty/ttyS0/type"), "0\n");
        tty("ttyS1", root.resolve("sys/devices/platform/serial"));
        write(root.resolve("sys/class/tty/ttyS1/type"), "4\n");
        Files.createDirectories(root.resolve("sys/class/tty/tty7"));
        Path byId = Files.createDirectories(root.resolve("dev/serial/by-id"));
        Files.createSymbolicLink(byId.resolve("usb-Alder_Strip"), root.resolve("dev/ttyACM0"));
        assertEquals(
                List.of(
                        new Port(dev("ttyACM0"), byId.resolve("usb-Alder_Strip").toString(), "Alder Works Strip Board"),
                        new Port(dev("ttyS1"), "", "")),
                Ports.list(root));
    }

    @Test
    void aMachineWithoutPortsHasNone() {
        assertEquals(List.of(), Ports.list(root));
    }

    private void tty(String name, Path device) throws IOException {
        Files.createDirectories(device);
        Path tty = Files.createDirectories(root.resolve("sys/class/tty").resolve(name));
        Files.createSymbolicLink(tty.resolve("device"), device);
        write(root.resolve("dev").resolve(name), "");
    }

    private String dev(String name) {
        return root.resolve("dev").resolve(name).toString();
    }

    private static void write(Path file, String text) throws IOException {
        Files.createDirectories(file.getParent());
        Files.writeString(file, text);
    }
}
