/**
 * What has happened: jobs, faults and who acknowledged them, states over time, and curves of the last hours. {@code Logbook} is the model, a
 * pure function of what it is shown and of the clock that is handed in; {@code HistoryKeeper} shows it the daemon once a second, on a
 * thread of its own, and keeps it in a file. Knows nothing of lights, configuration or broker.
 */
package dev.lampwright.history;
