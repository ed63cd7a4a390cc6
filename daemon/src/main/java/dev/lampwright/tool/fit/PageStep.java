package dev.lampwright.tool.fit;

import java.io.IOException;

/** Asks whether the live page is wanted. */
final class PageStep implements Step {
    @Override
    public String name() {
        return "page";
    }

    @Override
    public String title() {
        return "the live page";
    }

    @Override
    public Findings run(Findings before, FittingBench bench) throws LeaveException, IOException {
        bench.darken();
        boolean wanted = bench.ask(Question.yesOrNo(
                        "Do you want the live page, which shows the lights in a browser and lets you control them?",
                        "It is for browsers on this computer alone. For others, add an address and a token_file to [page]"
                                + " afterwards: anyone who can reach the page could control the lights.")
                .coded("page_wanted"));
        return before.withPage(wanted);
    }
}
