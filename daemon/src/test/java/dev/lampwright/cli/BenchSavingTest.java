package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.cli.BenchRig.Answer;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.config.Mistake;
import dev.lampwright.config.Overlays;
import dev.lampwright.testing.SmallDisk;
import dev.lampwright.tool.bench.BenchFiles;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Looks and cues that are saved through the page's server: what is written, what is not, and who may. */
@Timeout(120)
class BenchSavingTest {
    private static final Map<String, Object> GREEN = look("seagreen");
    private static final String TOKEN = "a-long-enough-token-to-save";

    @TempDir
    private Path folder;

    private static Map<String, Object> look(String colour) {
        return Map.of("layers", List.of(Map.of("colour", colour, "opacity", 0.4)));
    }

    private static Map<String, Object> request(Object look, String base) {
        return Map.of("look", look, "base", base);
    }

    private static String version(BenchRig rig, String name) {
        return rig.get("looks/" + name).json().path("version").asText();
    }

    @Test
    void onlyTheLinesOfTheLookChange() throws Exception {
        try (BenchRig rig = new BenchRig(folder)) {
            String before = rig.text();
            JsonNode look = rig.get("looks/waiting").json();
            String brighter = look.get("look").toString().replace("0.3", "0.5");
            Answer saved = rig.send(
                    "PUT", "looks/waiting", "{\"look\":" + brighter + ",\"base\":" + look.get("version") + "}");
            assertEquals(200, saved.status(), saved.json().toString());
            assertEquals("file", saved.json().get("written").asText());
            assertEquals(before.replace("opacity = 0.3", "opacity = 0.5"), rig.text());
            assertEquals(saved.json().get("version").asText(), version(rig, "waiting"));
            assertTrue(saved.json()
                    .get("changes")
                    .toString()
                    .contains("+  { colour = \\\"midnightblue\\\", opacity = 0.5 }, # the ground"));
        }
    }

    @Test
    void aNewLookIsAddedAndTheRestStays() throws Exception {
        try (BenchRig rig = new BenchRig(folder)) {
            String before = rig.text();
            Map<String, Object> plain = Map.of("layers", List.of(Map.of("colour", "seagreen")));
            Answer saved = rig.put("looks/mine", request(plain, ""));
            assertEquals(200, saved.status(), saved.json().toString());
            String added = "\n[looks.mine]\nlayers = [{ colour = \"seagreen\" }]\n";
            assertEquals(before, rig.text().replace(added, ""));
            assertEquals(409, rig.put("looks/mine", request(GREEN, "")).status());
            assertEquals(409, rig.put("looks/done", request(GREEN, "")).status());
        }
    }

    @Test
    void ofTwoEditorsTheSecondIsToldWhatTheFirstDid() throws Exception {
        try (BenchRig rig = new BenchRig(folder)) {
            String base = version(rig, "waiting");
            assertEquals(200, rig.put("looks/waiting", request(GREEN, base)).status());
            String text = rig.text();
            Answer late = rig.put("looks/waiting", request(look("gold"), base));
            assertEquals(412, late.status());
            assertEquals("changed", late.code());
            assertEquals(
                    "midnightblue", late.json().at("/base/look/layers/0/colour").asText());
            assertEquals(
                    "seagreen", late.json().at("/theirs/look/layers/0/colour").asText());
            assertEquals("gold", late.json().at("/yours/look/layers/0/colour").asText());
            assertEquals(text, rig.text());
            String theirs = late.json().at("/theirs/version").asText();
            assertEquals(
                    200, rig.put("looks/waiting", request(look("gold"), theirs)).status());
        }
    }

