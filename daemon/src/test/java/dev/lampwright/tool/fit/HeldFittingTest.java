package dev.lampwright.tool.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.lampwright.protocol.Here;
import dev.lampwright.testing.Await;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The fitting by requests, with a strip in memory and somebody who answers from what they see. */
@Timeout(60)
class HeldFittingTest {
    private static final Here BOARD = new Here(1, "1.0.0", 0x6c616d7000000001L, 300, 1024, 6, 1, 10_000, false);
    private static final StripModel STRIP = new StripModel("BGR", 47, Collections.nCopies(3, 12.0), 0.8);
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final String PASSWORD = "under the stairs";

    @TempDir
    private Path folder;

    private final AtomicLong clock = new AtomicLong();
    private final AtomicInteger released = new AtomicInteger();
    private final AtomicInteger resumed = new AtomicInteger();
    private final List<String> replies = new ArrayList<>();
    private final ModelBoards boards = new ModelBoards(BOARD, STRIP);
    private HeldFitting fitting;
    private String lease = "";
    private boolean elsewhere;

    private Path file() {
        return folder.resolve("alder.toml");
    }

    private HeldFitting held() {
        fitting = new HeldFitting(
                "",
                file(),
                boards,
                () -> PrinterFinder.BY_HAND,
                new TestKnowledge(file()),
                new HeldFitting.Controller() {
                    @Override
                    public void release() {
                        released.incrementAndGet();
                    }

                    @Override
                    public void resume() {
                        resumed.incrementAndGet();
                    }
                },
                OptionalInt.empty(),
                clock::get);
        return fitting;
    }

    @AfterEach
    void end() {
        if (fitting != null) {
            fitting.close();
        }
    }

    private static Person person(Eyes eyes) {
        return new Person(eyes).wants("bed", 30, 12).say("Is a meter connected", "n");
    }

    private JsonNode send(String what, Map<String, Object> more) throws IOException {
        Map<String, Object> body = new LinkedHashMap<>(more);
        body.putIfAbsent("lease", lease);
        FitReply reply = fitting.answer(what, JSON.writeValueAsString(body), elsewhere);
        String text = JSON.writeValueAsString(reply.body());
        replies.add(text);
        JsonNode view = JSON.readTree(text);
        view.at("/talk/said").forEach(HeldFittingTest::requireCode);
        assertTrue(view.at("/talk/question").isMissingNode() || hasCode(view.at("/talk/question")), text);
        return view;
    }

    /** A page in another language could not word it. */
    private static void requireCode(JsonNode said) {
        assertTrue(hasCode(said), said::toString);
    }

    private static boolean hasCode(JsonNode phrase) {
        return !phrase.path("code").asText().isEmpty();
    }

    private JsonNode begin() throws IOException {
        JsonNode view = send("begin", Map.of());
        lease = view.path("lease").asText();
        return view;
    }

    /** Answers until there are no more questions, or so many have been answered; returns the last view. */
    private JsonNode answer(Person person, int most) throws IOException {
        JsonNode view = send("beat", Map.of("changes", -1));
        for (int count = 0; count < most && view.path("running").asBoolean(); ) {
            JsonNode talk = view.path("talk");
            if (!talk.path("asking").asBoolean()) {
                view = send("beat", Map.of("changes", talk.path("changes").asLong()));
                continue;
            }
            JsonNode question = talk.path("question");
            long number = talk.path("number").asLong();
            view = question.path("kind").asText().equals("secret")
                    ? send("give", Map.of("number", number, "line", PASSWORD))
                    : send(
                            "answer",
                            Map.of(
                                    "number",
                                    number,
                                    "line",
                                    person.answer(List.of(question.path("text").asText()))));
            count++;
        }
        return view;
    }

    private String byLines() throws IOException {
        ModelBoards others = new ModelBoards(BOARD, STRIP);
        Talk talk = new Talk(person(others));
        new GuidedFitting(file(), talk, others, PrinterFinder.BY_HAND, new TestKnowledge(file())).run();
        String text = Files.readString(file());
        Files.delete(file());
        return text;
    }

