package dev.lampwright.payload;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import dev.lampwright.upkeep.Printable;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;

/** The content of one message. Its JSON is parsed once, however many bindings and threads read a value from it. */
public final class Payload {
    /** A longer status message, in bytes, is not read. */
    public static final int MOST_BYTES = 1 << 20;

    /** The maximum number of values in its JSON: about 80 bytes each once parsed, of the service's 32 MiB. */
    public static final int MOST_VALUES = 50_000;

    private static final int MOST_DEPTH = 100;
    private static final int BEGINNING_CHARS = 60;
    private static final ObjectMapper JSON = mapper();

    private final byte[] bytes;
    private JsonNode document;
    private UnreadableException complaint;

    public Payload(byte[] bytes) {
        this.bytes = bytes;
    }

    private static ObjectMapper mapper() {
        StreamReadConstraints limits =
                StreamReadConstraints.builder().maxNestingDepth(MOST_DEPTH).build();
        JsonFactory factory =
                JsonFactory.builder().streamReadConstraints(limits).build();
        return JsonMapper.builder(factory)
                .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
                .build();
    }

    /**
     * The value of a source in this payload.
     *
     * @param source the place, ignoring its topic, and what is extracted there
     * @return empty if there is nothing; extracted text, and a bare payload, is without surrounding white space
     * @throws UnreadableException if this is too long, or must be JSON and is not, or is not suitable for extraction
     */
    public Optional<Value> at(Source source) throws UnreadableException {
        Optional<Value> value = whole(source);
        for (Cut cut : source.cuts()) {
            if (value.isPresent()) {
                value = cut(value.get(), cut);
            }
        }
        return value;
    }

    private Optional<Value> whole(Source source) throws UnreadableException {
        PayloadPath path = source.path();
        if (bytes.length > MOST_BYTES) {
            throw new UnreadableException("the message is longer than 1 MiB");
        }
        if (path.bare()) {
            return Optional.of(new Value.Text(text()));
        }
        JsonNode all = document();
        JsonNode node = path.in(source.part().map(part -> part.in(all)).orElse(all));
        return node.isMissingNode() ? Optional.empty() : Optional.of(JsonTree.value(node));
    }

    private static Optional<Value> cut(Value value, Cut cut) throws UnreadableException {
        Optional<String> text = value.word();
        if (text.isEmpty()) {
            throw new UnreadableException("the value is not text, so a pattern or a field cannot apply");
        }
        return cut.from(text.get()).map(part -> new Value.Text(part.strip()));
    }

    /**
     * The whole payload as JSON.
     *
     * @return a missing node if it has no bytes; empty if it is not JSON
     */
    Optional<JsonNode> json() {
        try {
            return Optional.of(document());
        } catch (UnreadableException e) {
            return Optional.empty();
        }
    }

    /** The whole payload as text, without surrounding white space. */
    String text() {
        return new String(bytes, StandardCharsets.UTF_8).strip();
    }

    private synchronized JsonNode document() throws UnreadableException {
        if (document == null && complaint == null) {
            parse();
        }
        if (complaint != null) {
            throw complaint;
        }
        return document;
    }

    private void parse() {
        try {
            if (bytes.length > MOST_VALUES) {
                requireFew();
            }
            document = JSON.readTree(bytes);
        } catch (UnreadableException e) {
            complaint = e;
        } catch (StreamConstraintsException e) {
            complaint = new UnreadableException("the message's JSON is too deep, or a name or number in it too long");
        } catch (IOException e) {
            complaint = new UnreadableException("the message is not JSON");
        }
    }

    /** A message of one mebibyte may contain some hundred thousand values, too many to keep at once. */
    private void requireFew() throws IOException, UnreadableException {
        int values = 0;
        try (JsonParser parser = JSON.createParser(bytes)) {
            for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
                values += token.isScalarValue() || token.isStructStart() ? 1 : 0;
                if (values > MOST_VALUES) {
                    throw new UnreadableException("the message's JSON has more than " + MOST_VALUES + " values in it");
                }
            }
        }
    }

    /**
     * The first characters, for the log.
     *
     * @return at most 60 printable characters
     */
    public String beginning() {
        byte[] head = Arrays.copyOf(bytes, Math.min(bytes.length, 4 * BEGINNING_CHARS));
        return Printable.beginning(new String(head, StandardCharsets.UTF_8), BEGINNING_CHARS);
    }
}
