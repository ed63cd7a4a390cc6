package dev.lampwright.config;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.dataformat.toml.TomlFactory;
import com.fasterxml.jackson.dataformat.toml.TomlMapper;
import com.fasterxml.jackson.dataformat.toml.TomlReadFeature;
import java.time.DateTimeException;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The TOML parser: from text to maps, lists, texts, numbers, booleans and dates of the Java library. */
final class Toml {
    /**
     * So many tables and arrays may stand in each other, the outermost table among them. No configuration needs a fifth of it, and the
     * parser, which calls itself for each, gets along with the service's small stacks.
     */
    static final int DEEPEST = 64;

    private static final TomlMapper MAPPER = TomlMapper.builder(factory())
            .enable(TomlReadFeature.PARSE_JAVA_TIME)
            .build();
    private static final TypeReference<Map<String, Object>> TABLE = new TypeReference<>() {};

    private Toml() {}

    private static TomlFactory factory() {
        StreamReadConstraints limits =
                StreamReadConstraints.builder().maxNestingDepth(DEEPEST).build();
        return TomlFactory.builder().streamReadConstraints(limits).build();
    }

    /**
     * Parses TOML 1.0.
     *
     * @param text the text
     * @param file name of the file, for the complaint
     * @return the values of the outermost table, in the order of the text
     * @throws ConfigException if the text is no TOML, or nests deeper than {@link #DEEPEST}
     */
    static Map<String, Object> parse(String text, String file) throws ConfigException {
        try {
            return MAPPER.readValue(text, TABLE);
        } catch (JsonProcessingException e) {
            throw new ConfigException(List.of(mistake(e, text, file)));
        } catch (DateTimeException e) {
            throw new ConfigException(List.of(new Mistake(
                    file, 0, "", "has a date or a time that is none: " + e.getMessage(), "put text in \"quotes\"")));
        }
    }

    private static Mistake mistake(JsonProcessingException e, String text, String file) {
        String complaint = e.getOriginalMessage();
        if (complaint.startsWith("Document nesting depth")) {
            return tooDeep(LineIndex.of(text).tooDeepLine(), file);
        }
        Optional<LineIndex.Repeat> repeat =
                complaint.startsWith("Duplicate key") ? LineIndex.of(text).repeat() : Optional.empty();
        return repeat.map(twice -> given(twice, file)).orElseGet(() -> syntax(e, file));
    }

    private static Mistake tooDeep(int line, String file) {
        String what = "arrays, tables and dotted keys stand more than " + DEEPEST + " deep in each other";
        return new Mistake(file, line, "", what, "take brackets, braces or parts of the key away");
    }

    private static Mistake given(LineIndex.Repeat twice, String file) {
        String what = "is given on line " + twice.firstLine() + " already";
        return new Mistake(file, twice.line(), Wording.key(twice.path()), what, "keep one of the two");
    }

    private static Mistake syntax(JsonProcessingException e, String file) {
        SyntaxHint hint = SyntaxHint.about(e.getOriginalMessage());
        JsonLocation location = e.getLocation();
        return location == null
                ? new Mistake(file, 0, "", hint.what(), hint.whatWouldBeRight())
                : new Mistake(
                        file,
                        location.getLineNr(),
                        "",
                        "column " + location.getColumnNr() + ": " + hint.what(),
                        hint.whatWouldBeRight());
    }
}
