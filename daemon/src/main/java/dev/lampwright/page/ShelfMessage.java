package dev.lampwright.page;

import dev.lampwright.json.JsonArray;
import dev.lampwright.json.JsonObject;
import dev.lampwright.shelf.PrinterRow;
import dev.lampwright.shelf.RigStatus;
import dev.lampwright.shelf.ShelfRow;
import dev.lampwright.shelf.Standing;
import java.util.List;
import java.util.Optional;

/** The shelf as sent to its page, built rig by rig in their order. For one thread. */
final class ShelfMessage {
    private static final double MINUTE = 60;
    private static final double SECONDS_STEP = 5;
    private static final double SHARES = 100;

    private final JsonArray rigs = new JsonArray();

    /** Adds a rig of this process, whose page is below this one. */
    void addHere(int id, ShelfRow row, boolean flashes) {
        JsonObject rig =
                rig(id, row.status().rig(), row).put("page", row.status().rig() + "/");
        rigs.add(flashes ? rig.put("flashes", true) : rig);
    }

    /** Adds a rig of another daemon, which has its own page if its status says so. */
    void addElsewhere(int id, ShelfRow row) {
        RigStatus status = row.status();
        String name = status.rig().isEmpty() ? status.prefix() : status.rig();
        rigs.add(rig(id, name, row)
                .put("host", status.host().isEmpty() ? status.prefix() : status.host())
                .putIfAny("page", status.page()));
    }

    /** Adds a rig of this process that does not run, because its file is not valid. */
    void addRejected(int id, String name, String why) {
        rigs.add(new JsonObject()
                .put("id", id)
                .put("name", name)
                .put("standing", "rejected")
                .put("why", why));
    }

    private static JsonObject rig(int id, String name, ShelfRow row) {
        JsonObject rig = new JsonObject().put("id", id);
        doing(rig, new PrinterRow(name, row.standing(), row.status().doing()));
        rig.putIfAny("look", row.status().light().look());
        List<PrinterRow> printers = row.printers();
        if (!printers.isEmpty()) {
            JsonArray each = new JsonArray();
            printers.forEach(printer -> each.add(doing(new JsonObject(), printer)));
            rig.put("printers", each);
        }
        if (row.standing() == Standing.LOST) {
            rig.putRounded("heard_s", stepped(row.heardSeconds()));
        } else if (row.standing().isThere() && !row.status().light().isLit()) {
            rig.put("unlit", true);
        }
        return row.twice() ? rig.put("twice", true) : rig;
    }

    private static JsonObject doing(JsonObject whose, PrinterRow row) {
        RigStatus.Doing doing = row.doing();
        return whose.put("name", row.name())
                .put("standing", row.standing().word())
                .putIfAny("state", doing.state())
                .putIfAny("alarm", doing.alarm())
                .putIfAny("fault", doing.faultText())
                .putIfAny("silence", doing.silence())
                .putRounded("share", Math.rint(doing.progress() * SHARES) / SHARES)
                .putRounded("left_s", stepped(doing.leftSeconds()));
    }

    /** As precise as it is shown, so that a change is sent only if it can be seen. */
    private static double stepped(double seconds) {
        double step = seconds < MINUTE ? SECONDS_STEP : MINUTE;
        return Math.rint(seconds / step) * step;
    }

    /**
     * The message.
     *
     * @param version of this daemon
     * @param broker the broker of other daemons' rigs; empty if there are none
     * @return JSON in one line
     */
    String text(String version, Optional<String> broker) {
        JsonObject message = new JsonObject().put("version", version);
        broker.ifPresent(url -> message.put("broker", url));
        return message.put("rigs", rigs).text();
    }
}