    @Test
    void whatCheckRefusesIsNotSaved() throws Exception {
        try (BenchRig rig = new BenchRig(folder)) {
            String before = rig.text();
            Map<String, Object> strobe =
                    Map.of("layers", List.of(Map.of("colour", "white", "rhythm", "on 0.1s off 0.1s", "edge_s", 0)));
            Answer refused = rig.put("looks/mine", request(strobe, ""));
            assertEquals(422, refused.status());
            assertEquals("rhythm", refused.json().at("/mistakes/0/key").asText());
            assertEquals(0, refused.json().at("/mistakes/0/layer").asInt());
            assertEquals(422, rig.put("looks/mine", request(look("rde"), "")).status());
            assertEquals(400, rig.put("looks/My%20Look", request(GREEN, "")).status());
            assertEquals("bad_name", rig.put("looks/UPPER", request(GREEN, "")).code());
            assertEquals(before, rig.text());
            assertEquals(0, rig.get("versions").json().get("versions").size());
        }
    }

    @Test
    void aLookThatShowsAFaultIsSavedByThoseWhoAreSure() {
        try (BenchRig rig = new BenchRig(folder)) {
            Map<String, Object> body = new HashMap<>(request(look("red"), version(rig, "fault")));
            assertEquals("fault_look", rig.put("looks/fault", body).code());
            body.put("sure", true);
            assertEquals(200, rig.put("looks/fault", body).status());
        }
    }

    @Test
    void whatACueNeedsIsNotRemovedAndWhatNothingNeedsIs() throws Exception {
        try (BenchRig rig = new BenchRig(folder)) {
            Answer refused = rig.send("DELETE", "looks/waiting?base=" + version(rig, "waiting"), "");
            assertEquals(409, refused.status());
            assertEquals("in_use", refused.code());
            String before = rig.text();
            rig.put("looks/mine", request(GREEN, ""));
            assertEquals(412, rig.send("DELETE", "looks/mine?base=00", "").status());
            assertEquals(
                    200,
                    rig.send("DELETE", "looks/mine?base=" + version(rig, "mine"), "")
                            .status());
            assertEquals(before, rig.text());
            assertEquals(
                    404,
                    rig.send("DELETE", "looks/done?base=" + version(rig, "done"), "")
                            .status());
        }
    }

    @Test
    void aLookIsRenamedWithItsCuesAndItsComments() throws Exception {
        try (BenchRig rig = new BenchRig(folder)) {
            String before = rig.text();
            Answer renamed = rig.post("looks/waiting/rename", Map.of("to", "at-rest", "base", version(rig, "waiting")));
            assertEquals(200, renamed.status(), renamed.json().toString());
            assertEquals(
                    before.replace("[looks.waiting]", "[looks.at-rest]")
                            .replace("look = \"waiting\"", "look = \"at-rest\""),
                    rig.text());
            assertEquals(
                    409,
                    rig.post("looks/at-rest/rename", Map.of("to", "done", "base", version(rig, "at-rest")))
                            .status());
        }
    }

    @Test
    void aLookInBracesOrOfDottedKeysIsRenamedInItsPlace() throws Exception {
        for (String look : List.of("""
                [looks]
                braced = { layers = [ # from below
                  { colour = 'teal' }, # calm
                ] } # all
                # next
                """, """
                [looks]
                braced . layers = [{ colour = "teal" }] # dotted
                braced.steady_for_camera = true # still
                """)) {
            Path file = Files.createTempDirectory(folder, "inline").resolve("birch.toml");
            BenchFiles files = new BenchFiles(file, file.resolveSibling("birch.looks.toml"));
            String text = BenchRig.FILE
                    .formatted(1883, 30, "")
                    .replace("[looks.waiting]", "[looks.waiting] # header")
                    .replace("# Waiting for the next job.", look);
            Files.writeString(file, text);
            try (BenchRig rig = new BenchRig(files)) {
                Answer renamed = rig.post("looks/braced/rename", Map.of("to", "calm", "base", version(rig, "braced")));
                assertEquals(200, renamed.status(), renamed.json().toString());
                assertEquals(text.replace("braced", "calm"), rig.text());
            }
        }
    }

