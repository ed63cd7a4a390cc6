package dev.lampwright.tool.plan;

import dev.lampwright.wiring.Wiring;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** The plan as values by name, for a program to read. Numbers carry their unit in the name. */
public final class PlanValues {
    private static final double MICRO = 1e6;

    private PlanValues() {}

    /**
     * The plan by name.
     *
     * @param plan the plan
     * @return maps, lists, texts, numbers and booleans
     */
    public static Map<String, Object> of(Plan plan) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("file", plan.rig().name());
        map.put("over", plan.over());
        map.put("verdicts", plan.verdicts().stream().map(PlanValues::verdict).toList());
        map.put("demand", demand(plan));
        map.put("connectors", connectors(plan));
        map.put("wires", plan.runs().stream().map(run -> wire(run, plan)).toList());
        map.put(
                "ceilings",
                plan.ceilings().stream().map(each -> ceiling(each, plan)).toList());
        map.put("strip", plan.cases().stream().map(PlanValues::strip).toList());
        map.put("defaults", plan.rig().wiring().defaults());
        map.put("cautions", Cautions.ALL);
        return map;
    }

    private static Map<String, Object> verdict(Verdict verdict) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("level", verdict.level().name().toLowerCase(Locale.ROOT));
        map.put("subject", verdict.subject());
        map.put("what", verdict.what());
        map.put("remedy", verdict.remedy());
        map.put("value", rounded(verdict.figure().value()));
        map.put(
                verdict.figure().least() ? "least" : "most",
                rounded(verdict.figure().limit()));
        map.put("unit", verdict.figure().unit());
        map.put("source", verdict.figure().source());
        map.put("assumed", verdict.assumed());
        return map;
    }

    private static List<Map<String, Object>> demand(Plan plan) {
        List<Map<String, Object>> rows = new ArrayList<>();
        for (Demand demand : plan.demands()) {
            for (int i = 0; i < demand.draws().size(); i++) {
                Wiring.Supply supply = plan.rig().wiring().supplies().get(i);
                Demand.Draw draw = demand.draws().get(i);
                Map<String, Object> row = new LinkedHashMap<>();
                row.put("light", demand.name());
                row.put("supply", supply.name());
                row.put("volts", supply.volts());
                putDraw(row, draw, supply.volts());
                row.put("dimmed", draw.dimmed());
                rows.add(row);
            }
        }
        return rows;
    }

    private static List<Map<String, Object>> connectors(Plan plan) {
        List<Map<String, Object>> rows = new ArrayList<>();
        for (Demand demand : plan.demands()) {
            for (int i = 0; i < plan.runs().size(); i++) {
                WireRun run = plan.runs().get(i);
                Map<String, Object> row = new LinkedHashMap<>();
                row.put("light", demand.name());
                row.put("to", run.name());
                putDraw(
                        row,
                        demand.connectors().get(i),
                        plan.rig().wiring().supplies().get(run.supply()).volts());
                rows.add(row);
            }
        }
        return rows;
    }

    private static void putDraw(Map<String, Object> row, Demand.Draw draw, double volts) {
        row.put("mean_A", rounded(draw.meanAmps()));
        row.put("peak_A", rounded(draw.peakAmps()));
        row.put("mean_W", rounded(draw.meanAmps() * volts));
        row.put("peak_W", rounded(draw.peakAmps() * volts));
    }

    private static Map<String, Object> wire(WireRun run, Plan plan) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("to", run.name());
        map.put("supply", plan.rig().wiring().supplies().get(run.supply()).name());
        map.put("wire", run.feed().wire().label());
        map.put("length_m", run.metres());
        map.put("load_A", rounded(run.amps()));
        map.put("rms_A", rounded(run.rmsAmps()));
        map.put("pulse_A", rounded(run.pulseAmps()));
        map.put("short_A", rounded(run.shortAmps()));
        map.put("may_carry_A", rounded(run.wire().amps()));
        map.put("may_carry_by", run.wire().source());
        map.put("weakest", run.weakest().name());
        map.put("weakest_A", rounded(run.weakest().rating().amps()));
        map.put("lost_V", rounded(run.dropVolts()));
        run.feed().connectorAmps().ifPresent(amps -> map.put("connector_A", amps));
        run.feed().fuseAmps().ifPresent(amps -> map.put("fuse_A", amps));
        run.rightFuse().ifPresent(amps -> map.put("right_fuse_A", amps));
        return map;
    }

    private static Map<String, Object> ceiling(CeilingFinder.Needed needed, Plan plan) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("supply", plan.rig().wiring().supplies().get(needed.supply()).name());
        map.put("set_mA", plan.rig().setup().ceilingsMilliamps().get(needed.supply()));
        map.put("weakest", needed.part());
        map.put("needed_mA", needed.milliamps());
        return map;
    }

    private static Map<String, Object> strip(StripCase each) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("load", each.name());
        map.put("total_A", rounded(each.totalAmps()));
        map.put("lowest_V", rounded(each.lowest()));
        map.put("lowest_at", each.lowestAt());
        map.put(
                "pixels_V",
                Arrays.stream(each.volts()).mapToObj(PlanValues::rounded).toList());
        return map;
    }

    private static double rounded(double number) {
        return Math.round(number * MICRO) / MICRO;
    }
}
