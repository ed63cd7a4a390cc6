package dev.lampwright.shelf;

import dev.lampwright.json.JsonArray;
import dev.lampwright.json.JsonObject;
import java.net.URI;
import java.util.List;

/** A shelf as one JSON document, for programs. */
public final class ShelfJson {
    private ShelfJson() {}

    /**
     * The document.
     *
     * @param broker the broker that was listened to
     * @param searched the topic filters that were listened to
     * @param rows the rigs, in their order
     * @return JSON in one line; unknown values are left out
     */
    public static String of(URI broker, List<String> searched, List<ShelfRow> rows) {
        JsonArray filters = new JsonArray();
        searched.forEach(filters::add);
        JsonArray rigs = new JsonArray();
        rows.forEach(row -> rigs.add(rig(row)));
        return new JsonObject()
                .put("broker", broker.toString())
                .put("searched", filters)
                .put("rigs", rigs)
                .text();
    }

    /**
     * One rig.
     *
     * @param row the rig
     * @return its keys in the order of daemon/doc/shelf.md
     */
    public static JsonObject rig(ShelfRow row) {
        RigStatus status = row.status();
        JsonObject rig = new JsonObject()
                .put("prefix", status.prefix())
                .putIfAny("rig", status.rig())
                .putIfAny("host", status.host())
                .put("standing", row.standing().word())
                .put("needs_person", row.standing().needsPerson())
                .put("twice", row.twice())
                .putRounded("heard_s", row.heardSeconds())
                .putIfAny("why", status.why());
        doing(rig, status.doing());
        List<PrinterRow> printers = row.printers();
        if (!printers.isEmpty()) {
            JsonArray each = new JsonArray();
            printers.forEach(printer -> each.add(printer(printer)));
            rig.put("printers", each);
        }
        rig.putIfAny("look", status.light().look())
                .putIfAny("link", status.light().link())
                .putIfAny("page", status.page())
                .putIfAny("strip_rgb", status.strip());
        status.at().ifPresent(at -> rig.put("at", at.toString()));
        return rig;
    }

    private static JsonObject printer(PrinterRow row) {
        JsonObject printer = new JsonObject()
                .put("name", row.name())
                .put("standing", row.standing().word())
                .put("needs_person", row.standing().needsPerson());
        return doing(printer, row.doing());
    }

    private static JsonObject doing(JsonObject whose, RigStatus.Doing doing) {
        return whose.putIfAny("state", doing.state())
                .putIfAny("alarm", doing.alarm())
                .putIfAny("fault_text", doing.faultText())
                .putIfAny("silence", doing.silence())
                .putRounded("progress", doing.progress())
                .putRounded("left_s", doing.leftSeconds());
    }
}