    @Test
    void tenVersionsAreKeptAndComeBackByteForByte() throws Exception {
        try (BenchRig rig = new BenchRig(folder)) {
            List<String> texts = new ArrayList<>();
            for (int i = 0; i < 12; i++) {
                texts.add(rig.text());
                rig.put("looks/waiting", request(look("#0000" + (10 + i)), version(rig, "waiting")));
            }
            JsonNode versions = rig.get("versions").json().get("versions");
            assertEquals(10, versions.size());
            assertEquals("waiting", versions.at("/0/look").asText());
            Map<String, Object> last = Map.of("id", versions.at("/0/id").asText(), "base", version(rig, "waiting"));
            assertEquals(200, rig.post("restore", last).status());
            assertEquals(texts.get(11), rig.text());
            Map<String, Object> first = Map.of("id", versions.at("/9/id").asText(), "base", version(rig, "waiting"));
            assertEquals(404, rig.post("restore", first).status(), "an eleventh change took its place");
            assertEquals(412, rig.post("restore", last).status());
        }
        try (BenchRig again =
                new BenchRig(new BenchFiles(folder.resolve("birch.toml"), folder.resolve("state/birch.looks.toml")))) {
            assertEquals(10, again.get("versions").json().get("versions").size(), "after a restart");
        }
    }

    @Test
    void anEarlierLookComesBackIntoAFileThatSomebodyElseHasEdited() throws Exception {
        try (BenchRig rig = new BenchRig(folder)) {
            rig.put("looks/waiting", request(GREEN, version(rig, "waiting")));
            String edited = rig.text().replace("# birch, by the window", "# birch, by the door");
            Files.writeString(rig.files().file(), edited);
            String id = rig.get("versions").json().at("/versions/0/id").asText();
            assertEquals(
                    200,
                    rig.post("restore", Map.of("id", id, "base", version(rig, "waiting")))
                            .status());
            assertTrue(rig.text().startsWith("# birch, by the door"));
            assertEquals(
                    "midnightblue",
                    rig.get("looks/waiting").json().at("/look/layers/0/colour").asText());
        }
    }

    @Test
    void aRenamedLookGetsItsNameBackInAFileThatSomebodyElseHasEdited() throws Exception {
        try (BenchRig rig = new BenchRig(folder)) {
            String before = rig.text();
            rig.post("looks/waiting/rename", Map.of("to", "at-rest", "base", version(rig, "waiting")));
            String edited = rig.text().replace("# birch, by the window", "# birch, by the door");
            Files.writeString(rig.files().file(), edited);
            JsonNode renamed = rig.get("versions").json().at("/versions/0");
            assertTrue(renamed.get("toml").asText().contains("[looks.waiting]"), renamed.toString());
            Map<String, Object> last = Map.of("id", renamed.get("id").asText(), "base", version(rig, "at-rest"));
            Answer restored = rig.post("restore", last);
            assertEquals(200, restored.status(), restored.json().toString());
            assertEquals(before.replace("# birch, by the window", "# birch, by the door"), rig.text());
            assertEquals(restored.json().get("version").asText(), version(rig, "waiting"));
        }
    }

    @Test
    void whereTheFileMayNotBeWrittenLooksAreKeptApartAndCheckReadsThem() throws Exception {
        Path real = folder.resolve("real.toml");
        try (BenchRig first = new BenchRig(folder)) {
            Files.move(first.files().file(), real);
        }
        Path link = Files.createSymbolicLink(folder.resolve("birch.toml"), real);
        String before = Files.readString(real);
        BenchFiles files = new BenchFiles(link, folder.resolve("state/birch.looks.toml"));
        try (BenchRig rig = new BenchRig(files)) {
            assertEquals("overlay", rig.get("looks").json().get("writes").asText());
            Answer saved = rig.put("looks/waiting", request(GREEN, version(rig, "waiting")));
            assertEquals(200, saved.status(), saved.json().toString());
            assertEquals("overlay", saved.json().get("written").asText());
            assertEquals(before, Files.readString(real), "never through a symbolic link");
            assertEquals("overlay", rig.get("looks/waiting").json().get("from").asText());
            assertEquals("file", rig.get("looks/waiting").json().get("replaces").asText());
            assertEquals(
                    200,
                    rig.send("DELETE", "looks/waiting?base=" + version(rig, "waiting"), "")
                            .status());
            assertEquals("file", rig.get("looks/waiting").json().get("from").asText());
            Files.delete(files.overlay());
            Files.createSymbolicLink(files.overlay(), folder.resolve("elsewhere"));
            Answer refused = rig.put("looks/mine", request(GREEN, ""));
            assertEquals(507, refused.status());
            assertTrue(refused.json().get("why").asText().contains("symbolic link"));
            assertFalse(Files.exists(folder.resolve("elsewhere")));
        }
    }

