package dev.lampwright.tool.survey;

import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterState;
import java.util.List;
import java.util.Set;
import java.util.function.Function;

/**
 * An invented printer.
 *
 * @param name its name
 * @param shape the shape of its messages
 * @param tells the quantities that it reports
 * @param states the states that it reports in words; empty if none
 * @param course the course of its job
 * @param speaker what it publishes at a moment of its job
 */
record Printer(
        String name,
        String shape,
        Set<Quantity> tells,
        Set<PrinterState> states,
        Job.Course course,
        Function<Job.Moment, List<Message>> speaker) {
    /** One whose job is the usual one. */
    Printer(
            String name,
            String shape,
            Set<Quantity> tells,
            Set<PrinterState> states,
            Function<Job.Moment, List<Message>> speaker) {
        this(name, shape, tells, states, Job.USUAL, speaker);
    }

    /** Its whole job, a moment for each second. */
    List<Job.Moment> moments() {
        return Job.moments(course);
    }

    /**
     * A message.
     *
     * @param topic its topic
     * @param payload its payload
     */
    record Message(String topic, String payload) {}
}