    @Test
    void theSameAnswersMakeTheSameFileByteForByte() throws IOException {
        String wanted = byLines();
        held();
        begin();
        JsonNode view = answer(person(boards), 200);
        assertEquals("done", view.path("end").asText(), () -> replies.get(replies.size() - 1));
        assertEquals(wanted, Files.readString(file()));
        assertTrue(boards.dark());
        assertEquals(1, released.get());
        assertEquals(1, resumed.get());
        assertTrue(fitting.isEndSeen());
    }

    @Test
    void whatIsStoppedIsResumedWithTheSameResult() throws IOException {
        String wanted = byLines();
        held();
        begin();
        answer(person(boards), 11);
        JsonNode stopped = send("stop", Map.of());
        assertEquals("stopped", stopped.path("end").asText());
        assertTrue(boards.dark());
        assertTrue(Files.exists(folder.resolve("alder.toml.fit")));
        assertTrue(send("now", Map.of("lease", "")).path("under_way").asBoolean());
        begin();
        answer(person(boards), 200);
        assertEquals(wanted, Files.readString(file()));
    }

    @Test
    void oneHoldsItAndItGoesDarkWhenTheLeaseLapses() throws IOException {
        held();
        begin();
        answer(person(boards), 3);
        Await.until("light", () -> !boards.dark());
        String mine = lease;
        JsonNode other = send("begin", Map.of("lease", ""));
        assertEquals("fit_held", other.path("code").asText());
        JsonNode seen = send("now", Map.of("lease", ""));
        assertTrue(seen.path("running").asBoolean());
        assertFalse(seen.has("talk"), "others see that it is held, and nothing else");
        clock.addAndGet(HeldFitting.LEASE.toNanos() - 1);
        JsonNode renewed = send("beat", Map.of("changes", -1));
        assertTrue(renewed.path("running").asBoolean());
        clock.addAndGet(HeldFitting.LEASE.toNanos() - 1);
        JsonNode waited = send(
                "beat", Map.of("changes", renewed.path("talk").path("changes").asLong()));
        assertTrue(waited.path("talk").path("asking").asBoolean(), "each beat renews the lease");
        clock.addAndGet(HeldFitting.LEASE.toNanos() + 1);
        Await.until("the end", () -> !fitting.isRunning());
        assertTrue(boards.dark());
        assertEquals(1, resumed.get());
        assertEquals("lapsed", send("beat", Map.of("changes", -1)).path("end").asText());
        assertTrue(Files.exists(folder.resolve("alder.toml.fit")), "answers are kept");
        begin();
        assertNotEquals(mine, lease);
        assertEquals(
                "fit_not_held",
                send("stop", Map.of("lease", "guessed")).path("code").asText());
    }

