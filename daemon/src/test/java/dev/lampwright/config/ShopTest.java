package dev.lampwright.config;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A folder with a {@code shop.toml} and a file for each rig. */
class ShopTest {
    private static final String SHARED = """
            broker.url = "mqtt://10.0.0.2"
            controller.port = "/dev/lampwright-{rig}"
            [printer.state]
            topic = "shop/{rig}/job"
            at = "/phase"
            printing = ["RUN"]
            [printer.readings]
            bed.actual_C = { topic = "shop/{rig}/heat", at = "/plate/now" }
            bed.setpoint_C = { topic = "shop/{rig}/heat", at = "/plate/set" }
            [strip]
            pixels = 30
            order = "RGB"
            """;

    @TempDir
    private Path folder;

    @BeforeEach
    void make() throws IOException {
        Files.createDirectory(folder.resolve("rigs"));
    }

    private void shared(String text) throws IOException {
        Files.writeString(folder.resolve("shop.toml"), text);
    }

    private Path rig(String name, String text) throws IOException {
        return Files.writeString(folder.resolve("rigs").resolve(name + ".toml"), text);
    }

    private Shop read(String... running) throws ConfigException {
        return Shop.read(folder, Set.of(running));
    }

    private static Config config(Shop shop, String name) {
        return reading(shop, name).config().orElseThrow();
    }

