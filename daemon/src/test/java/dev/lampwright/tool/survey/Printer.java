package dev.lampwright.tool.survey;

import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterState;
import java.util.List;
import java.util.Set;
import java.util.function.Function;

/**
 * An invented printer.
 *
 * @param name what it is called
 * @param shape how it tells what
 * @param tells the quantities that it tells
 * @param states the states that it tells in words; none if it tells none
 * @param course how its job goes
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