    @Test
    void onAFullDiskNothingChangesAndOneLineSaysWhy() throws Exception {
        try (SmallDisk disk = new SmallDisk(folder.resolve("disk"))) {
            Assumptions.assumeTrue(disk.canBeFilled());
            Path home = disk.log().getParent();
            try (BenchRig rig =
                    new BenchRig(new BenchFiles(home.resolve("birch.toml"), home.resolve("b.looks.toml")))) {
                String before = rig.text();
                disk.fill();
                Answer refused = rig.put("looks/mine", request(GREEN, ""));
                assertEquals(507, refused.status(), refused.json().toString());
                assertTrue(
                        refused.json().get("why").asText().contains("No space left"),
                        refused.json().toString());
                assertEquals(before, rig.text());
            }
        }
    }

    @Test
    void savingNeedsATokenOfItsOwnOrThisComputer() throws Exception {
        Files.writeString(folder.resolve("edit"), TOKEN + "\n");
        try (BenchRig rig = new BenchRig(folder, "edit_token_file = \"edit\"")) {
            Answer refused = rig.put("looks/mine", request(GREEN, ""));
            assertEquals(403, refused.status());
            assertEquals("needs_edit_token", refused.code());
            assertFalse(rig.get("looks").json().get("may_edit").asBoolean());
            assertEquals(200, rig.post("check", Map.of("look", GREEN)).status(), "anybody may check");
            assertEquals(
                    401,
                    rig.put("looks/mine", request(GREEN, ""), "Authorization", "Bearer wrong")
                            .status());
            assertEquals(
                    200,
                    rig.put("looks/mine", request(GREEN, ""), "Authorization", "Bearer " + TOKEN)
                            .status());
        }
        Files.delete(folder.resolve("birch.toml"));
        try (BenchRig rig = new BenchRig(folder)) {
            assertTrue(rig.get("looks").json().get("may_edit").asBoolean());
            assertEquals(
                    "only_here",
                    rig.put("looks/mine", request(GREEN, ""), "X-Forwarded-For", "192.0.2.7")
                            .code());
            assertEquals(200, rig.put("looks/mine", request(GREEN, "")).status());
        }
    }

    @Test
    void cuesAreSavedInTheirOrderAndTellWhichHolds() throws Exception {
        try (BenchRig rig = new BenchRig(folder)) {
            JsonNode cues = rig.get("cues").json();
            assertEquals("waiting", cues.at("/cues/0/cue/look").asText());
            assertEquals("file", cues.at("/cues/0/from").asText());
            assertEquals("while idle", cues.at("/cues/0/sentence").asText());
            assertFalse(cues.at("/cues/0/holds").asBoolean());
            JsonNode last = cues.get("cues").get(cues.get("cues").size() - 1);
            assertEquals("silent", last.at("/cue/look").asText());
            assertTrue(last.get("on").asBoolean(), cues.toString());
            List<Map<String, Object>> next = List.of(
                    Map.of("look", "sea-mist", "signal", "nozzle.actual_C", "above", 40, "fade_s", 2),
                    Map.of("look", "waiting", "state", "idle"));
            Map<String, Object> body =
                    Map.of("cues", next, "base", cues.get("version").asText());
            String before = rig.text();
            assertEquals("fault_look", rig.put("cues", body).code(), "the first also holds during a fault");
            assertEquals(before, rig.text());
            Map<String, Object> sure = new HashMap<>(body);
            sure.put("sure", true);
            assertEquals(200, rig.put("cues", sure).status());
            assertEquals(412, rig.put("cues", sure).status());
            assertTrue(
                    rig.text().startsWith(before.substring(0, before.indexOf("[[cues]]"))), "all before is as it was");
            assertEquals(2, ConfigFile.read(rig.files().file()).cues().get(0).fadeSeconds());
            Map<String, Object> wrong = Map.of(
                    "cues",
                    List.of(Map.of("look", "waiting", "state", "idle"), Map.of("look", "wating", "state", "done")),
                    "base",
                    rig.get("cues").json().get("version").asText());
            Answer refused = rig.put("cues", wrong);
            assertEquals(422, refused.status());
            assertEquals(1, refused.json().at("/mistakes/0/cue").asInt());
            assertEquals("look", refused.json().at("/mistakes/0/key").asText());
        }
    }

