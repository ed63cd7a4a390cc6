package dev.lampwright.config;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Everyday words in a layer are answered with what to write; and what the table advises can be written. */
class EverydayWordsTest {
    private static String mistake(String layer) {
        List<Mistake> mistakes =
                assertThrows(ConfigException.class, () -> read(layer), layer).mistakes();
        assertEquals(1, mistakes.size(), mistakes.toString());
        return mistakes.get(0).toString();
    }

    private static void read(String layer) throws ConfigException {
        ConfigFile.read("""
                broker.url = "mqtt://alder"
                printer.readings.job.progress.topic = "shop/alder/job"
                controller.port = "/dev/ttyACM0"
                strip.pixels = 30
                [looks.own]
                layers = [{ LAYER }]
                """.replace("LAYER", layer.replace('\'', '"')), "alder.toml");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "colour = 'red', rhythm = 'blink 1s' | rhythm: \"blink 1s\" is not a valid rhythm; write \"Iso 2s\" to have",
                "colour = 'red', rhythm = 'Throb' | rhythm: \"Throb\" is not a valid rhythm; write \"swell 4s\"",
                "colour = 'red', rhythm = 'pulse(3)' | rhythm: \"pulse(3)\" is not a valid rhythm; write \"swell 4s\"",
                "colour = 'red', rhythm = 'double-blink' | rhythm: \"double-blink\" is not a valid rhythm; write \"Fl(2) 6s\"",
                "colour = 'red', rhythm = 'on' | rhythm: \"on\" is not a valid rhythm; write \"F\", or leave rhythm out",
                "colour = 'red', rhythm = 'on 1s' | rhythm: \"on 1s\" is not a valid rhythm; write \"on 0.5s off 1.5s\"",
                "paint = 'fire' | paint: is \"fire\"; write \"ember\", a fire that glows",
                "colour = 'red', extent = 'bounce' | extent: is \"bounce\"; write \"band\" with back_and_forth = true",
                "colour = 'red', blend = 'add' | blend: is \"add\"; write \"plus-lighter\", which adds light",
                "color = 'red', colour = 'red' | color: is not known; write colour",
                "colors = 'red', colour = 'red' | colors: is not known; write colours",
                "speed = 3, colour = 'red' | speed: is not known; write speed_px_per_s, speed_zones_per_s or cycle_s",
                "colour = 'red', cut-off = 3 | cut-off: is not known; write dark_below with opacity_by",
                "effect = 'x', colour = 'red' | effect: is not known; describe it by paint, extent and rhythm; motions.md of the"
            })
    void areAnsweredByMeaning(String layer, String message) {
        String mistake = mistake(layer);
        assertTrue(mistake.startsWith("alder.toml:6: looks.own.layers.0." + message), mistake);
    }

    private static List<String> table() throws IOException {
        try (BufferedReader in = new BufferedReader(new InputStreamReader(
                EverydayWords.class.getResourceAsStream("everyday-words.txt"), StandardCharsets.UTF_8))) {
            return in.lines().filter(line -> line.contains(" | ")).toList();
        }
    }

    @Test
    void everyKeyInTheAdviceExists() throws IOException {
        List<String> names = LayerKeys.SECTION.names();
        for (String line : table()) {
            List<String> advised = new ArrayList<>();
            Matcher words = Pattern.compile("\\b[a-z]+(?:_[a-z]+)+\\b").matcher(line.split(" \\| ", -1)[2]);
            while (words.find()) {
                advised.add(words.group());
            }
            assertTrue(names.containsAll(advised), line);
        }
    }

    @Test
    void everyValueInTheAdviceCanBeRead() throws IOException, ConfigException {
        for (String line : table()) {
            String[] parts = line.split(" \\| ", -1);
            Matcher values = Pattern.compile("\"([^\"]+)\"").matcher(parts[2]);
            while (values.find()) {
                String before = parts[2].substring(0, values.start());
                String key = parts[0].equals("key") ? "rhythm" : parts[0];
                Matcher other = Pattern.compile("([a-z]+) = $").matcher(before);
                readValue(other.find() ? other.group(1) : key, values.group(1));
            }
        }
    }

    private static void readValue(String key, String value) throws ConfigException {
        String rest = switch (value) {
            case "ramp" -> "colours = ['red', 'blue']";
            case "scale" -> "colours = ['red', 'blue'], by = 'job.progress'";
            case "palette" -> "colours = ['red', 'blue'], extent = 'grains'";
            case "ember" -> "opacity = 1";
            case "bar", "pointer" -> "colour = 'red', by = 'job.progress'";
            default -> "colour = 'red'";
        };
        read(key + " = '" + value + "', " + rest);
    }

    @Test
    void aKnownWordIsNotAMistake() throws IOException, ConfigException {
        read("colour = 'red', rhythm = 'on 1s off 2s'");
        for (String line : table()) {
            String[] parts = line.split(" \\| ", -1);
            for (String word : parts[1].split(" ", -1)) {
                assertTrue(!parts[0].equals("key") || !LayerKeys.SECTION.names().contains(word), word);
            }
        }
    }
}
