package dev.lampwright.tool.fit;

import java.io.IOException;

/** One step of the fitting. */
interface Step {
    /** Its name in the journal. */
    String name();

    /** Its title, in a few words. */
    String title();

    /**
     * Runs the step. Given the same answers again, it does the same.
     *
     * @param before what earlier steps have found
     * @param bench to show, say and ask
     * @return the same, plus what this step has found
     * @throws LeaveException if the user leaves a question
     * @throws IOException if a file cannot be written
     */
    Findings run(Findings before, FittingBench bench) throws LeaveException, IOException;
}
