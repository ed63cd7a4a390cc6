package dev.lampwright.desk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;

/**
 * The users' reference of what can be asked for, {@code doc/asks.md}, written from {@link Ask}. To write it again, in {@code daemon}
 * after {@code mvn test-compile}: see {@link #COMMAND}.
 */
final class AskReference {
    static final Path FILE = Path.of("doc", "asks.md");
    static final String COMMAND = "java -cp target/test-classes:target/lampwright.jar dev.lampwright.desk.AskReference";

    private static final String BEGINNING = """
            # What you can ask Lampwright for

            *Written from the table in the code; do not edit it here.*

            Ask with `lampwright tell`, on the live page, or by a message on `PREFIX/ask/WORD`, where `PREFIX` is `[desk] prefix`. A message
            carries a bare value, or a JSON object in which the value has the word for its key and other keys may stand beside it. An `id` in
            the object comes back in the answer, which is published on `PREFIX/answer`:

            ```json
            {"ask":"look","done":true,"now":"look done for 30 s","id":"7"}
            {"ask":"look","done":false,"why":"there is no look \\"dune\\"; choose one of: done, idle"}
            ```

            What is wrong is refused as a whole. A retained message is refused too: the broker would ask it again at every connection. What was
            asked for is forgotten when the daemon ends.
            """;

    private AskReference() {}

    public static void main(String[] args) throws IOException {
        Files.createDirectories(FILE.toAbsolutePath().getParent());
        Files.writeString(FILE, text());
    }

    static String text() {
        StringBuilder text = new StringBuilder(BEGINNING);
        for (Ask ask : Ask.values()) {
            write(ask, text);
        }
        return text.toString();
    }

    private static void write(Ask ask, StringBuilder text) {
        Ask.About about = ask.about();
        String value = about.value().isEmpty() ? "none" : about.value();
        text.append("\n## ")
                .append(ask.word())
                .append("\n\n")
                .append(about.text())
                .append("\n\n");
        text.append("* Value: ").append(value).append("\n");
        if (about.key() != Ask.Key.NONE) {
            text.append("* `%s`: %s\n".formatted(about.key().key(), about.key().help()));
        }
        text.append("* `lampwright tell --config alder.toml ")
                .append(ask.example())
                .append("`\n");
        text.append("* `mosquitto_pub -t PREFIX/ask/")
                .append(ask.word())
                .append(payload(about))
                .append("`\n");
    }

    private static String payload(Ask.About about) {
        return about.message().isEmpty() ? " -n" : " -m '" + about.message() + "'";
    }

    /** All that a checked-in file lacks, in words. */
    static String advice() {
        return FILE + " is not what the code says; in daemon, run " + COMMAND;
    }

    static String checkedIn() throws IOException {
        return Files.readAllLines(FILE).stream().collect(Collectors.joining("\n", "", "\n"));
    }
}
