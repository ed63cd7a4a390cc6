package dev.lampwright.link;

import dev.lampwright.phrase.Phrase;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributes;
import java.nio.file.attribute.PosixFilePermission;
import java.util.Set;

/** Why a port did not open, for the user. The numbers are Linux's, of {@code asm-generic/errno-base.h}. */
final class OpenFailure {
    private static final int EPERM = 1;
    /** From the serial library: its last use of the port has not ended. Shares its number with ENOENT. */
    private static final int STILL_IN_USE = 2;

    private static final int ENXIO = 6;
    private static final int EAGAIN = 11;
    private static final int EACCES = 13;
    private static final int EBUSY = 16;
    private static final int ENODEV = 19;
    private static final int ENOTTY = 25;

    private static final String PORT = "port";

    /** The group that owns serial ports, if the port itself does not show it. */
    private static final String USUAL_GROUP = "dialout";

    private OpenFailure() {}

    /**
     * Why it did not open.
     *
     * @param name the port as given by the user
     * @param node its device node
     * @param errno the system's error number
     * @param baud requested bits per second
     * @return what is wrong and what to do
     */
    static Phrase of(String name, Path node, int errno, int baud) {
        return switch (errno) {
            case EACCES, EPERM -> noPermission(name, group(node), System.getProperty("user.name", "USER"));
            case EBUSY, EAGAIN ->
                Phrase.of("port_busy", name + " is in use by another program: end that program", PORT, name);
            case STILL_IN_USE ->
                Phrase.of(
                        "port_closing",
                        name + " is still being closed: if this persists, unplug the controller and plug it back in",
                        PORT,
                        name);
            case ENXIO, ENODEV ->
                Phrase.of(
                        "port_empty",
                        name + " has no device behind it: unplug the controller and plug it back in",
                        PORT,
                        name);
            case ENOTTY -> Phrase.of("port_not_serial", name + " is not a serial port: " + Ports.advice(), PORT, name);
            default ->
                Phrase.of(
                        "port_error",
                        name + " does not open at " + baud + " baud (error " + errno
                                + "): check [controller] baud, and unplug the controller and plug it back in",
                        PORT,
                        name,
                        "baud",
                        baud,
                        "error",
                        errno);
        };
    }

    /** For a user without permission to open a port. */
    static Phrase noPermission(String name, String group, String user) {
        String command = "sudo usermod -aG " + group + " " + user;
        return Phrase.of(
                "port_permission",
                "no permission to open " + name + ": run '" + command
                        + "', then log in again (a service: start it again)",
                PORT,
                name,
                "command",
                command);
    }

    /** The group to join: the node's own, if its members may use the port. */
    static String group(Path node) {
        try {
            PosixFileAttributes attributes = Files.readAttributes(node, PosixFileAttributes.class);
            boolean forGroup = attributes
                    .permissions()
                    .containsAll(Set.of(PosixFilePermission.GROUP_READ, PosixFilePermission.GROUP_WRITE));
            return forGroup ? attributes.group().getName() : USUAL_GROUP;
        } catch (IOException | UnsupportedOperationException e) {
            return USUAL_GROUP;
        }
    }
}
