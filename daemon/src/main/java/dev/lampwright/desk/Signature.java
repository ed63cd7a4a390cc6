package dev.lampwright.desk;

import dev.lampwright.json.JsonObject;
import dev.lampwright.upkeep.Machine;
import dev.lampwright.upkeep.Printable;
import java.security.SecureRandom;
import java.util.HexFormat;

/**
 * Who reports.
 *
 * @param host name of the computer; empty if unknown
 * @param rig name of the rig
 * @param run distinguishes one run of a daemon from every other
 */
public record Signature(String host, String rig, String run) {
    /** The value of the key {@code program} in every status, by which a status is recognised whatever its topic. */
    public static final String PROGRAM = "lampwright";

    /** A name has at most 255 octets on the wire (RFC 1035, section 2.3.4), which is 253 characters as text. */
    private static final int LONGEST_HOST = 253;

    private static final int RUN_BYTES = 6;

    /**
     * A signature for a run that starts now.
     *
     * @param prefix the topic prefix; its last level is the rig's name
     * @return for this computer
     */
    public static Signature begun(String prefix) {
        byte[] random = new byte[RUN_BYTES];
        new SecureRandom().nextBytes(random);
        String host = Printable.beginning(Machine.name(), LONGEST_HOST);
        return new Signature(host, lastLevel(prefix), HexFormat.of().formatHex(random));
    }

    /**
     * The same run under another prefix.
     *
     * @param prefix the topic prefix from now on
     */
    public Signature under(String prefix) {
        return new Signature(host, lastLevel(prefix), run);
    }

    private static String lastLevel(String prefix) {
        return prefix.substring(prefix.lastIndexOf('/') + 1);
    }

    /** The beginning of every status: what it is, and whose. */
    JsonObject json(boolean online, String version) {
        return new JsonObject()
                .put("program", PROGRAM)
                .put("online", online)
                .put("version", version)
                .putIfAny("host", host)
                .put("rig", rig)
                .put("run", run);
    }
}
