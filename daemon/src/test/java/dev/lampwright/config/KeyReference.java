package dev.lampwright.config;

import java.util.Locale;
import java.util.stream.Collectors;

/** Writes the users' reference of all keys, in Markdown. */
final class KeyReference {
    private KeyReference() {}

    static String text() {
        return """
                # The keys of the configuration file

                Written from the table of keys in `daemon/src/main/java/dev/lampwright/config`; do not edit it (DEVELOPERS.md, "How to add a key").
                TOML 1.0; numbers carry their unit in the key; unknown keys are mistakes. A name in capitals is your own. [The file](file.md) explains how the
                parts go together. All of it as one commented file: [example.toml](../src/main/resources/dev/lampwright/config/example.toml).

                On this page: %s
                """.formatted(Keys.SECTIONS.stream().map(KeyReference::link).collect(Collectors.joining(" ·\n")))
                + Keys.SECTIONS.stream().map(KeyReference::section).collect(Collectors.joining());
    }

    /** The anchor is the heading in lower case, without anything but letters and digits, as Markdown viewers generate it. */
    private static String link(Section section) {
        String title = title(section);
        return "[" + title + "](#"
                + title.toLowerCase(Locale.ROOT).replace(' ', '-').replaceAll("[^a-z0-9_-]", "") + ")";
    }

    private static String title(Section section) {
        return section.path().isEmpty() ? "The file" : '`' + header(section.path()) + '`';
    }

    private static String section(Section section) {
        String help = section.help().isEmpty() ? "" : capital(section.help()) + ".\n\n";
        return "\n## " + title(section) + "\n\n" + help
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
