package dev.lampwright.tool.survey;

import dev.lampwright.broker.Broker;
import dev.lampwright.payload.CsvField;
import dev.lampwright.payload.Cut;
import dev.lampwright.payload.Excerpt;
import dev.lampwright.payload.Selection;
import dev.lampwright.payload.Source;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.toml.TomlText;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** A proposal as a configuration: TOML, with a comment on each binding that says why. */
public final class ProposedConfig {
    /** How to bind a state that is reported as a code number, and a fault that is reported by a flag. */
    private static final List<String> STATE_BY_HAND = List.of(
            "[printer.state]",
            "topic = \"shop/alder/job\"",
            "at = \"/code\"",
            "printing = [\"2\"]",
            "fault = [\"7\", \"8\"]",
            "[[printer.condition]]",
            "state = \"fault\"",
            "topic = \"shop/alder/flags\"",
            "at = \"/alarm\"",
            "is = [\"true\"]");

    private static final Pattern HEADER = Pattern.compile("(?m)^((?:# )?\\[\\[?)printer([.\\]])");

    private ProposedConfig() {}

    /**
     * Whether there is enough to write down.
     *
     * @param proposal what was found
     * @return whether there is a state or a reading, and something that only a printer reports
     */
    public static boolean isEnough(Proposal proposal) {
        return PrinterSigns.areIn(proposal.found())
                && proposal.found().stream()
                        .anyMatch(found -> found.role() == Role.STATE
                                || found.role().quantity().isPresent());
    }

    /**
     * A whole file that passes {@code check}, with placeholders for port and strip.
     *
     * @param proposal what was found; must be {@linkplain #isEnough enough}
     * @param broker the broker
     * @return TOML
     */
    public static String whole(Proposal proposal, Broker broker) {
        List<String> lines = new ArrayList<>();
        lines.add("# Written by lampwright survey after " + NumberText.count(proposal.messages(), "message")
                + ". Look through it: the comments say why each value was chosen.");
        lines.add(
                "# Then set the port and the strip below, and try it: lampwright check FILE, lampwright run --config FILE.");
        lines.add("");
        lines.add("[broker]");
        lines.add("url = " + TomlText.quoted(broker.url().toString()));
        broker.caFile().ifPresent(file -> lines.add("ca_file = " + TomlText.quoted(file.toString())));
        broker.ownCertificate().ifPresent(own -> {
            lines.add("certificate_file = "
                    + TomlText.quoted(own.certificateFile().toString()));
            lines.add("key_file = " + TomlText.quoted(own.keyFile().toString()));
        });
        broker.username().ifPresent(name -> lines.add("username = " + TomlText.quoted(name)));
        broker.passwordFile().ifPresent(file -> lines.add("password_file = " + TomlText.quoted(file.toString())));
        lines.add("");
        lines.add(printerSections(proposal));
        lines.add("[controller]");
        lines.add("port = \"/dev/ttyACM0\"                   # a placeholder: 'lampwright ports' lists the ports");
        lines.add("");
        lines.add("[strip]");
        lines.add("pixels = 30                             # a placeholder: how many pixels yours has");
        return String.join("\n", lines) + "\n";
    }

    /**
     * The sections of the printer alone.
     *
     * @param proposal what was found
     * @return TOML: {@code [printer]} and what is below it, as far as something was found
     */
    public static String printerSections(Proposal proposal) {
        List<String> lines = new ArrayList<>();
        Remarks.company(proposal).stream().map(TomlText::comment).forEach(lines::add);
        proposal.found(Role.FAULT_TEXT).ifPresent(found -> {
            lines.add("[printer.fault_text]");
            addPlace(lines, found);
            lines.add("");
        });
        proposal.found(Role.STATE)
                .ifPresentOrElse(found -> addState(lines, found, proposal), () -> addOpenState(lines, proposal));
        addConditions(lines, proposal);
        addReadings(lines, proposal);
        Remarks.missing(proposal).stream().map(TomlText::comment).forEach(lines::add);
        if (proposal.found(Role.STATE).isEmpty() && proposal.conditions().isEmpty()) {
            STATE_BY_HAND.stream().map(TomlText::comment).forEach(lines::add);
        }
        lines.add("");
        proposal.found(Role.CAMERA).ifPresent(found -> addCamera(lines, found));
        return String.join("\n", lines) + "\n";
    }

    private static void addPlace(List<String> lines, Found found) {
        lines.add(why(found));
        keys(found.source()).forEach((key, value) -> lines.add(key + " = " + value));
    }

    private static void addState(List<String> lines, Found found, Proposal proposal) {
        StateWords words = StateWords.of(found.words(), found.meanings());
        lines.add("[printer.state]");
        addPlace(lines, found);
        words.known().forEach((state, patterns) -> lines.add(state.word() + " = " + TomlText.of(patterns)));
        GuessedWords.of(found.words(), words)
                .forEach((state, patterns) ->
                        lines.add(state.word() + " = " + TomlText.of(patterns) + "    # not heard: a guess"));
        Remarks.open(proposal).stream().map(TomlText::comment).forEach(lines::add);
        lines.add("");
    }

    /** The likeliest place, as a comment, with everything that it reported. */
    private static void addOpenState(List<String> lines, Proposal proposal) {
        Optional<StatePlace> likeliest = proposal.statePlaces().stream()
                .filter(place -> place.said().size() > 1)
                .findFirst();
        likeliest.ifPresent(place -> {
            lines.add("# this may be the state, but it is not certain; remove the # from the lines that are right");
            lines.add("# [printer.state]");
            keys(place.source()).forEach((key, value) -> lines.add(TomlText.comment(key + " = " + value)));
            place.said()
                    .forEach(said -> lines.add(TomlText.comment(
                            said.state().map(PrinterState::word).orElse(said.isStandstill() ? "held" : "STATE") + " = "
                                    + TomlText.of(List.of(said.word())) + "    # during this the printer "
                                    + said.meanwhile())));
            lines.add("");
        });
    }