    private static RigReading reading(Shop shop, String name) {
        return shop.rigs().stream()
                .filter(rig -> rig.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static List<String> mistakes(Shop shop, String name) {
        return reading(shop, name).mistakes().stream().map(Mistake::toString).toList();
    }

    @Test
    void anEmptyFileIsARigOfWhichTheShopSaysAll() throws IOException, ConfigException {
        shared(SHARED);
        rig("alder", "");
        Config alder = config(read(), "alder");
        assertEquals("/dev/lampwright-alder", alder.controller().port());
        assertEquals("lampwright/alder", alder.talk().prefix());
        assertEquals(
                Set.of("shop/alder/job", "shop/alder/heat"),
                Set.copyOf(alder.bindings().topicFilters()));
        assertEquals(30, alder.setup().pixels());
    }

    @Test
    void aRigThatNamesItsPrintersSaysAllOfThem() throws IOException, ConfigException {
        shared(SHARED);
        rig("shelf", """
                [printers.alder.readings]
                job.progress.topic = "shop/alder/job"
                [printers.birch.readings]
                job.progress.topic = "shop/birch/job"
                """);
        Config shelf = config(read(), "shelf");
        assertEquals(
                Set.of("shop/alder/job", "shop/birch/job"),
                Set.copyOf(shelf.bindings().topicFilters()));
        assertEquals(2, shelf.light().views().size());
    }

    @Test
    void whatARigSaysTakesThePlaceOfTheSameKey() throws IOException, ConfigException {
        shared(SHARED);
        rig("alder", """
                [desk]
                prefix = "shelf/left"
                [strip]
                pixels = 8
                [printer.state]
                printing = ["GO"]
                [printer.readings]
                bed.actual_C = { topic = "other/heat" }
                """);
        Config alder = config(read(), "alder");
        assertEquals(8, alder.setup().pixels());
        assertEquals("RGB", alder.setup().order().toString());
        assertEquals("shelf/left", alder.talk().prefix());
        assertEquals(
                Set.of("shop/alder/job", "other/heat", "shop/alder/heat"),
                Set.copyOf(alder.bindings().topicFilters()));
    }

    @Test
    void aLookOfARigIsItsOwnWhole() throws IOException, ConfigException {
        shared(SHARED + """
                [dimmers]
                work = { channel = 0, volts = 24, full_mA = 800 }
                [looks.printing]
                layers = [{ colour = "green" }, { colour = "blue" }]
                dimmers = { work = 1.0 }
                """);
        rig("alder", "[looks.printing]\nlayers = [{ colour = \"red\" }]\n");
        rig("birch", "");
        Shop shop = read();
        assertEquals(1, config(shop, "alder").looks().get("printing").layers().size());
        assertNotEquals(
                config(shop, "birch").looks().get("printing").dimmers(),
                config(shop, "alder").looks().get("printing").dimmers());
        assertEquals(2, config(shop, "birch").looks().get("printing").layers().size());
    }

    @Test
    void mistakesNameTheFileAndLineOfTheKey() throws IOException, ConfigException {
        shared(SHARED + "idle_mA = -1\n");
        Path file = rig("alder", "\nstrip.channel_mA = \"twelve\"\n");
        assertEquals(
                List.of(
                        file + ":2: strip.channel_mA: is \"twelve\"; give a number from 0.001 to 65.535",
                        folder.resolve("shop.toml") + ":13: strip.idle_mA: is -1; give a number from 0 to 65.535"),
                mistakes(read(), "alder"));
    }

    @Test
    void whatIsMissingIsMissingInTheFileOfTheRigOrWhereItsTableIs() throws IOException, ConfigException {
        shared("broker.username = \"lamp\"\n[strip]\npixels = 30\n");
        Path file = rig("alder", "printer.state.topic = \"shop/alder/job\"\nprinter.state.printing = [\"RUN\"]\n");
        List<String> mistakes = mistakes(read(), "alder");
        assertTrue(mistakes.get(0).startsWith(file + ": controller"), mistakes::toString);
        assertEquals(folder.resolve("shop.toml") + ":1: broker.url: is missing; " + BrokerUrl.WANTED, mistakes.get(1));
        assertEquals(2, mistakes.size(), mistakes::toString);
    }

    @Test
    void pathsStartFromTheFolderOfTheirFile() throws IOException, ConfigException {
        shared(SHARED.replace("broker.url = \"mqtt://10.0.0.2\"", """
                broker.url = "mqtts://10.0.0.2"
                broker.username = "lamp"
                broker.password_file = "password"
                broker.ca_file = "ca.pem\""""));
        rig("alder", "broker.password_file = \"own\"\n");
        Config alder = config(read(), "alder");
        assertEquals(
                Optional.of(folder.resolve("rigs").resolve("own")),
                alder.broker().passwordFile());
        assertEquals(Optional.of(folder.resolve("ca.pem")), alder.broker().caFile());
    }

    @Test
    void pageAndMetricsAreTheShopsAlone() throws IOException, ConfigException {
        shared(SHARED + "[page]\nport = 61200\n[metrics]\nport = 9464\n");
        Path file = rig("alder", "[page]\nviewers = 0\n[metrics]\n");
        rig("birch", "");
        Shop shop = read();
        assertEquals(61_200, shop.shared().page().orElseThrow().port());
        assertEquals(OptionalInt.of(9464), shop.shared().metricsPort());
        assertEquals(Optional.empty(), config(shop, "birch").page());
        assertEquals(
                List.of(
                        file + ":2: page.viewers: is for all rigs together; move it to shop.toml",
                        file + ":3: metrics: is for all rigs together; move it to shop.toml"),
                mistakes(shop, "alder"));
    }

    @Test
    void aRigCanHaveTokensOfItsOwn() throws IOException, ConfigException {
        shared(SHARED + "[page]\ntoken_file = \"all\"\n");
        rig("alder", "[page]\ntoken_file = \"../tokens/alder\"\nview_token_file = \"/etc/tokens/alder-view\"\n");
        rig("birch", "");
        Path empty = rig("rowan", "[page]\n");
        Path wrong = rig("oak", "[page]\ntoken_fiel = \"oak\"\n");
        Shop shop = read();
        assertEquals(
                new TokenFiles(
                        Optional.of(folder.resolve("tokens/alder")),
                        Optional.of(Path.of("/etc/tokens/alder-view")),
                        Optional.empty()),
                config(shop, "alder").ownTokens());
        assertEquals(TokenFiles.NONE, config(shop, "birch").ownTokens(), "that of the shop is not the rig's own");
        assertEquals(
                List.of(empty + ":1: page: is for all rigs together; move it to shop.toml"), mistakes(shop, "rowan"));
        assertEquals(
                List.of(wrong + ":2: page.token_fiel: is not known; did you mean token_file?"), mistakes(shop, "oak"));
    }

    @Test
    void aRigsTokenIsOfNoUseWhereEverybodyMayUseAllRigs() throws IOException, ConfigException {
        shared(SHARED + "[page]\n");
        Path file = rig("alder", "[page]\nview_token_file = \"alder\"\n");
        assertEquals(
                List.of(file + ":2: page.view_token_file: lets people use this rig alone, but without a page.token_file"
                        + " in shop.toml everybody may use all rigs; name a token_file there, or remove this one"),
                mistakes(read(), "alder"));
    }

    @Test
    void oneRigThatIsNotRightLeavesTheOthersAlone() throws IOException, ConfigException {
        shared(SHARED);
        rig("alder", "strip = [");
        rig("birch", "");
        Shop shop = read();
        assertTrue(config(shop, "birch").setup().pixels() == 30);
        assertTrue(
                mistakes(shop, "alder").get(0).contains("alder.toml:1: "),
                () -> mistakes(shop, "alder").toString());
    }

    @Test
    void twoRigsShareNeitherControllerNorTopicsAndTheOneThatRunsComesFirst() throws IOException, ConfigException {
        shared(SHARED);
        rig("alder", "controller.port = \"/dev/ttyACM0\"\n");
        rig("birch", "[controller]\nport = \"/dev/ttyACM0\"\n");
        rig("rowan", "desk.prefix = \"lampwright/alder\"\n");
        Shop shop = read();
        String birch = folder.resolve("rigs/birch.toml")
                + ":2: controller.port: is \"/dev/ttyACM0\", which the rig alder has too; give each rig its own";
        assertEquals(List.of(birch), mistakes(shop, "birch"));
        assertEquals(
                List.of(
                        folder.resolve("rigs/rowan.toml")
                                + ":1: desk.prefix: is \"lampwright/alder\", which the rig alder has too; give each rig its own"),
                mistakes(shop, "rowan"));
        assertEquals(List.of(), mistakes(read("birch"), "birch"));
        assertEquals(1, mistakes(read("birch"), "alder").size());
    }

    /** As below {@code /dev/serial/by-id}, where a port has a second name that stays the same. */
    @Test
    void twoNamesOfOneDeviceAreOneController() throws ConfigException, IOException {
        shared(SHARED);
        Path device = Files.createFile(folder.resolve("ttyACM0"));
        Path link = Files.createSymbolicLink(folder.resolve("board-7"), device.getFileName());
        rig("alder", "controller.port = \"" + device + "\"\n");
        Path birch = rig("birch", "controller.port = \"" + link + "\"\n");
        assertEquals(
                List.of(birch + ":1: controller.port: is \"" + link + "\", the same device as \"" + device
                        + "\" of the rig alder; give each rig its own"),
                mistakes(read(), "birch"));
        assertEquals(List.of(), mistakes(read("birch"), "birch"), "the rig that runs keeps it");
        Files.delete(device);
        assertEquals(List.of(), mistakes(read(), "birch"), "nobody knows where it leads while nothing is plugged in");
    }

    @Test
    void theShopsOwnFileIsJudgedWithoutAnyRig() throws IOException {
        shared("brocker.url = \"mqtt://10.0.0.2\"\n[page]\nprot = 1\n");
        ConfigException wrong = assertThrows(ConfigException.class, this::read);
        assertEquals(
                folder.resolve("shop.toml") + ":1: brocker: is not known; did you mean broker?\n"
                        + folder.resolve("shop.toml") + ":3: page.prot: is not known; did you mean port?",
                wrong.getMessage());
    }

    @Test
    void aFileOfARigIsReadWithItsShopByWhateverReadsIt() throws IOException, ConfigException {
        shared(SHARED);
        Path file = rig("alder", "strip.pixels = 8\n");
        assertEquals("lampwright/alder", ConfigFile.read(file).talk().prefix());
        assertEquals("lampwright/alder", ConfigFile.read("", file).talk().prefix());
        assertEquals("mqtt://10.0.0.2:1883", ConfigFile.readBroker(file).url().toString());
    }

    @Test
    void aFolderCalledRigsWithoutAShopIsAFolderLikeAnyOther() throws IOException, ConfigException {
        Path file = rig("alder", SHARED);
        assertEquals("lampwright", ConfigFile.read(file).talk().prefix());
    }

    @Test
    void aNameThatIsNoneIsOneMistake() throws IOException, ConfigException {
        shared(SHARED);
        Path file = rig("my printer", "");
        Files.writeString(folder.resolve("rigs").resolve(".alder.toml.swp"), "");
        Files.writeString(folder.resolve("rigs").resolve("alder.toml~"), "");
        Shop shop = read();
        assertEquals(1, shop.rigs().size());
        assertEquals(
                List.of(file
                        + ": is not a valid name for a rig; rename it: up to 63 letters, digits, - and _, the first a"
                        + " letter or digit, then .toml"),
                mistakes(shop, "my printer"));
    }

    @Test
    void aRigThatThereIsNotIsToldWithThoseThatThereAre() throws IOException, ConfigException {
        shared(SHARED);
        rig("alder", "");
        rig("birch", "");
        assertEquals(
                folder.resolve("rigs/alder.toml"), Shop.rig(folder, "alder").path());
        String rigs = folder.resolve("rigs").toString();
        assertEquals(
                rigs + ": has no rig \"aldre\"; did you mean alder?",
                assertThrows(ConfigException.class, () -> Shop.rig(folder, "aldre"))
                        .getMessage());
        assertEquals(
                rigs + ": has no rig \"x\"; the rigs are: alder, birch",
                assertThrows(ConfigException.class, () -> Shop.rig(folder, "x")).getMessage());
    }
}
