package dev.lampwright.tool.fit;

import java.io.IOException;

/** Asks whether the live page is wanted. */
final class PageStep implements Step {
    private final NewPage page;

    PageStep(NewPage page) {
        this.page = page;
    }

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
        return before.withPage(bench.ask(page.forOthers() ? keeping() : opening()));
    }

    private static Question<Boolean> opening() {
        return Question.yesOrNo(
                        "Do you want the live page, which shows the lights in a browser and lets you control them?",
                        "It is for browsers on this computer alone. For others, add an address and a token_file to [page]"
                                + " afterwards: anyone who can reach the page could control the lights.")
                .coded("page_wanted");
    }

    /** For somebody who fits from another computer, and would lose the page. */
    private static Question<Boolean> keeping() {
        return Question.yesOrNo(
                        "Do you want the live page on this device, to see and control the lights?",
                        "This browser stays logged in, and may change looks and fit again. Other devices in your network need the"
                                + " page's token: sudo lampwright page prints it as a code. Without the live page, this device"
                                + " is shut out once the file is written.")
                .coded("page_kept");
    }
}