    @Test
    void aPasswordIsInItsFileAndNowhereElse() throws IOException {
        held();
        begin();
        Person person = person(boards).say("What is lampwright's user name there", "alder-lights");
        JsonNode view = answer(person, 200);
        assertEquals("done", view.path("end").asText(), () -> replies.get(replies.size() - 1));
        Path password = folder.resolve("alder.broker-password");
        assertEquals(PASSWORD + "\n", Files.readString(password));
        assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(password)));
        assertTrue(Files.readString(file()).contains("password_file = \"" + password + "\""), Files.readString(file()));
        assertFalse(replies.toString().contains(PASSWORD));
        assertFalse(Files.readString(file()).contains(PASSWORD));
    }

    /** Nobody knows the tokens yet, and the answers are those of a fitting on this computer. */
    @Test
    void whoeverFitsFromAnotherComputerKeepsThePage() throws IOException {
        String here = byLines();
        Files.writeString(folder.resolve("other"), "");
        Files.createSymbolicLink(folder.resolve("alder.edit-token"), folder.resolve("other"));
        elsewhere = true;
        held();
        begin();
        assertEquals(Optional.empty(), fitting.tokens());
        JsonNode view = answer(person(boards).say("Do you want the live page", "y"), 200);
        assertEquals("done", view.path("end").asText(), () -> replies.get(replies.size() - 1));
        HeldFitting.Tokens tokens = fitting.tokens().orElseThrow();
        assertEquals(
                here.replace("\n# For 'lampwright plan'.", """

                        [page]                                  # the live page, for browsers on this computer and others
                        address = "0.0.0.0"
                        token_file = "%s"
                        edit_token_file = "%s"

                        # For 'lampwright plan'.""".formatted(tokens.asking(), tokens.editing())),
                Files.readString(file()));
        for (Path token : List.of(tokens.asking(), tokens.editing())) {
            assertTrue(Files.readString(token).matches("[0-9a-f]{32}\n"), token::toString);
            assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(token)));
            assertFalse(replies.toString().contains(Files.readString(token).strip()));
        }
        assertFalse(Files.isSymbolicLink(tokens.editing()));
        assertEquals("", Files.readString(folder.resolve("other")), "nothing is written through a link");
        assertNotEquals(Files.readString(tokens.asking()), Files.readString(tokens.editing()));
    }

    /** Whoever has the tokens of that file still needs them. */
    @Test
    void theTokensOfAFileThatIsNotReplacedStay() throws IOException {
        elsewhere = true;
        held();
        begin();
        Files.writeString(file(), "# birch\n");
        Path token = Files.writeString(folder.resolve("alder.edit-token"), "birch\n");
        Person person = person(boards).say("Do you want the live page", "y");
        JsonNode view = send("beat", Map.of("changes", -1));
        while (!view.at("/talk/question/code").asText().equals("file_replace")) {
            assertTrue(view.path("running").asBoolean(), () -> replies.get(replies.size() - 1));
            view = view.at("/talk/asking").asBoolean()
                    ? answer(person, 1)
                    : send("beat", Map.of("changes", view.at("/talk/changes").asLong()));
        }
        send("back", Map.of("number", view.at("/talk/number").asLong()));
        assertEquals("birch\n", Files.readString(token));
        assertEquals("# birch\n", Files.readString(file()));
        assertFalse(Files.exists(folder.resolve("alder.page-token")));
    }

    @Test
    void whoeverWantsNoPageGetsNoTokens() throws IOException {
        String here = byLines();
        elsewhere = true;
        held();
        begin();
        answer(person(boards), 200);
        assertEquals(here, Files.readString(file()));
        assertEquals(Optional.empty(), fitting.tokens());
        assertFalse(Files.exists(folder.resolve("alder.page-token")));
    }

    @Test
    void filesCannotBeNamedAndKeysAreNotAnswers() throws IOException {
        held();
        begin();
        Person person = person(boards).say("What is lampwright's user name there", "alder-lights");
        JsonNode view = send("beat", Map.of("changes", -1));
        while (!view.path("talk").path("question").path("kind").asText().equals("secret")) {
            view = answer(person, 1);
        }
        long number = view.path("talk").path("number").asLong();
        JsonNode named = send("answer", Map.of("number", number, "line", "/etc/hostname"));
        assertEquals(
                "files are not named here; send what should be in the file",
                named.path("why").asText());
        JsonNode broken = send("give", Map.of("number", number, "line", "two\nlines"));
        assertTrue(broken.path("talk").at("/refused/text").asText().startsWith("a password is one line"));
        JsonNode key = send("answer", Map.of("number", number, "line", ""));
        assertTrue(key.path("talk").path("number").asLong() > number, "an empty line means none");
        JsonNode late = send("answer", Map.of("number", number, "line", ""));
        assertEquals(key.path("talk").path("number"), late.path("talk").path("number"), "an old answer is ignored");
    }

    @Test
    void aTriedValueLightsAndIsNotKept() throws IOException {
        held();
        begin();
        Person person = person(boards);
        JsonNode view = send("beat", Map.of("changes", -1));
        while (!view.path("talk").path("question").path("kind").asText().equals("slider")) {
            view = answer(person, 1);
        }
        long number = view.path("talk").path("number").asLong();
        String kept = Files.readString(folder.resolve("alder.toml.fit"));
        JsonNode tried = send("try", Map.of("number", number, "line", "17"));
        assertEquals(number, tried.path("talk").path("number").asLong(), "the question stays");
        assertTrue(boards.pixels().get(17).lit());
        assertEquals(kept, Files.readString(folder.resolve("alder.toml.fit")));
        JsonNode wrong = send("try", Map.of("number", number, "line", "99"));
        assertFalse(wrong.path("talk").at("/refused/text").asText().isEmpty());
        assertTrue(boards.pixels().get(17).lit());
    }
}
