package dev.lampwright.config;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import dev.lampwright.broker.Broker;
import dev.lampwright.broker.OwnCertificate;
import dev.lampwright.payload.PayloadPath;
import dev.lampwright.payload.Quantity;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.WhenSilent;
import dev.lampwright.signal.Room;
import dev.lampwright.testing.NamedPipe;
import dev.lampwright.testing.SmallStack;
import dev.lampwright.toml.Mutation;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ConfigFileTest {
    private static final String MINIMAL = """
            broker.url = "mqtt://alder"
            printer.readings.bed.actual_C.topic = "shop/alder/heat"
            controller.port = "/dev/ttyACM0"
            strip.pixels = 30
            """;

    @TempDir
    private Path folder;

    private static Config read(String text) throws ConfigException {
        return ConfigFile.read(text, "t.toml");
    }

    private Path file(String text) throws IOException {
        return Files.writeString(folder.resolve("alder.toml"), text);
    }

    private static String only(ConfigException wrong) {
        assertEquals(1, wrong.mistakes().size());
        return wrong.getMessage();
    }

    @Test
    void defaults() throws ConfigException {
        Config config = read(MINIMAL);
        assertEquals(60, config.framesPerSecond());
        assertEquals(Duration.ofSeconds(20), config.light().printers().get(0).silentAfter());
        assertEquals(new Room(22, 43), config.light().room());
        assertEquals(500_000, config.controller().baud());
        assertEquals(URI.create("mqtt://alder:1883"), config.broker().url());
        assertEquals(List.of(), config.bindings().states());
        assertEquals(
                PayloadPath.BARE,
                config.bindings()
                        .readings()
                        .get(Quantity.BED_ACTUAL)
                        .get(0)
                        .source()
                        .path());
        Setup setup = new Setup(
                30, "GRB", List.of(20_000, 20_000, 20_000), 1000, 0, 3000, WhenSilent.BEACON, List.of(500), List.of());
        assertEquals(setup, config.setup());
        assertEquals(List.of(), config.fitting().dimmers());
    }

    @Test
    void defaultsAreTold() throws IOException, ConfigException {
        Map<String, String> defaults = ConfigFile.examine(file(MINIMAL)).defaults();
        assertEquals("500", defaults.get("supply.ceiling_mA"));
        assertEquals("GRB", defaults.get("strip.order"));
        assertEquals("29-15", defaults.get("zones.nozzle"));
        assertEquals("beacon", defaults.get("controller.when_silent"));
        assertEquals("2", defaults.get("guard.rise_s"));
        assertEquals("A-4", defaults.get("alarm.sequence"));
        assertEquals(20, defaults.size());
        String all = MINIMAL + "zones = { bed = \"0\", nozzle = \"1\", job = \"2\" }\nstrip.order = \"RGB\"\n";
        assertEquals(16, ConfigFile.examine(file(all)).defaults().size());
    }

    private static Map<String, String> zones(String text) throws ConfigException {
        Map<String, String> zones = new LinkedHashMap<>();
        read(text).fitting().zones().forEach((name, zone) -> zones.put(name, zone.toString()));
        return zones;
    }

    @ParameterizedTest
    @CsvSource({"1, 0, 0, 0", "2, 0-1, 0, 1", "3, 0-2, 0-1, 2", "30, 0-29, 0-14, 29-15", "7, 0-6, 0-3, 6-4"})
    void usualZones(int pixels, String strip, String bed, String nozzle) throws ConfigException {
        assertEquals(
                Map.of("strip", strip, "bed", bed, "nozzle", nozzle, "job", strip),
                zones(MINIMAL.replace("30", "" + pixels)));
    }

    @Test
    void zones() throws ConfigException {
        Map<String, String> zones = zones(MINIMAL + """
                [zones]
                lid = "5"
                bed = "29-20"
                job = " 0-3 +9 - 7+ 5 "
                sides = "0-9 + 29-20 mirrored"
                odd = "1-29  every 2"
                back = "28-20 every 4 + 0-4 every 2 mirrored"
                """);
        assertEquals(
                Map.of(
                        "strip", "0-29",
                        "lid", "5",
                        "bed", "29-20",
                        "job", "0-3 + 9-7 + 5",
                        "sides", "0-9 + 29-20 mirrored",
                        "odd", "1-29 every 2",
                        "back", "28-20 every 4 + 0-4 every 2 mirrored",
                        "nozzle", "29-15"),
                zones);
        assertEquals(
                List.of("strip", "lid", "bed", "job", "sides", "odd", "back", "nozzle"), List.copyOf(zones.keySet()));
    }

    @Test
    void currentsAreRoundedUp() throws ConfigException {
        Setup setup = read(MINIMAL + "strip.channel_mA = [1.1, 12.0001, 65.535]\nstrip.idle_mA = 0.6\n")
                .setup();
        assertEquals(List.of(1100, 12_001, 65_535), setup.channelMicroamps());
        assertEquals(600, setup.darkMicroamps());
    }

    @Test
    void fourChannels() throws ConfigException {
        Setup setup = read(MINIMAL + "strip.order = \"GRBW\"\nstrip.channel_mA = 10\n")
                .setup();
        assertEquals(4, setup.channels());
        assertEquals(List.of(10_000, 10_000, 10_000, 10_000), setup.channelMicroamps());
    }

    @Test
    void aCeilingThatTheDarkStripJustReachesIsNoMistake() throws ConfigException {
        assertEquals(
                List.of(30), read(MINIMAL + "supply.ceiling_mA = 30\n").setup().ceilingsMilliamps());
    }

    @Test
    void dimmersHangOnTheSupplyOfTheirVoltage() throws ConfigException {
        Config config = read(MINIMAL + """
                [dimmers]
                work = { channel = 2, volts = 24, full_mA = 800 }
                small = { channel = 0, volts = 5.0, full_mA = 100 }
                lid = { channel = 1, volts = 24, full_mA = 300 }
                rear = { channel = 3, volts = 12, full_mA = 1000, ceiling_mA = 700 }
                """);
        assertEquals(List.of("small", "lid", "work", "rear"), config.fitting().dimmerNames());
        assertEquals(List.of(500, 700, 1100), config.setup().ceilingsMilliamps());
        assertEquals(
                List.of(
                        new Setup.Dimmer(0, 100, 0),
                        new Setup.Dimmer(2, 300, 0),
                        new Setup.Dimmer(2, 800, 0),
                        new Setup.Dimmer(1, 1000, 0)),
                config.setup().dimmers());
    }

    @Test
    void aSupplyOfDimmersMayHaveTheHighestCeiling() throws ConfigException {
        Setup setup = read(MINIMAL + "dimmers.work = { channel = 0, volts = 24, full_mA = 65535 }\n")
                .setup();
        assertEquals(List.of(500, 65_535), setup.ceilingsMilliamps());
    }

    @Test
    void holdoverAndWhatFollowsIt() throws ConfigException {
        Setup setup = read(MINIMAL + "controller.holdover_s = 0.1\ncontroller.when_silent = \"keep\"\n")
                .setup();
        assertEquals(100, setup.holdoverMillis());
        assertEquals(WhenSilent.KEEP, setup.whenSilent());
    }

    /** Rates of the Linux kernel's asm-generic/termbits.h from 9600 to 3000000, and the one that suits an ATmega best. */
    @ParameterizedTest
    @ValueSource(
            ints = {
                9600, 19200, 38400, 57600, 115200, 230400, 250000, 460800, 500000, 576000, 921600, 1000000, 1152000,
                1500000, 2000000, 2500000, 3000000
            })
    void usualRates(int baud) throws ConfigException {
        assertEquals(
                baud,
                read(MINIMAL + "controller.baud = " + baud + "\n").controller().baud());
    }

    @ParameterizedTest
    @CsvSource({
        "mqtt://alder, mqtt://alder:1883",
        "mqtts://alder.local, mqtts://alder.local:8883",
        "mqtt://192.168.1.5:1884, mqtt://192.168.1.5:1884",
        "mqtts://[::1], mqtts://[::1]:8883"
    })
    void urls(String written, String understood) throws ConfigException {
        assertEquals(
                URI.create(understood),
                read(MINIMAL.replace("mqtt://alder", written)).broker().url());
    }

    /** MQTT 3.1.1, sections 4.7.1.2, 4.7.1.3 and 4.7.2, the examples that are valid. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "sport/tennis/player1/#",
                "sport/#",
                "#",
                "sport/tennis/#",
                "+",
                "+/tennis/#",
                "sport/+/player1",
                "/finance",
                "/+",
                "$SYS/#",
                "$SYS/monitor/+",
                "Accounts payable"
            })
    void topics(String topic) throws ConfigException {
        Config config = read(MINIMAL.replace("shop/alder/heat", topic));
        assertEquals(
                topic,
                config.bindings()
                        .readings()
                        .get(Quantity.BED_ACTUAL)
                        .get(0)
                        .source()
                        .topicFilter());
    }

    /** RFC 6901, section 5: every pointer of the example. */
    @ParameterizedTest
    @ValueSource(
            strings = {"", "/foo", "/foo/0", "/", "/a~1b", "/c%d", "/e^f", "/g|h", "/i\\j", "/k\"l", "/ ", "/m~0n"})
    void pointers(String pointer) throws ConfigException {
        Config config = read(MINIMAL + "printer.readings.bed.actual_C.at = '" + pointer + "'\n");
        assertEquals(
                PayloadPath.at(pointer),
                config.bindings()
                        .readings()
                        .get(Quantity.BED_ACTUAL)
                        .get(0)
                        .source()
                        .path());
    }

    @Test
    void relativePathsStartFromTheFolderOfTheFile() throws IOException, ConfigException {
        Broker broker =
                ConfigFile.read(file(MINIMAL.replace("mqtt:", "mqtts:") + """
                broker.ca_file = "certs/../ca.pem"
                broker.username = "lamp"
                broker.password_file = "/etc/alder/password"
                broker.certificate_file = "own.pem"
                broker.key_file = "/etc/alder/own-key.pem"
                """)).broker();
        Path real = folder.toAbsolutePath();
        assertEquals(Optional.of(real.resolve("ca.pem")), broker.caFile());
        assertEquals(Optional.of(Path.of("/etc/alder/password")), broker.passwordFile());
        assertEquals(Optional.of("lamp"), broker.username());
        assertEquals(
                Optional.of(new OwnCertificate(real.resolve("own.pem"), Path.of("/etc/alder/own-key.pem"))),
                broker.ownCertificate());
    }

    @Test
    void aFileThatIsNotThere() {
        Path file = folder.resolve("birch.toml");
        assertEquals(
                file + ": there is no such file; give the path of a configuration file",
                only(assertThrows(ConfigException.class, () -> ConfigFile.read(file))));
    }

    @Test
    void aFolder() {
        assertEquals(
                folder + ": is a folder; give the path of a configuration file",
                only(assertThrows(ConfigException.class, () -> ConfigFile.read(folder))));
    }

    @Test
    void aFileBelowAFile() throws IOException {
        Path file = file(MINIMAL).resolve("deeper.toml");
        String mistake = only(assertThrows(ConfigException.class, () -> ConfigFile.read(file)));
        assertTrue(mistake.startsWith(file + ": cannot be read: "), mistake);
    }

    @Test
    void aFileThatMayNotBeRead() throws IOException {
        Path file = file(MINIMAL);
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("---------"));
        assumeFalse(Files.isReadable(file), "this user may read everything");
        String mistake = only(assertThrows(ConfigException.class, () -> ConfigFile.read(file)));
        assertTrue(mistake.startsWith(file + ": cannot be read by this user; "), mistake);
    }

    @Test
    void bytesThatAreNotUtf8() throws IOException {
        Path file = Files.write(
                folder.resolve("latin.toml"), "# one\n# caf\u00E9\nx = 1\n".getBytes(StandardCharsets.ISO_8859_1));
        assertEquals(
                file + ":2: is not UTF-8; save the file as UTF-8",
                only(assertThrows(ConfigException.class, () -> ConfigFile.read(file))));
    }

    @Test
    void bytesThatEndWithinACharacter() throws IOException {
        Path file = Files.write(folder.resolve("torn.toml"), new byte[] {'#', ' ', (byte) 0xE2, (byte) 0x82});
        assertEquals(
                file + ":1: is not UTF-8; save the file as UTF-8",
                only(assertThrows(ConfigException.class, () -> ConfigFile.read(file))));
    }

    @Test
    void aFileThatIsTooLong() throws IOException {
        Path file = file("#" + "x".repeat(1 << 20));
        assertEquals(
                file + ": is longer than 1 MiB; give the path of a configuration file",
                only(assertThrows(ConfigException.class, () -> ConfigFile.read(file))));
    }

    @Test
    void aByteOrderMarkIsSkipped() throws IOException, ConfigException {
        assertEquals(30, ConfigFile.read(file("\uFEFF" + MINIMAL)).setup().pixels());
    }

    @Test
    void linesOfWindows() throws ConfigException {
        assertEquals(30, read(MINIMAL.replace("\n", "\r\n")).setup().pixels());
    }

    /** However a good file is damaged, it is either read or reported as wrong, on a line of the file. */
    @Test
    void spoiltFilesAreReadOrComplainedOf() throws IOException {
        String example;
        try (InputStream in = ConfigFile.class.getResourceAsStream("example.toml")) {
            example = new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
        Random random = new Random(2);
        int complaints = 0;
        for (int i = 0; i < 5000; i++) {
            String text = Mutation.of(example, random);
            try {
                read(text);
            } catch (ConfigException e) {
                complaints++;
                for (Mistake mistake : e.mistakes()) {
                    assertTrue(mistake.line() <= text.lines().count() + 1, mistake::toString);
                    assertFalse(mistake.what().isEmpty());
                    assertEquals(1, mistake.toString().lines().count(), mistake::toString);
                }
            }
        }
        assertTrue(complaints > 1000, complaints + " complaints");
    }

    /** The service's threads have stacks of 512 KiB ({@code run.options}), those of {@code check} may have more: neither may overflow. */
    @Test
    void aFileOfManyPartsOverflowsNoSmallStack() throws InterruptedException {
        String everySecond = IntStream.range(0, 2000).mapToObj(i -> "" + 2 * i).collect(Collectors.joining(" + "));
        String text = MINIMAL.replace("30", "4000") + "supply.ceiling_mA = 5000\nzones.q = \"" + everySecond + "\"\n"
                + "zones.r = \"" + " ".repeat(20_000) + "1\"\n"
                + "printer.state.topic = \"shop/alder/job\"\n"
                + "printer.state.fault = [\"" + "*a".repeat(10_000) + "\"]\n"
                + "zones.deep = " + "[".repeat(60) + "]".repeat(60) + "\n";
        Throwable thrown = SmallStack.thrownBy(() -> read(text)).orElseThrow();
        String complaint = only(assertInstanceOf(ConfigException.class, thrown));
        assertTrue(complaint.contains("zones.deep: is an array"), complaint);
    }

    @Test
    void whatMayNeverEndIsNotRead() throws IOException {
        Path pipe = NamedPipe.at(folder.resolve("pipe.toml"));
        for (Path endless : List.of(pipe, Path.of("/dev/zero"))) {
            String complaint = assertTimeoutPreemptively(
                    Duration.ofSeconds(20),
                    () -> only(assertThrows(ConfigException.class, () -> ConfigFile.read(endless))));
            assertEquals(
                    endless + ": is a pipe or a device, not a file; give the path of a configuration file", complaint);
        }
    }
}
