package dev.lampwright.page;

import dev.lampwright.broker.BrokerState;
import dev.lampwright.desk.Ask;
import dev.lampwright.desk.Report;
import dev.lampwright.engine.Daemon;
import dev.lampwright.engine.FrameReport;
import dev.lampwright.json.Json;
import dev.lampwright.json.JsonArray;
import dev.lampwright.json.JsonObject;
import dev.lampwright.link.LinkStatus;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** The messages to the page, as JSON in one line. */
final class Messages {
    private Messages() {}

    /** A refusal. */
    static String refusal(HttpCall.Refusal refusal) {
        JsonObject values = new JsonObject();
        refusal.values().forEach(values::put);
        return new JsonObject()
                .put("done", false)
                .put("why", refusal.why())
                .putIfAny("code", refusal.code())
                .putIfAny("values", values)
                .text();
    }

    /** Something was done. */
    static String done() {
        return new JsonObject().put("done", true).text();
    }

    /**
     * That a token opens another page than the one that it was entered on.
     *
     * @param path of that page
     */
    static String entered(String path) {
        return new JsonObject().put("done", true).put("page", path).text();
    }

    /**
     * What can be done on other pages of the same rig.
     *
     * @param bench whether looks can be made
     * @param fitting whether lights can be fitted
     */
    record Rooms(boolean bench, boolean fitting) {}

    /**
     * What somebody may do who is in.
     *
     * @param token whether it took a token
     * @param mayAsk whether asking is allowed too
     * @param mayEdit whether looks may be saved too
     * @param all whether all pages of the server are open, and not only this one
     * @param rooms what else can be done there
     */
    static String rights(boolean token, boolean mayAsk, boolean mayEdit, boolean all, Rooms rooms) {
        return new JsonObject()
                .put("token", token)
                .put("may_ask", mayAsk)
                .put("may_edit", mayEdit)
                .put("all", all)
                .put("bench", rooms.bench())
                .put("fit", rooms.fitting())
                .text();
    }

    /**
     * The daemon's status. Unknown signals are null.
     *
     * @param daemon the daemon
     * @param report its own report
     */
    static String report(Daemon daemon, Report report) {
        LinkStatus link = daemon.link();
        BrokerState broker = daemon.broker();
        JsonObject message = report.withExactSignals()
                .put("link_trouble", link.trouble())
                .put("fault_lasts", daemon.frames().snapshot().faultLasts())
                .put("faults_last", faultsLast(daemon))
                .put("frames_shown", link.framesShown())
                .put("broker_trouble", broker.phase() == BrokerState.Phase.CONNECTED ? "" : broker.reason());
        report.asked().leftSeconds(Ask.LOOK).ifPresent(seconds -> message.put("look_left_s", Math.ceil(seconds)));
        return message.text();
    }

    /** The names of the printers that still have faults. */
    private static JsonArray faultsLast(Daemon daemon) {
        JsonArray names = new JsonArray();
        daemon.frames().snapshot().printers().stream()
                .filter(FrameReport.Printer::faultLasts)
                .forEach(printer -> names.add(printer.name()));
        return names;
    }

    /**
     * The strip's highest current in each of a stretch of seconds, in mA.
     *
     * @param run distinguishes seconds of this run from those of another
     * @param stretch the seconds
     */
    static String current(String run, CurrentHistory.Stretch stretch) {
        JsonArray values = new JsonArray();
        stretch.milliamps().forEach(values::add);
        return new JsonObject()
                .put("run", run)
                .put("from_s", stretch.from())
                .put("strip_mA", values)
                .text();
    }

    /** Recent problems, the newest first. */
    static String troubles(List<TroubleLog.Entry> entries) {
        JsonArray all = new JsonArray();
        for (TroubleLog.Entry entry : entries) {
            JsonObject told = new JsonObject()
                    .put("at_ms", entry.at().toEpochMilli())
                    .put("times", entry.times())
                    .put("level", entry.level())
                    .put("text", entry.text());
            entry.over().ifPresent(over -> told.put("over_ms", over.toEpochMilli()));
            all.add(told);
        }
        return all.text();
    }

    /**
     * Reads the token that a viewer enters.
     *
     * @param json an object with the key {@code token}
     * @return the token; empty if there is none
     */
    static String token(byte[] json) {
        return Json.read(new String(json, StandardCharsets.UTF_8))
                .map(node -> node.path("token").asText(""))
                .orElse("");
    }
}
