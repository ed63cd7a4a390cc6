package dev.lampwright.soak;

import dev.lampwright.testing.Mosquitto;
import dev.lampwright.testing.NamedPipe;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** One rig: a printer, a broker, a controller, and the configuration that puts them together. */
final class RigBench implements AutoCloseable {
    private final String name;
    private final Path config;
    private final String more;
    private final Mosquitto broker;
    private final Rowan rowan;
    private final FarEnd controller;
    private boolean edition = true;

    /**
     * Makes one, and writes its configuration.
     *
     * @param name what to call it
     * @param config where its configuration is to be
     * @param more further lines of it, such as belong to the whole process
     * @param folder an empty folder for its controller
     * @param board whether the controller is the emulated board
     */
    RigBench(String name, Path config, String more, Path folder, boolean board) throws IOException {
        this.name = name;
        this.config = config;
        this.more = more;
        broker = Mosquitto.start();
        rowan = new Rowan(broker);
        controller = board ? new BoardEnd(folder) : new MemoryEnd(folder);
        write(configuration());
    }

    String name() {
        return name;
    }

    /** What is written to the configuration where it is right. */
    String configuration() {
        return more + Rowan.configuration(broker.url(), controller.port(), edition);
    }

    /** What ought to be shown of a state. */
    Marker marker(Rowan.State state) {
        return new Marker(state, edition);
    }

    /** Goes over to the other edition, which is still to be written. */
    void turnEdition() {
        edition = !edition;
    }

    /** Writes the configuration, right or not. */
    void write(String text) throws IOException {
        Files.writeString(config, text);
    }

    /** Takes the configuration away, whatever is in its place. */
    void deleteConfiguration() throws IOException {
        Files.deleteIfExists(config);
    }

    /** Puts a pipe that nobody writes to in its place. */
    void pipeForConfiguration() {
        NamedPipe.at(config);
    }

    Mosquitto broker() {
        return broker;
    }

    Rowan rowan() {
        return rowan;
    }

    FarEnd controller() {
        return controller;
    }

    @Override
    public void close() {
        controller.close();
        broker.close();
    }
}
