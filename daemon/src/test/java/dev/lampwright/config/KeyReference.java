package dev.lampwright.config;

import java.util.stream.Collectors;

/** Writes the users' reference of all keys, in Markdown. */
final class KeyReference {
    private KeyReference() {}

    static String text() {
        return """
                # The keys of the configuration file

                Written from the table of keys in `daemon/src/main/java/dev/lampwright/config`; do not edit it (DEVELOPERS.md, "How to add a key").
                TOML 1.0; numbers carry their unit in the key; unknown keys are mistakes. A name in capitals is your own. All of it as one commented file:
                [example.toml](../src/main/resources/dev/lampwright/config/example.toml).
                """ + Keys.SECTIONS.stream().map(KeyReference::section).collect(Collectors.joining());
    }

    private static String section(Section section) {
        String header = section.path().isEmpty() ? "The file" : '`' + header(section.path()) + '`';
        String help = section.help().isEmpty() ? "" : capital(section.help()) + ".\n\n";
        return "\n## " + header + "\n\n" + help
                + "| key | what | value | without it |\n| --- | --- | --- | --- |\n"
                + section.keys().stream().map(KeyReference::row).collect(Collectors.joining());
    }

    private static String header(String path) {
        boolean array = path.equals("cues") || path.endsWith("condition") || path.endsWith("layers");
        return array ? "[[" + path + "]]" : '[' + path + ']';
    }

    private static String row(Key<?> key) {
        String with = key.goesWith().isEmpty() ? "" : " (only with `" + key.goesWith() + "`)";
        String example = key.example().isEmpty() ? "" : ", for instance `" + key.example() + '`';
        return "| `" + key.name() + "` | " + cell(key.help() + with) + " | " + cell(key.type() + example) + " | "
                + cell(key.without()) + " |\n";
    }

    private static String cell(String text) {
        return text.replace("|", "\\|");
    }

    private static String capital(String text) {
        return Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }
}
