package dev.lampwright.tool.plan;

import dev.lampwright.phrase.Phrase;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/**
 * The electrical plan of a rig.
 *
 * @param rig what is planned for
 * @param demands full white, the ceiling, and each look
 * @param runs the wires: first those to the strip, the nearest point first, then those to the plain lights
 * @param cases the strip at several loads: full white, the ceiling spread evenly, the ceiling where it costs most, the heaviest look
 * @param ceilings which ceiling the weakest part behind each supply needs
 * @param verdicts the worst first; the first one is based on configured values, not on assumptions
 */
public record Plan(
        PlannedLights rig,
        List<Demand> demands,
        List<WireRun> runs,
        List<StripCase> cases,
        List<CeilingFinder.Needed> ceilings,
        List<Verdict> verdicts) {
    private static final int CEILING = 1;
    private static final int JUDGED = 2;

    /** Keeps copies of the lists. */
    public Plan {
        demands = List.copyOf(demands);
        runs = List.copyOf(runs);
        cases = List.copyOf(cases);
        ceilings = List.copyOf(ceilings);
        verdicts = List.copyOf(verdicts);
    }

    /**
     * Calculates a plan.
     *
     * @param rig what is fitted
     * @param looks what may be shown on it
     * @return the plan
     */
    public static Plan of(PlannedLights rig, List<LookDemand> looks) {
        StripModel model = new StripModel(rig);
        List<CurrentPath> connectors = CurrentPath.connectors(rig, model);
        List<LookMeter> meters =
                looks.stream().map(look -> LookMeter.of(look, rig, connectors)).toList();
        List<StripCase> cases = cases(model, meters);
        List<WireRun> runs = new WireRuns(rig, model).all();
        List<Verdict> verdicts = new ArrayList<>(new SupplyJudge(rig).verdicts());
        for (int i = 0; i < runs.size(); i++) {
            boolean toStrip = runs.get(i).key().equals(WireRuns.STRIP_KEY);
            verdicts.addAll(new RunJudge(rig, runs.get(i), i).verdicts(!toStrip));
        }
        verdicts.addAll(new StripJudge(rig, model, cases.get(JUDGED)).verdicts());
        verdicts.addAll(new CopperJudge(rig, model).verdicts());
        verdicts.addAll(new SignalJudge(rig, FrameRate.of(rig)).verdicts());
        List<CeilingFinder.Needed> ceilings = new CeilingFinder(rig).all();
        return new Plan(rig, demands(rig, connectors, runs, meters), runs, cases, ceilings, Verdict.sorted(verdicts));
    }

    /**
     * The verdicts in short, as the fitting and the live page show them.
     *
     * @return one line each, in their order, starting with the level
     */
    public List<String> lines() {
        return verdicts.stream().map(Verdict::line).toList();
    }

    /**
     * The same with codes.
     *
     * @return a phrase for each line
     */
    public List<Phrase> phrases() {
        return verdicts.stream().map(Verdict::phrase).toList();
    }

    /**
     * The demand at the ceiling.
     *
     * @return one of {@link #demands}
     */
    public Demand ceiling() {
        return demands.get(CEILING);
    }

    /**
     * The case that the strip is judged by: the ceiling where it costs most.
     *
     * @return one of {@link #cases}
     */
    public StripCase judged() {
        return cases.get(JUDGED);
    }

    /**
     * Whether anything exceeds its rating.
     *
     * @return true if a verdict says so
     */
    public boolean over() {
        return verdicts.stream().anyMatch(verdict -> verdict.level() == Verdict.Severity.OVER);
    }

    private static List<Demand> demands(
            PlannedLights rig, List<CurrentPath> connectors, List<WireRun> runs, List<LookMeter> meters) {
        Loads loads = new Loads(rig);
        double[] pixels = new StripModel(rig).white();
        double[] dimmers = IntStream.range(0, rig.setup().dimmers().size())
                .mapToDouble(loads::dimmer)
                .toArray();
        List<Demand> demands = new ArrayList<>();
        demands.add(steady(
                "full white",
                rig,
                supply -> loads.full(supply) + loads.others(supply),
                connectors.stream().map(place -> place.amps(pixels, dimmers)).toList()));
        demands.add(steady(
                "ceiling",
                rig,
                supply -> loads.held(supply) + loads.others(supply),
                runs.stream().map(WireRun::amps).toList()));
        meters.forEach(meter -> demands.add(meter.demand()));
        return demands;
    }

    private static Demand steady(String name, PlannedLights rig, IntToDoubleFunction supply, List<Double> connectors) {
        return new Demand(
                name,
                IntStream.range(0, rig.wiring().supplies().size())
                        .mapToObj(i -> Demand.Draw.steady(supply.applyAsDouble(i)))
                        .toList(),
                connectors.stream().map(Demand.Draw::steady).toList());
    }

    private static List<StripCase> cases(StripModel model, List<LookMeter> meters) {
        ResistorLadder ladder = model.wired();
        List<StripCase> cases = new ArrayList<>();
        cases.add(new StripCase("full white, no ceiling", model.white(), ladder));
        cases.add(new StripCase("ceiling, all pixels alike", model.even(), ladder));
        cases.add(new StripCase("ceiling, light where it costs most", model.worst(ladder), ladder));
        meters.stream()
                .map(meter -> new StripCase("look " + meter.name(), meter.heaviest(), ladder))
                .min((a, b) -> Double.compare(a.lowest(), b.lowest()))
                .ifPresent(cases::add);
        return cases;
    }
}
