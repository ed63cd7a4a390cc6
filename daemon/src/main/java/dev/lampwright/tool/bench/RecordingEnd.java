package dev.lampwright.tool.bench;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.json.Json;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** How long a recording is, from its last lines alone. */
final class RecordingEnd {
    private static final int READ = 65_536;

    private RecordingEnd() {}

    /** The time of the last message, in s; 0 if none is found near the end. */
    static double seconds(Path file) {
        List<String> lines = lastLines(file).lines().toList();
        for (int i = lines.size() - 1; i >= 0; i--) {
            Optional<Double> seconds = Json.read(lines.get(i))
                    .map(line -> line.path("at_s"))
                    .filter(JsonNode::isNumber)
                    .map(JsonNode::asDouble);
            if (seconds.isPresent()) {
                return seconds.get();
            }
        }
        return 0;
    }

    private static String lastLines(Path file) {
        try (RandomAccessFile open = new RandomAccessFile(file.toFile(), "r")) {
            long from = Math.max(0, open.length() - READ);
            byte[] bytes = new byte[(int) (open.length() - from)];
            open.seek(from);
            open.readFully(bytes);
            return new String(bytes, StandardCharsets.UTF_8);
        } catch (IOException e) {
            return "";
        }
    }
}
