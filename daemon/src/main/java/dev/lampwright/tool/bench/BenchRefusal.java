package dev.lampwright.tool.bench;

import java.util.LinkedHashMap;
import java.util.Map;

/** Why the bench does not do something, in one line, with a code for programs. */
final class BenchRefusal extends Exception {
    private static final long serialVersionUID = 1;

    private final int status;
    private final String code;
    private final transient Map<String, Object> more;

    BenchRefusal(int status, String code, String why) {
        this(status, code, why, Map.of());
    }

    /**
     * Makes one.
     *
     * @param status as HTTP has it
     * @param code a word for programs
     * @param why in one line, with what to do
     * @param more what else there is to say
     */
    BenchRefusal(int status, String code, String why, Map<String, Object> more) {
        super(why);
        this.status = status;
        this.code = code;
        this.more = more;
    }

    static BenchRefusal badRequest(String why) {
        return new BenchRefusal(400, "bad_request", why);
    }

    static BenchRefusal noLook(String name) {
        return new BenchRefusal(404, "no_look", "there is no look " + name);
    }

    BenchReply reply() {
        Map<String, Object> body = new LinkedHashMap<>();
        body.put("done", false);
        body.put("why", getMessage());
        body.put("code", code);
        body.putAll(more);
        return new BenchReply(status, body);
    }
}
