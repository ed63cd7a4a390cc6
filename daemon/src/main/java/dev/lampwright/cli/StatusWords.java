package dev.lampwright.cli;

import dev.lampwright.desk.Report;
import dev.lampwright.engine.Daemon;
import dev.lampwright.guard.StripCurrent;

/** How the daemon does, in a line for {@code systemctl status}. */
final class StatusWords {
    private StatusWords() {}

    /**
     * How a daemon does.
     *
     * @param daemon one that runs
     * @return one line
     */
    static String of(Daemon daemon) {
        return of(daemon.report(), daemon.link().trouble(), daemon.broker().reason());
    }

    /**
     * The line.
     *
     * @param report how the daemon does
     * @param linkTrouble what is wrong with the link, empty if nothing is
     * @param brokerTrouble why the broker is not there, empty if it is
     */
    static String of(Report report, String linkTrouble, String brokerTrouble) {
        StripCurrent current = report.light().current();
        return report.printer().state().word() + ", look " + report.light().look() + "; strip " + current.milliamps()
                + " of " + current.ceilingMilliamps() + " mA; controller "
                + report.lines().controller() + because(linkTrouble) + "; broker "
                + report.lines().broker() + because(brokerTrouble);
    }

    private static String because(String trouble) {
        return trouble.isEmpty() ? "" : " (" + trouble + ")";
    }
}
