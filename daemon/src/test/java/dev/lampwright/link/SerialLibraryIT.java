package dev.lampwright.link;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fazecast.jSerialComm.SerialPort;
import dev.lampwright.testing.Child;
import dev.lampwright.testing.PtyController;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The serial library and the port's permissions, each in a separate process. */
@Timeout(120)
class SerialLibraryIT {
    @TempDir
    Path directory;

    private PtyController pty;

    @BeforeEach
    void plugIn() {
        pty = PtyController.pluggedIn(directory);
    }

    @AfterEach
    void unplug() {
        pty.close();
    }

    private Child probe(List<String> before, Path temporary, Path home, String... options) throws Exception {
        List<String> all = Stream.concat(
                        Stream.of("-Djava.io.tmpdir=" + temporary, "-Duser.home=" + home), Stream.of(options))
                .toList();
        return Child.run(before, all, SerialProbe.class, pty.port().toString());
    }

    @Test
    void loadsAndLeavesNothingBehind() throws Exception {
        Path temporary = Files.createDirectory(directory.resolve("tmp"));
        Path home = Files.createDirectory(directory.resolve("home"));
        assertEquals(new Child(0, "open\n"), probe(List.of(), temporary, home));
        assertEquals(List.of(), entries(temporary));
        assertEquals(List.of(), entries(home));
    }

    @Test
    void takesTheHomeWhereTheTemporaryDirectoryCannotBeWrittenTo() throws Exception {
        Path home = Files.createDirectory(directory.resolve("home"));
        assertEquals(new Child(0, "open\n"), probe(List.of(), Path.of("/proc"), home));
    }

    @Test
    void saysInOneLineWhereItCannotUnpackAndWhatToDo() throws Exception {
        assertEquals(
                new Child(
                        0,
                        "the serial library cannot be unpacked: /proc cannot be written to, /proc/self cannot be written to;"
                                + " start java with -Djava.io.tmpdir=DIR, where DIR can be written to and run from, or with"
                                + " -DjSerialComm.library.path=DIR, where DIR holds libjSerialComm.so\n"),
                probe(List.of(), Path.of("/proc"), Path.of("/proc/self")));
    }

    @Test
    void saysThatAPlaceIsMountedNoexec() throws Exception {
        Path mount = Files.createDirectory(directory.resolve("noexec"));
        List<String> mounted = List.of(
                "unshare",
                "--mount",
                "sh",
                "-c",
                "mount -t tmpfs -o noexec none " + mount + " || exit 77; exec \"$@\"",
                "sh");
        assumeTrue(
                Child.run(Stream.concat(mounted.stream(), Stream.of("true")).toList())
                                .status()
                        == 0,
                "this user may not mount");
        Child said = probe(mounted, mount, mount);
        assertTrue(
                said.output()
                        .startsWith("the serial library cannot be unpacked: " + mount + " is mounted noexec, " + mount
                                + " is mounted noexec; start java with"),
                said.output());
        assertEquals(1, said.output().lines().count());
    }

    @Test
    void takesALibraryThatTheUserHasUnpacked() throws Exception {
        assumeTrue(System.getProperty("os.arch").equals("amd64"), "the test unpacks for this architecture only");
        Path unpacked = Files.createDirectory(directory.resolve("lib"));
        try (InputStream library = SerialPort.class.getResourceAsStream("/Linux/x86_64/libjSerialComm.so")) {
            Files.copy(library, unpacked.resolve("libjSerialComm.so"));
        }
        assertEquals(
                new Child(0, "open\n"),
                probe(List.of(), Path.of("/proc"), Path.of("/proc"), "-DjSerialComm.library.path=" + unpacked));
    }

    /** Root may open everything, except another user's files once it has lost the capability to override that. */
    @Test
    void namesTheGroupAndTheCommandWhereThereIsNoPermission() throws Exception {
        Path node = pty.port().toRealPath();
        boolean root = System.getProperty("user.name").equals("root");
        List<String> powerless = root ? List.of("setpriv", "--bounding-set=-dac_override,-dac_read_search") : List.of();
        Child.run(root ? List.of("chown", "65534", node.toString()) : List.of("chmod", "000", node.toString()));
        Child said = probe(powerless, directory, directory);
        assertEquals(
                "no permission to open " + pty.port() + ": run 'sudo usermod -aG dialout "
                        + System.getProperty("user.name") + "', then log in again (a service: start it again)\n",
                said.output());
    }

    private static List<Path> entries(Path directory) throws Exception {
        try (Stream<Path> entries = Files.list(directory)) {
            return entries.toList();
        }
    }
}
