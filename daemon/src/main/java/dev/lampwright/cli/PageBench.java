package dev.lampwright.cli;

import dev.lampwright.engine.Daemon;
import dev.lampwright.json.Json;
import dev.lampwright.page.Bench;
import dev.lampwright.tool.bench.BenchFiles;
import dev.lampwright.tool.bench.BenchReply;
import dev.lampwright.tool.bench.BenchWorker;
import dev.lampwright.tool.bench.LookBench;
import java.util.Optional;
import java.util.function.Function;

/** The bench, for the page. */
final class PageBench implements Bench {
    private final LookBench bench;

    private PageBench(LookBench bench) {
        this.bench = bench;
    }

    /**
     * Makes the benches of a process, which share what draws for them.
     *
     * @param files where the looks of a rig are; the only one's name is empty
     * @param worker draws for all of them
     */
    static Maker of(Function<String, BenchFiles> files, BenchWorker worker) {
        return (String rig, Daemon daemon) ->
                Optional.of(new PageBench(new LookBench(files.apply(rig), daemon, worker)));
    }

    @Override
    public Reply answer(Request request) {
        BenchReply reply = bench.answer(new LookBench.Asked(
                request.method(), request.path(), request.query(), request.body(), request.tab(), request.mayEdit()));
        return new Reply(reply.status(), Json.of(reply.body()));
    }
}