    private static void addConditions(List<String> lines, Proposal proposal) {
        for (FoundCondition condition : proposal.conditions()) {
            lines.add("[[printer.condition]]");
            lines.add(TomlText.comment(condition.state().word() + ": " + String.join("; ", condition.reasons())));
            lines.add("state = " + TomlText.quoted(condition.state().word()));
            keys(condition.source()).forEach((key, value) -> lines.add(key + " = " + value));
            if (!condition.is().isEmpty()) {
                lines.add("is = " + TomlText.of(condition.is()));
            }
            if (!condition.not().isEmpty()) {
                lines.add("not = " + TomlText.of(condition.not()));
            }
            lines.add("");
        }
    }

    private static void addReadings(List<String> lines, Proposal proposal) {
        List<Found> readings = proposal.found().stream()
                .filter(found -> found.role().quantity().isPresent())
                .toList();
        List<FoundOwn> own = proposal.own().found();
        List<FoundOwn> certain = own.stream().filter(FoundOwn::certain).toList();
        if (readings.isEmpty() && certain.isEmpty()) {
            return;
        }
        lines.add("[printer.readings]");
        for (Found found : readings) {
            lines.add(why(found));
            found.doubts().forEach(doubt -> lines.add(TomlText.comment(Remarks.doubt(doubt))));
            lines.add(found.role().word() + " = " + inline(found));
        }
        certain.forEach(one -> {
            lines.add(why(one));
            lines.add(one.key() + " = " + inline(one));
        });
        addDoubtful(
                lines,
                own.stream().filter(one -> !one.certain()).toList(),
                proposal.own().more());
    }

    /** After everything that is active, so that no comment precedes a line that it does not belong to. */
    private static void addDoubtful(List<String> lines, List<FoundOwn> doubtful, int more) {
        if (!doubtful.isEmpty()) {
            lines.add("# these may be worth a name; remove the # from the lines that are right");
        }
        doubtful.forEach(one -> {
            lines.add(why(one));
            lines.add(TomlText.comment(one.key() + " = " + inline(one)));
        });
        if (more > 0) {
            lines.add("# not listed here: " + NumberText.count(more, "more number")
                    + " with a unit; 'lampwright survey' lists all values");
        }
    }

    /**
     * The same for a printer with a name.
     *
     * @param text what {@link #whole} gave
     * @param printer the name
     * @return the text with {@code [printers.NAME]} in place of {@code [printer]}
     */
    public static String named(String text, String printer) {
        String header = Matcher.quoteReplacement("printers." + TomlText.key(printer));
        return HEADER.matcher(text).replaceAll("$1" + header + "$2");
    }

    private static String why(FoundOwn own) {
        return TomlText.comment(own.key() + ": " + String.join("; ", own.reasons()));
    }

    private static void addCamera(List<String> lines, Found found) {
        EventWords words = EventWords.of(found.words());
        lines.add("[printer.events.camera]");
        addPlace(lines, found);
        lines.add("begin = " + TomlText.of(words.begin()));
        if (!words.end().isEmpty()) {
            lines.add("end = " + TomlText.of(words.end()));
        }
        lines.add("");
    }

    private static String why(Found found) {
        return TomlText.comment(found.role().word() + ": " + String.join("; ", found.reasons()));
    }

    private static String inline(Found found) {
        return inline(keys(found.source()), found.unit().word(), found.scale());
    }

    private static String inline(FoundOwn own) {
        Map<String, String> keys = keys(own.source());
        if (!own.range().isEmpty()) {
            keys.put("range", own.range().stream().map(NumberText::number).collect(Collectors.joining(", ", "[", "]")));
        }
        return inline(keys, own.unit(), own.scale());
    }

    private static String inline(Map<String, String> keys, String unit, double scale) {
        if (!unit.isEmpty()) {
            keys.put("unit", TomlText.quoted(unit));
        }
        if (scale != 1) {
            keys.put("scale", NumberText.number(scale));
        }
        return keys.entrySet().stream()
                .map(entry -> entry.getKey() + " = " + entry.getValue())
                .collect(Collectors.joining(", ", "{ ", " }"));
    }

    private static String where(Selection part) {
        return part.where().entrySet().stream()
                .map(entry -> TomlText.quoted(entry.getKey().pointer()) + " = " + TomlText.quoted(entry.getValue()))
                .collect(Collectors.joining(", ", "{ ", " }"));
    }

    /** The keys that say where something is, with their values as TOML. */
    static Map<String, String> keys(Source source) {
        Map<String, String> keys = new LinkedHashMap<>();
        keys.put("topic", TomlText.quoted(source.topicFilter()));
        source.part().ifPresent(part -> {
            if (!part.among().pointer().isEmpty()) {
                keys.put("among", TomlText.quoted(part.among().pointer()));
            }
            keys.put("where", where(part));
        });
        Optional.of(source.path())
                .filter(path -> !path.bare())
                .ifPresent(path -> keys.put("at", TomlText.quoted(path.pointer())));
        for (Cut cut : source.cuts()) {
            if (cut instanceof CsvField field) {
                keys.put("field", Integer.toString(field.number()));
                keys.put("separator", TomlText.quoted(String.valueOf(field.separator())));
            } else if (cut instanceof Excerpt excerpt) {
                keys.put("pattern", TomlText.literal(excerpt.expression()));
            }
        }
        return keys;
    }
}