    @Test
    void draftsOutlastTheDaemonAndAreBounded() throws IOException {
        Map<String, Object> draft = Map.of("look", Map.of("layers", List.of(), "of_the_page", 3), "base", "");
        BenchFiles files = new BenchFiles(folder.resolve("birch.toml"), folder.resolve("state/birch.looks.toml"));
        try (BenchRig rig = new BenchRig(files)) {
            assertEquals(200, rig.put("drafts/mine", draft).status());
            assertEquals(400, rig.put("drafts/M", draft).status());
        }
        try (BenchRig rig = new BenchRig(files)) {
            assertEquals(
                    3, rig.get("drafts/mine").json().at("/look/of_the_page").asInt());
            for (int i = 0; i < 19; i++) {
                assertEquals(200, rig.put("drafts/d" + i, draft).status());
            }
            assertEquals("too_many", rig.put("drafts/more", draft).code());
            assertEquals(200, rig.put("drafts/mine", draft).status(), "in place of itself");
            assertEquals(200, rig.send("DELETE", "drafts/d0", "").status());
            assertEquals(404, rig.get("drafts/d0").status());
            assertEquals(19, rig.get("drafts").json().get("drafts").size());
        }
    }

    @Test
    void looksThatAreKeptApartMayNotSayAnythingElse() throws Exception {
        try (BenchRig rig = new BenchRig(folder)) {
            Files.createDirectories(rig.files().overlay().getParent());
            Files.writeString(rig.files().overlay(), "[supply]\nceiling_mA = 60000\n");
            Answer verdict = rig.post("check", Map.of("name", "mine", "look", GREEN));
            assertFalse(verdict.json().get("ok").asBoolean());
            assertEquals(
                    "supply: may not be in this file; keep it in the configuration file itself",
                    verdict.json().at("/mistakes/0/text").asText());
        }
    }

    @Test
    void theDaemonRunsWithoutLooksThatDoNotFitAnyMore() throws ConfigException, IOException {
        try (BenchRig rig = new BenchRig(folder)) {
            Files.createDirectories(rig.files().overlay().getParent());
            Files.writeString(
                    rig.files().overlay(), "[looks.waiting]\nlayers = [{ zone = \"gone\", colour = \"red\" }]\n");
            List<String> told = new ArrayList<>();
            Overlays overlays = new Overlays() {
                @Override
                public Optional<Path> of(Path config) {
                    return Optional.of(rig.files().overlay());
                }

                @Override
                public boolean leavesOut(Path overlay, List<Mistake> why) {
                    why.forEach(mistake -> told.add(mistake.toString()));
                    return true;
                }
            };
            assertEquals(
                    rig.daemon().tap().config().looks().get("waiting"),
                    ConfigFile.examine(rig.files().file(), overlays)
                            .config()
                            .looks()
                            .get("waiting"));
            assertEquals(1, told.size());
            assertTrue(told.get(0).contains("looks.toml:2: looks.waiting.layers.0.zone: is \"gone\""), told.get(0));
        }
    }

    private static final String STROBE =
            "\n[looks.strobe]\nlayers = [{ colour = \"white\", rhythm = \"on 0.1s off 0.1s\", edge_s = 0 }]\n";

