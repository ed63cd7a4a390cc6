package dev.lampwright.cli;

import dev.lampwright.tool.survey.Found;
import dev.lampwright.tool.survey.Proposal;
import dev.lampwright.tool.survey.Remarks;
import dev.lampwright.tool.survey.Role;
import java.util.LinkedHashMap;
import java.util.Map;

/** A survey as values for {@link Json}. */
final class SurveyMap {
    private SurveyMap() {}

    /** What was heard and what was found. */
    static Map<String, Object> of(Proposal proposal) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("messages", proposal.messages());
        map.put("left_out", proposal.leftOut());
        map.put("values", proposal.rows().stream().map(SurveyMap::of).toList());
        map.put("found", proposal.found().stream().map(SurveyMap::of).toList());
        map.put("lampwrights", proposal.company().lampwrights());
        map.put("missing", Remarks.missing(proposal));
        map.put("company", Remarks.company(proposal));
        return map;
    }

    private static Map<String, Object> of(Proposal.Row row) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("topic", row.topic());
        map.put("place", row.place());
        map.put("count", row.count());
        map.put("per_second", row.perSecond());
        map.put("range", row.range());
        map.put("last", row.last());
        map.put("looks_like", row.found().map(Found::role).map(Role::word).orElse(""));
        return map;
    }

    private static Map<String, Object> of(Found found) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("role", found.role().word());
        map.put("topic", found.source().topicFilter());
        map.put("place", found.source().place());
        map.put("unit", found.unit().word());
        map.put("words", found.words());
        map.put("doubts", found.doubts());
        map.put("score", found.score());
        map.put("reasons", found.reasons());
        return map;
    }
}
