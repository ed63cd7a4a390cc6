package dev.lampwright.page;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Combines modules into one script, so that a browser sends one request. Each module becomes a function that is called once and returns the
 * module's exports, in an order in which none needs a later one; nothing else in it is changed. Supports only the forms that the page's
 * modules use: {@code import { a, b } from "./file.js";} on one line, and {@code export} before a function, a class or a constant. A line
 * that begins with {@code await} makes the others wait.
 */
final class Bundle {
    private static final Pattern IMPORT =
            Pattern.compile("^import \\{ ([\\w, ]+) \\} from \"\\./([\\w-]+)\\.js\";$", Pattern.MULTILINE);
    private static final Pattern EXPORT =
            Pattern.compile("^export (?=(?:async )?(?:function|class|const) (\\w+))", Pattern.MULTILINE);
    private static final Pattern WAITS = Pattern.compile("^await ", Pattern.MULTILINE);
    private static final Pattern LEFT = Pattern.compile("^(import|export)\\b.*", Pattern.MULTILINE);

    private final UnaryOperator<String> source;
    private final Map<String, String> made = new LinkedHashMap<>();
    private final List<String> open = new ArrayList<>();

    private Bundle(UnaryOperator<String> source) {
        this.source = source;
    }

    /**
     * Creates the script.
     *
     * @param entry name of the module that runs last, without {@code .js}
     * @param source provides the text of a module by its name
     * @return a script
     * @throws IllegalStateException if a module has another form, or depends on itself
     */
    static String of(String entry, UnaryOperator<String> source) {
        Bundle bundle = new Bundle(source);
        bundle.add(entry);
        return "\"use strict\";\n" + String.join("", bundle.made.values());
    }

    private void add(String name) {
        if (made.containsKey(name)) {
            return;
        }
        if (open.contains(name)) {
            throw new IllegalStateException("modules need one another in a circle: " + open + " " + name);
        }
        open.add(name);
        String text = source.apply(name);
        Matcher imports = IMPORT.matcher(text);
        while (imports.find()) {
            add(imports.group(2));
        }
        open.remove(name);
        made.put(name, function(name, text));
    }

    private static String function(String name, String text) {
        List<String> exports = new ArrayList<>();
        EXPORT.matcher(text).results().forEach(result -> exports.add(result.group(1)));
        String inside = EXPORT.matcher(IMPORT.matcher(text).replaceAll("const { $1 } = $2_js;"))
                .replaceAll("");
        Matcher left = LEFT.matcher(inside);
        if (left.find()) {
            throw new IllegalStateException(name + ".js: the bundle cannot take " + left.group());
        }
        String call = WAITS.matcher(inside).find() ? "await (async () => {\n" : "(() => {\n";
        return "const " + name + "_js = " + call + inside + "return { " + String.join(", ", exports) + " };\n})();\n";
    }
}