    @Test
    void checkingALookRefusesWhatSavingItWouldInTheSameWords() throws Exception {
        try (BenchRig rig = new BenchRig(folder)) {
            Files.writeString(rig.files().file(), rig.text() + STROBE);
            Answer check = rig.post("check", Map.of("name", "mine", "look", GREEN));
            Answer saved = rig.put("looks/mine", request(GREEN, ""));
            assertEquals(422, saved.status());
            assertFalse(check.json().get("ok").asBoolean());
            assertEquals(saved.json().get("mistakes"), check.json().get("mistakes"));
            JsonNode mistake = check.json().at("/mistakes/0");
            assertTrue(mistake.get("layer").isNull());
            assertTrue(mistake.get("elsewhere").asBoolean());
            assertEquals("looks.strobe.layers.0.rhythm", mistake.get("at").asText());
            Run run = Run.of("check", rig.files().file().toString());
            assertTrue(run.err().strip().endsWith(mistake.get("text").asText()), run.err());
            Map<String, Object> wrong = Map.of("layers", List.of(Map.of("colour", "rde")));
            assertEquals(
                    rig.put("looks/mine", request(wrong, "")).json().get("mistakes"),
                    rig.post("check", Map.of("name", "mine", "look", wrong))
                            .json()
                            .get("mistakes"));
            assertEquals(
                    "bad_name",
                    rig.post("check", Map.of("name", "MINE", "look", GREEN)).code());
        }
    }

    @Test
    void whatShowsAFaultIsNotRenamedDeletedOrRestoredUnasked() throws Exception {
        try (BenchRig rig = new BenchRig(folder)) {
            Map<String, Object> red = new HashMap<>(request(look("red"), version(rig, "fault")));
            red.put("sure", true);
            assertEquals(200, rig.put("looks/fault", red).status());
            String text = rig.text();
            String base = version(rig, "fault");
            String id = rig.get("versions").json().at("/versions/0/id").asText();
            List<Answer> unasked = List.of(
                    rig.send("DELETE", "looks/fault?base=" + base, ""),
                    rig.post("looks/fault/rename", Map.of("to", "other", "base", base)),
                    rig.post("restore", Map.of("id", id, "base", base)));
            unasked.forEach(answer ->
                    assertEquals("fault_look", answer.code(), answer.json().toString()));
            unasked.forEach(answer ->
                    assertEquals("fault", answer.json().at("/values/look").asText()));
            assertEquals(text, rig.text());
            assertEquals(
                    200,
                    rig.post("looks/fault/rename", Map.of("to", "other", "base", base, "sure", true))
                            .status());
            assertEquals(
                    200,
                    rig.post("restore", Map.of("id", "2", "base", version(rig, "other"), "sure", true))
                            .status());
            assertEquals(text, rig.text());
            assertEquals(
                    200,
                    rig.send("DELETE", "looks/fault?base=" + base + "&sure=true", "")
                            .status());
        }
    }

    private BenchRig ofShop() throws IOException {
        Path rigs = Files.createDirectories(folder.resolve("shop/rigs"));
        Files.writeString(folder.resolve("shop/shop.toml"), """
                [page]
                port = 0
                # For all rigs.
                [looks.calm]
                layers = [{ colour = "teal", zone = "{rig}" }] # where {rig} is
                [looks.of-birch]
                layers = [{ colour = "teal" }]
                [[cues]]
                look = "calm"
                state = "idle"
                view = "{rig}"
                [views.birch]
                pixels = "0-29"
                """);
        Path file = rigs.resolve("birch.toml");
        Files.writeString(
                file,
                BenchRig.FILE
                        .formatted(1883, 30, "")
                        .replaceFirst("(?s)\\[page].*?\n\n", "")
                        .replaceFirst("(?s)# Waiting.*", "")
                        .replace("[printer.state]", "[printers.birch.state]"));
        return new BenchRig(new BenchFiles(file, folder.resolve("state/birch.looks.toml")));
    }

