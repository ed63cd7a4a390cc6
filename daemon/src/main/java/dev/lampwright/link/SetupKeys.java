package dev.lampwright.link;

import dev.lampwright.protocol.Complaint;
import dev.lampwright.protocol.Setup;

/** Names the key of the configuration behind a field of a set-up, so that the reader of a refusal knows what to change. */
final class SetupKeys {
    private SetupKeys() {}

    /**
     * What to do about a refused set-up.
     *
     * @param setup what was refused
     * @param refusal how
     * @return a clause that starts with the key, or with what to do
     */
    static String remedy(Setup setup, Refusal refusal) {
        return refusal.complaint() == Complaint.VALUE
                ? "it does not take " + key(setup, refusal.detail()) + ": change that, or " + Refusal.NEW_FIRMWARE
                : Refusal.NEW_FIRMWARE;
    }

    /**
     * The key behind a field. The offsets are those of {@code wire.md}, SETUP.
     *
     * @param setup the set-up
     * @param offset where the field is in its body
     * @return the key with its section
     */
    static String key(Setup setup, int offset) {
        int dimmersAt = Setup.dimmersAt(setup.ceilingsMilliamps().size());
        int runsAt = Setup.bodyBytes(
                setup.ceilingsMilliamps().size(), setup.dimmers().size());
        if (offset >= runsAt) {
            return "[strip] outputs";
        }
        if (offset > dimmersAt) {
            return dimmer((offset - dimmersAt - 1) / Setup.DIMMER_BYTES, (offset - dimmersAt - 1) % Setup.DIMMER_BYTES);
        }
        if (offset == dimmersAt) {
            return "the number of [dimmers], " + setup.dimmers().size();
        }
        return first(offset);
    }

    private static String first(int offset) {
        if (offset < 2) {
            return "[strip] pixels";
        } else if (offset < 7) {
            return "[strip] order";
        } else if (offset < 15) {
            return "[strip] channel_mA";
        } else if (offset < 17) {
            return "[strip] idle_mA";
        } else if (offset == 17) {
            return "the supply of the [strip]";
        } else if (offset == 18 || offset == 19) {
            return "[controller] holdover_s";
        } else if (offset == 20) {
            return "[controller] when_silent";
        } else if (offset < 22) {
            return "the number of supplies, one for each volts in [supply] and [dimmers]";
        }
        return offset < 24 ? "[supply] ceiling_mA" : "the sum of full_mA of the [dimmers] of one volts";
    }

    private static String dimmer(int index, int field) {
        return (field == 0 ? "volts" : "full_mA") + " of the light on channel " + index + " in [dimmers]";
    }
}
