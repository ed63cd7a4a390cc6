package dev.lampwright.cli;

import dev.lampwright.desk.Report;
import dev.lampwright.engine.Daemon;
import dev.lampwright.guard.StripCurrent;
import dev.lampwright.link.LinkStatus;
import dev.lampwright.protocol.LastReset;
import java.util.List;
import java.util.stream.Collectors;

/** The daemon's status, in a line for {@code systemctl status}. */
final class StatusWords {
    private StatusWords() {}

    /**
     * The status of a daemon.
     *
     * @param daemon a running daemon
     * @return one line
     */
    static String of(Daemon daemon) {
        LinkStatus link = daemon.link();
        String trouble = link.trouble().isEmpty() ? started(link) : link.trouble();
        return of(daemon.report(), trouble, daemon.broker().reason());
    }

    /**
     * The line.
     *
     * @param report the daemon's status
     * @param linkTrouble what is wrong with the link; empty if nothing is
     * @param brokerTrouble why the broker is not connected; empty if it is
     */
    static String of(Report report, String linkTrouble, String brokerTrouble) {
        StripCurrent current = report.light().current();
        List<String> asked = report.asked().words();
        String words = asked.isEmpty() ? "" : "; asked for: " + String.join(", ", asked);
        return states(report) + words + "; strip "
                + current.milliamps()
                + " of " + current.ceilingMilliamps() + " mA; controller "
                + report.lines().controller() + because(linkTrouble) + "; broker "
                + report.lines().broker() + because(brokerTrouble);
    }

    private static String states(Report report) {
        return report.printers().size() == 1
                ? report.printer().state().word() + ", look " + report.light().look()
                : report.printers().stream()
                        .map(printer -> printer.name() + " " + printer.state().word())
                        .collect(Collectors.joining(", "));
    }

    /** Why the controller last started, if because of a fault; otherwise empty. */
    private static String started(LinkStatus link) {
        return link.lastReset()
                .filter(LastReset::isTrouble)
                .map(cause -> "it started " + cause.words())
                .orElse("");
    }

    private static String because(String trouble) {
        return trouble.isEmpty() ? "" : " (" + trouble + ")";
    }
}
