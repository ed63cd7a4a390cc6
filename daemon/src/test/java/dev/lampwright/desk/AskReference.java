package dev.lampwright.desk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;
import java.util.stream.Stream;

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

            [Topics](topics.md) explains how to ask and what the daemon publishes. This page has every ask.

            On this page: [Messages](#messages) · [Levels, times and fades](#levels-times-and-fades) · [What is asked for now](#what-is-asked-for-now) ·
            %s

            ## Messages

            Ask with `lampwright tell`, on the live page, or by a message on `PREFIX/ask/WORD`, where `PREFIX` is `[desk] prefix`. A message
            is a bare value, or a JSON object that has the value under the word as its key, with other keys if you like. An `id` in
            the object comes back in the answer, which is published on `PREFIX/answer`. `by` is what the asker calls itself, at most 40
            characters; the [history](history.md) records it with an acknowledged fault, since MQTT does not tell who published:

            ```json
            {"ask":"look","done":true,"now":"look done for 30 s","id":"7"}
            {"ask":"look","done":false,"why":"there is no look \\"dune\\"; choose one of: done, idle",
             "code":"unknown_look","values":{"name":"dune","wanted":"choose one of: done, idle"}}
            ```

            `code` and `values` say the same as `why`, for programs and for other languages.

            If anything in a message is wrong, all of it is refused. A retained message is refused too: the broker would repeat it at every connection.
            What was asked for is forgotten when the daemon ends, unless `[desk] keep = true`: then it survives a restart, and ends when it would
            have ended. If the configuration no longer has what was asked for, it is dropped, and the log says so.

            ## Levels, times and fades

            **Levels** are numbers from 0 to 1, percentages such as `"40 %%"`, `"off"`, or `"on"`: the last level above 0 that was asked for, or else full
            (for `brightness`: that of `[desk] brightness`). Upper and lower case are the same.

            **How long**: `for_s` is a time in seconds, from 0.1 to a week; `"until": "changed"` lasts until something else is asked for. With
            `lampwright tell`, that is `--for 90` and `--until changed`.

            **Fades**: `fade_s`, or `--fade`, is how many seconds the light takes to change, there and back again, up to 600. Without it, a look takes
            0.6 s, a level half a second for the full range, and pixels one frame. A fault does not wait for a fade, and the flash limit and
            the ceilings hold throughout.

            **Back to automatic**: `auto` releases what was asked for, each by itself, or with `lights` everything at once.

            ## What is asked for now

            It is in the daemon's status, on `PREFIX/status`, which `lampwright tell --config alder.toml status` prints, and on the live page:

            ```json
            "asked":[{"ask":"work","name":"side","value":0.4,"until":"changed"},
                     {"ask":"look","value":"done","until":"2026-11-27T10:00:00Z","left_s":42}]
            ```

            Of zones, pixels and runs with their own colours, the newest 24 are listed; `asked_more` says how many others there are.

            **The daemon's status** is retained on `PREFIX/status`. It is published at once when a word of it changes, again two seconds later when light
            has changed accordingly, and every five seconds. [`lampwright shelf`](shelf.md) shows the statuses of all daemons at a broker. What is not
            known is left out:

            | key | what |
            | --- | --- |
            | `program` | always `lampwright`; identifies a status, whatever its prefix |
            | `online` | false once the daemon was stopped, or the broker has lost it. Then only `why` (`stopped` or `lost`), `program`, `version`, `host`, `rig` and `run` are present |
            | `version` | of the daemon |
            | `host`, `rig` | names of the computer and of the rig |
            | `run` | distinguishes this run of the daemon from every other, so that two daemons on one prefix are noticed |
            | `at` | when this was reported, in UTC by the computer's clock. A daemon whose retained status is older than 15 seconds is no longer running: a computer that loses its power while its broker is down cannot withdraw its status |
            | `page` | address of the live page, if other machines can reach it |
            | `strip_rgb` | the strip as it is lit, in at most 32 colours from the controller on, six hexadecimal digits each, as a screen shows them (sRGB) |
            | `state` | what the printer is doing: `idle`, `warming`, `printing`, `held`, `done`, `stopped`, `fault` or `silent` |
            | `progress` | of the job, or of the heat-up before it, 0 to 1 |
            | `left_s` | seconds until the job is done, or the heat-up before it |
            | `silence` | why the printer is silent |
            | `alarm` | `normal`, `alert` (a fault that nobody has acknowledged), `acknowledged`, or `ringback` (over, and waits for a reset) |
            | `fault_text` | what the printer says about the fault |
            | `printers` | of several printers, each by its name: `state`, `alarm`, `look` and, where known, `progress`, `left_s`, `silence` and `fault_text`; the keys above are then those of the printer that needs attention most ([several printers](views.md)) |
            | `look`, `brightness`, `quiet` | the look that is on, the share of its light, and whether light is dimmed for the night |
            | `strip_mA`, `ceiling_mA` | current of the last frame, and its ceiling |
            | `link`, `controller_last_reset` | the line to the controller: `lit`, `down`, `asking`, `setting up` or `unlit`; why the controller last started |
            | `broker` | the connection to the broker |
            | `frames_per_s` | frames made per second |
            | `asked`, `asked_more` | what is asked for, as above |
            | `signals`, `units` | what light can follow, and the units of those whose names do not include one |
            """;

    private AskReference() {}

    public static void main(String[] args) throws IOException {
        Files.createDirectories(FILE.toAbsolutePath().getParent());
        Files.writeString(FILE, text());
    }

    static String text() {
        String links = Stream.of(Ask.values())
                .map(ask -> "[%s](#%s)".formatted(ask.word(), ask.word()))
                .collect(Collectors.joining(" · "));
        StringBuilder text = new StringBuilder(BEGINNING.formatted(links));
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
        for (Ask.Key key : ask.keys()) {
            text.append("* `%s`: %s\n".formatted(key.key(), key.help()));
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

    /** Everything that a checked-in file lacks, in words. */
    static String advice() {
        return FILE + " is not what the code says; in daemon, run " + COMMAND;
    }

    static String checkedIn() throws IOException {
        return Files.readAllLines(FILE).stream().collect(Collectors.joining("\n", "", "\n"));
    }
}
