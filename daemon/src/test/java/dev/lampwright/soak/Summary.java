package dev.lampwright.soak;

/**
 * The result of a soak.
 *
 * @param text for the reader, in lines
 * @param troubles how many were made
 * @param frames of the host that were judged
 * @param framesPerSecond how many the daemon made
 * @param violations how many there were
 */
record Summary(String text, int troubles, long frames, double framesPerSecond, long violations) {}
