package dev.lampwright.tool.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Pattern;

/** Why the bench refuses something: a code and values, which the page puts into words in any language, and one line of English. */
final class BenchRefusal extends Exception {
    private static final long serialVersionUID = 1;

    /** In the system's words; errno(3): ENOSPC, EDQUOT, EFBIG. */
    private static final Pattern FULL =
            Pattern.compile("No space left on device|Disk quota exceeded|File too large", Pattern.CASE_INSENSITIVE);

    private static final String FILE = "file";

    private final int status;
    private final String code;
    private final transient Map<String, Object> values;
    private final transient Map<String, Object> more;

    BenchRefusal(int status, String code, String why) {
        this(status, code, why, Map.of(), Map.of());
    }

    private BenchRefusal(int status, String code, String why, Map<String, Object> values, Map<String, Object> more) {
        super(why);
        this.status = status;
        this.code = code;
        this.values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
        this.more = Collections.unmodifiableMap(new LinkedHashMap<>(more));
    }

    /** The same with one more value of its text. */
    BenchRefusal with(String name, Object value) {
        Map<String, Object> next = new LinkedHashMap<>(values);
        next.put(name, value);
        return new BenchRefusal(status, code, getMessage(), next, more);
    }

    /** The same with what else there is to say. */
    BenchRefusal and(Map<String, Object> others) {
        Map<String, Object> next = new LinkedHashMap<>(more);
        next.putAll(others);
        return new BenchRefusal(status, code, getMessage(), values, next);
    }

    static BenchRefusal badRequest(String why) {
        return new BenchRefusal(400, "bad_request", why);
    }

    static BenchRefusal noLook(String name) {
        return new BenchRefusal(404, "no_look", "there is no look " + name).with("look", name);
    }

    /** That a file cannot be read. */
    static BenchRefusal notRead(Path file, IOException e) {
        return new BenchRefusal(500, "not_read", e.getMessage()).with(FILE, file.toString());
    }

    /** That a file is not valid TOML. */
    static BenchRefusal notToml(String file, String why) {
        return new BenchRefusal(500, "not_toml", file + " is not valid TOML: " + why + "; fix it first")
                .with(FILE, file);
    }

    /** That a file cannot be written. */
    static BenchRefusal notWritten(Path file, IOException e) {
        String code = Files.isSymbolicLink(file)
                ? "link"
                : FULL.matcher(String.valueOf(e.getMessage())).find() ? "disk_full" : "not_written";
        return new BenchRefusal(507, code, e.getMessage()).with(FILE, file.toString());
    }

    /** That the page closes. */
    static BenchRefusal closing() {
        return new BenchRefusal(503, "closing", "the page is closing");
    }

    String code() {
        return code;
    }

    Map<String, Object> values() {
        return values;
    }

    BenchReply reply() {
        Map<String, Object> body = new LinkedHashMap<>();
        body.put("done", false);
        body.put("why", getMessage());
        body.put("code", code);
        body.put("values", values);
        body.putAll(more);
        return new BenchReply(status, body);
    }
}
