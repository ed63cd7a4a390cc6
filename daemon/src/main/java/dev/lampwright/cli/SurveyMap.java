package dev.lampwright.cli;

import dev.lampwright.printer.PrinterState;
import dev.lampwright.tool.survey.Found;
import dev.lampwright.tool.survey.FoundCondition;
import dev.lampwright.tool.survey.FoundOwn;
import dev.lampwright.tool.survey.Proposal;
import dev.lampwright.tool.survey.Remarks;
import dev.lampwright.tool.survey.Said;
import dev.lampwright.tool.survey.StatePlace;
import java.util.LinkedHashMap;
import java.util.Locale;
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
        map.put("own", proposal.own().found().stream().map(SurveyMap::of).toList());
        map.put("more_own", proposal.own().more());
        map.put(
                "state_places",
                proposal.statePlaces().stream().map(SurveyMap::of).toList());
        map.put("conditions", proposal.conditions().stream().map(SurveyMap::of).toList());
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
        map.put("looks_like", row.looksLike());
        return map;
    }

    private static Map<String, Object> of(StatePlace place) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("topic", place.source().topicFilter());
        map.put("place", place.source().place());
        map.put("bound", place.bound());
        map.put("said", place.said().stream().map(SurveyMap::of).toList());
        return map;
    }

    private static Map<String, Object> of(Said said) {
        Map<String, Object> seconds = new LinkedHashMap<>();
        said.seconds().forEach((doing, duration) -> seconds.put(doing.name().toLowerCase(Locale.ROOT), duration));
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("word", said.word());
        map.put("state", said.state().map(PrinterState::word).orElse(""));
        map.put("shown_by_readings", said.certain());
        map.put("seconds", seconds);
        return map;
    }

    private static Map<String, Object> of(FoundCondition condition) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("state", condition.state().word());
        map.put("topic", condition.source().topicFilter());
        map.put("place", condition.source().place());
        map.put("is", condition.is());
        map.put("not", condition.not());
        map.put("reasons", condition.reasons());
        return map;
    }

    private static Map<String, Object> of(FoundOwn own) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("name", own.key());
        map.put("topic", own.source().topicFilter());
        map.put("place", own.source().place());
        map.put("unit", own.unit());
        map.put("scale", own.scale());
        map.put("range", own.range());
        map.put("certain", own.certain());
        map.put("reasons", own.reasons());
        return map;
    }

    private static Map<String, Object> of(Found found) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("role", found.role().word());
        map.put("topic", found.source().topicFilter());
        map.put("place", found.source().place());
        map.put("unit", found.unit().word());
        map.put("scale", found.scale());
        map.put("words", found.words());
        map.put("doubts", found.doubts());
        map.put("score", found.score());
        map.put("reasons", found.reasons());
        return map;
    }
}
