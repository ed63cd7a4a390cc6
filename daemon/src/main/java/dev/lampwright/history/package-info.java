/**
 * What has happened: jobs, faults and who acknowledged them, states over time, and curves of the last hours. {@code Logbook} is the model,
 * a pure function of its sightings and of the clock that is passed in; {@code HistoryKeeper} records the daemon in it once a second and keeps it
 * in a file, and nothing else waits for that. Knows nothing about lights, configuration or broker.
 */
package dev.lampwright.history;
