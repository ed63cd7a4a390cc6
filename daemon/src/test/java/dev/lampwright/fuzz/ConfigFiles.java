package dev.lampwright.fuzz;

import dev.lampwright.cli.InProcess;
import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.config.Mistake;
import dev.lampwright.testing.SmallStack;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.IntStream;

/**
 * Valid configurations with some edits. A refused one must be refused line by line; an accepted one must make frames, and some of those are
 * applied by the running daemon, or passed to {@code lampwright check}.
 */
final class ConfigFiles implements Target {
    private static final int MOST_EDITS = 5;
    private static final int MOST_PIXELS = 300;
    private static final int LONGEST_LINE = 1500;
    /** Sources by name; the one without a name is the configuration of the rig. */
    private static final List<String> SOURCES = List.of(
            "",
            "",
            "/dev/lampwright/config/example.toml",
            "/dev/lampwright/endtoend/birch.toml",
            "/dev/lampwright/benchmark/eight-layers.toml");

    @Override
    public String name() {
        return "config";
    }

    @Override
    public int mostSteps() {
        return 60;
    }

    @Override
    public Duration promise() {
        return Duration.ofSeconds(4);
    }

    @Override
    public Step step(SplittableRandom chance) {
        String source = Oddities.pick(SOURCES, chance);
        boolean checked = chance.nextInt(16) == 0;
        List<Edit> edits = chance.ints(1 + Math.min(chance.nextInt(MOST_EDITS), chance.nextInt(MOST_EDITS)))
                .mapToObj(seed -> new Edit(seed))
                .toList();
        return step(source, edits, checked);
    }

    private static Step step(String source, List<Edit> edits, boolean checked) {
        String name = source.isEmpty() ? "the rig's file" : source;
        return new Step(
                (checked ? "check " : "read ") + name + " with edits "
                        + edits.stream().map(Edit::seed).toList(),
                rig -> read(rig, edited(rig, source, edits), checked),
                () -> fewer(source, edits, checked));
    }

    private static List<Step> fewer(String source, List<Edit> edits, boolean checked) {
        return IntStream.range(0, edits.size() > 1 ? edits.size() : 0)
                .mapToObj(left -> {
                    List<Edit> others = new ArrayList<>(edits);
                    others.remove(left);
                    return step(source, others, checked);
                })
                .toList();
    }

    private static byte[] edited(Rig rig, String source, List<Edit> edits) {
        byte[] text = rig.here(source.isEmpty() ? rig.house() : resource(source));
        for (Edit edit : edits) {
            text = edit.of(text);
        }
        return text;
    }

    private static String resource(String name) {
        try (InputStream in = ConfigFiles.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void read(Rig rig, byte[] text, boolean checked) throws IOException {
        Path file = rig.folder().resolve("edited.toml");
        Files.write(file, text);
        Optional<Config> config = read(file, new String(text, StandardCharsets.UTF_8));
        if (config.isEmpty()) {
            rig.refused();
        }
        if (config.isEmpty() || config.get().setup().pixels() > MOST_PIXELS) {
            return;
        }
        Trial.of(config.get());
        if (checked) {
            judge(file, InProcess.check(file));
        }
        if (rig.isHarmless(config.get())) {
            rig.readAgain(text);
            rig.pass(100);
        }
    }

    /** On a smaller stack than the service's. */
    private static Optional<Config> read(Path file, String text) {
        AtomicReference<Config> config = new AtomicReference<>();
        try {
            Optional<Throwable> thrown = SmallStack.thrownBy(() -> config.set(ConfigFile.read(file)));
            if (thrown.isPresent() && !(thrown.get() instanceof ConfigException)) {
                throw new AssertionError("reading the file failed: " + Oddities.shown(text), thrown.get());
            }
            thrown.ifPresent(refused -> judge(((ConfigException) refused).mistakes(), text));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AssertionError(e);
        }
        return Optional.ofNullable(config.get());
    }

    /** Each mistake is a line with a place, with what is wrong and with what would be right. */
    static void judge(List<Mistake> mistakes, String text) {
        long lines = text.lines().count() + 1;
        for (Mistake mistake : mistakes) {
            String line = mistake.toString();
            boolean placed = mistake.line() > 0 || !mistake.key().isEmpty();
            boolean helps =
                    !mistake.what().isBlank() && !mistake.whatWouldBeRight().isBlank();
            if (!placed || !helps || mistake.line() > lines || line.length() > LONGEST_LINE) {
                throw new AssertionError("a mistake does not help: " + Oddities.shown(line));
            }
            if (LogWatch.judge(line, true).isPresent()) {
                throw new AssertionError(LogWatch.judge(line, true).get() + ": " + Oddities.shown(line));
            }
        }
    }

    private static void judge(Path file, InProcess.Answer answer) {
        boolean right =
                answer.status() == 0 || (answer.status() == 1 && !answer.err().isBlank());
        for (String line : answer.err().lines().toList()) {
            right &= line.startsWith(file.toString())
                    && LogWatch.judge(line, true).isEmpty();
        }
        if (!right) {
            throw new AssertionError("check answers " + Oddities.shown(answer.toString()));
        }
    }
}