    @Test
    void looksAndCuesThatAllRigsShareAreShownForThisRigAndSavedInItsOwnFile() throws Exception {
        try (BenchRig rig = ofShop()) {
            String shared = Files.readString(folder.resolve("shop/shop.toml"));
            JsonNode look = rig.get("looks/calm").json();
            assertEquals("shop", look.get("from").asText(), look.toString());
            assertEquals("birch", look.at("/look/layers/0/zone").asText());
            assertTrue(look.get("toml").asText().contains("zone = \"birch\" }] # where birch is"), look.toString());
            JsonNode cues = rig.get("cues").json();
            assertEquals("shop", cues.at("/cues/0/from").asText());
            assertEquals("birch", cues.at("/cues/0/cue/view").asText());
            assertEquals("shop", cues.get("from").asText());
            assertTrue(cues.get("file").asText().endsWith("shop.toml"));
            assertFalse(cues.at("/cues/0/holds").isNull(), "they are those that are in force");
            String before = rig.text();
            List<Map<String, Object>> own = List.of(Map.of("look", "calm", "state", "done"));
            Answer saved = rig.put(
                    "cues", Map.of("cues", own, "base", cues.get("version").asText()));
            assertEquals(200, saved.status(), saved.json().toString());
            assertEquals("file", saved.json().get("written").asText());
            cues = rig.get("cues").json();
            assertEquals("file", cues.get("from").asText());
            assertEquals("shop", cues.get("replaces").asText());
            assertEquals("done", cues.at("/cues/0/cue/state").asText());
            saved = rig.put(
                    "cues",
                    Map.of("cues", List.of(), "base", cues.get("version").asText()));
            assertEquals(200, saved.status(), saved.json().toString());
            assertEquals(
                    "built-in",
                    rig.get("cues").json().at("/cues/0/from").asText(),
                    "none of its own is not the same as those of all");
            Map<String, Object> teal = Map.of("layers", List.of(Map.of("colour", "teal", "opacity", 0.5)));
            assertEquals(
                    200,
                    rig.put("looks/calm", request(teal, version(rig, "calm"))).status());
            assertEquals("shop", rig.get("looks/calm").json().get("replaces").asText());
            String added = "cues = []\n";
            assertTrue(rig.text().contains(added), rig.text());
            assertEquals(
                    before.strip(),
                    rig.text().replace(added, "").substring(0, before.strip().length()));
            assertEquals(shared, Files.readString(folder.resolve("shop/shop.toml")));
            assertEquals(
                    "no_own_look",
                    rig.send("DELETE", "looks/of-birch?base=", "").code());
        }
    }

    @Test
    void draftsAreBoundedInBytesAndDepthAndThoseThatAreKeptOutlastTheDaemon() throws Exception {
        BenchFiles files = new BenchFiles(folder.resolve("birch.toml"), folder.resolve("state/birch.looks.toml"));
        List<String> kept = new ArrayList<>();
        try (BenchRig rig = new BenchRig(files)) {
            String deep = "{\"look\":" + "{\"a\":".repeat(300) + "1" + "}".repeat(300) + ",\"base\":\"\"}";
            Answer refused = rig.send("PUT", "drafts/deep", deep);
            assertEquals("too_deep", refused.code());
            assertEquals(16, refused.json().at("/values/levels").asInt());
            Map<String, Object> wide = Map.of("look", Map.of("note", "\u706f".repeat(20_500)), "base", "");
            assertEquals("draft_too_long", rig.put("drafts/wide", wide).code());
            Map<String, Object> large = Map.of("look", Map.of("note", "\u706f".repeat(19_000)), "base", "");
            String code = "";
            for (int i = 0; code.isEmpty(); i++) {
                Answer answer = rig.put("drafts/large-" + i, large);
                code = answer.code();
                if (code.isEmpty()) {
                    kept.add("large-" + i);
                }
            }
            assertEquals("drafts_too_long", code);
            assertTrue(kept.size() > 10, kept.toString());
        }
        try (BenchRig rig = new BenchRig(files)) {
            assertEquals(kept.size(), rig.get("drafts").json().get("drafts").size());
            for (String name : kept) {
                assertEquals(
                        19_000,
                        rig.get("drafts/" + name)
                                .json()
                                .at("/look/note")
                                .asText()
                                .length());
            }
        }
        BenchFiles other = new BenchFiles(folder.resolve("rowan.toml"), files.overlay());
        try (BenchRig rig = new BenchRig(other)) {
            assertEquals(0, rig.get("drafts").json().get("drafts").size(), "they are of another file");
            assertEquals("no_draft", rig.get("drafts/" + kept.get(0)).code());
        }
    }
}
