package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.testing.CapturedLog;
import dev.lampwright.testing.NamedPipe;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class WatchedConfigTest {
    private final CapturedLog log = new CapturedLog(WatchedConfig.class.getName());
    private final List<Integer> taken = new ArrayList<>();

    @TempDir
    private Path folder;

    private Path file;

    @BeforeEach
    void write() {
        file = folder.resolve("alder.toml");
        write(text(10));
    }

    @AfterEach
    void close() {
        log.close();
    }

    private static String text(int pixels) {
        return """
                broker.url = "mqtt://127.0.0.1"
                printer.readings.job.progress.topic = "shop/alder/job"
                controller.port = "memory"
                strip.pixels = %d
                """.formatted(pixels);
    }

    private void write(String text) {
        try {
            Files.writeString(file, text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static int pixels(Config config) {
        return config.setup().pixels();
    }

    private void take(Config config) {
        taken.add(pixels(config));
    }

    /** An editor saves the file just after the daemon has read it at its start. */
    @Test
    void aChangeRightAfterTheFirstReadingIsNoticed() throws ConfigException {
        WatchedConfig watched = new WatchedConfig(file, path -> {
            Config first = ConfigFile.read(path);
            write(text(200));
            return first;
        });
        assertEquals(10, pixels(watched.inForce()));
        assertFalse(watched.changed(), "it may still be written to");
        assertTrue(watched.changed());
        watched.readAgain(this::take);
        assertEquals(List.of(200), taken);
        assertEquals(200, pixels(watched.inForce()));
        assertFalse(watched.changed());
    }

    @Test
    void whatIsNotRightAtTheStartIsRefused() {
        write("strip.pixels = 0");
        assertThrows(ConfigException.class, () -> new WatchedConfig(file, ConfigFile::read));
    }

    @Test
    void whatIsNotRightIsRefusedAndWhatIsInForceStays() throws ConfigException {
        WatchedConfig watched = new WatchedConfig(file, ConfigFile::read);
        write(text(20) + "x=" + "[".repeat(900) + "1" + "]".repeat(900) + "\n");
        watched.readAgain(this::take);
        assertEquals(List.of(), taken);
        assertEquals(10, pixels(watched.inForce()));
        assertEquals(2, log.lines().size(), log.lines().toString());
        assertTrue(
                log.lines().get(0).startsWith("WARN " + file + ":5: arrays, tables and "),
                log.lines().get(0));
        assertEquals(
                "WARN " + file + " is rejected; the current configuration stays active",
                log.lines().get(1));
    }

    private static Stream<Throwable> unforeseen() {
        return Stream.of(new IllegalStateException("unforeseen"), new StackOverflowError());
    }

    private static void fail(Throwable failure) {
        if (failure instanceof Error error) {
            throw error;
        }
        throw (RuntimeException) failure;
    }

    @ParameterizedTest
    @MethodSource("unforeseen")
    void anUnforeseenFailureToReadIsToldInALineAndChangesNothing(Throwable failure) throws ConfigException {
        List<Path> read = new ArrayList<>();
        WatchedConfig watched = new WatchedConfig(file, path -> {
            read.add(path);
            if (read.size() == 2) {
                fail(failure);
            }
            return ConfigFile.read(path);
        });
        Config before = watched.inForce();
        watched.readAgain(this::take);
        assertSame(before, watched.inForce());
        assertEquals(List.of(), taken);
        assertEquals(List.of(met(failure)), log.lines());
        watched.readAgain(this::take);
        assertEquals(List.of(10), taken, "and it goes on");
    }

    @ParameterizedTest
    @MethodSource("unforeseen")
    void whatCannotBeTakenUpIsTakenBack(Throwable failure) throws ConfigException {
        WatchedConfig watched = new WatchedConfig(file, ConfigFile::read);
        Config before = watched.inForce();
        write(text(20));
        watched.readAgain(config -> {
            take(config);
            if (pixels(config) == 20) {
                fail(failure);
            }
        });
        assertEquals(List.of(20, 10), taken);
        assertSame(before, watched.inForce());
        assertEquals(List.of(met(failure)), log.lines());
    }

    @Test
    void whereTheWayBackFailsTooTheLogSaysSo() throws ConfigException {
        WatchedConfig watched = new WatchedConfig(file, ConfigFile::read);
        watched.readAgain(config -> fail(new IllegalStateException("unforeseen")));
        assertEquals(1, log.lines().size(), log.lines().toString());
        assertTrue(
                log.lines().get(0).endsWith("; start lampwright again"),
                log.lines().get(0));
    }

    private String met(Throwable failure) {
        return "ERROR " + file + " hit an internal error, please report it (" + failure
                + "); the current configuration stays active";
    }

    private List<String> linesWith(String text) {
        return log.lines().stream().filter(line -> line.contains(text)).toList();
    }

    @Test
    void aFileThatIsGoneIsToldOnceAndTakenUpWhenItIsBack() throws ConfigException, IOException {
        WatchedConfig watched = new WatchedConfig(file, ConfigFile::read);
        Files.delete(file);
        for (int i = 0; i < 5; i++) {
            assertFalse(watched.changed());
        }
        assertEquals(
                1,
                linesWith("there is no such file; the current configuration stays active")
                        .size());
        write(text(20));
        assertFalse(watched.changed());
        assertTrue(watched.changed());
        watched.readAgain(this::take);
        assertEquals(List.of(20), taken);
        Files.delete(file);
        Files.createSymbolicLink(file, file);
        for (int i = 0; i < 5; i++) {
            assertFalse(watched.changed());
        }
        assertEquals(
                2, linesWith("the current configuration stays active until").size(), log.lines()::toString);
        assertEquals(
                1,
                linesWith("cannot be read: Too many levels of symbolic links").size(),
                log.lines()::toString);
    }

    @Test
    void aPipeInItsPlaceIsRefusedAndAFileAfterItIsRead() throws ConfigException, IOException {
        WatchedConfig watched = new WatchedConfig(file, ConfigFile::read);
        Path pipe = NamedPipe.at(folder.resolve("pipe"));
        Files.move(pipe, file, StandardCopyOption.REPLACE_EXISTING);
        assertFalse(watched.changed());
        assertTrue(watched.changed());
        assertTimeoutPreemptively(Duration.ofSeconds(20), () -> watched.readAgain(this::take));
        assertEquals(1, linesWith("is a pipe or a device, not a file").size());
        Files.delete(file);
        write(text(20));
        assertFalse(watched.changed());
        assertTrue(watched.changed());
        watched.readAgain(this::take);
        assertEquals(List.of(20), taken);
    }

    /** The live page saves looks in a file of their own, and somebody removes that again. */
    @Test
    void aFileOfLooksThatComesOrGoesIsNoticed() throws ConfigException, IOException {
        Path looks = folder.resolve("alder.looks.toml");
        WatchedConfig watched = new WatchedConfig(file, looks, ConfigFile::read);
        Files.writeString(looks, "[looks.mine]\nlayers = [{ colour = \"teal\" }]\n");
        assertFalse(watched.changed(), "it may still be written to");
        assertTrue(watched.changed());
        Files.delete(looks);
        assertFalse(watched.changed());
        assertTrue(watched.changed());
        assertFalse(watched.changed());
    }
}
