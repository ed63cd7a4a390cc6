package dev.lampwright.broker;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The examples are those of MQTT 3.1.1 (OASIS Standard, 29 October 2014), sections 4.7.1 to 4.7.3, unless a test says more. */
final class TopicFilterTest {
    @ParameterizedTest
    @CsvSource({
        // 4.7.1.2, multi-level wildcard
        "sport/tennis/player1/#, sport/tennis/player1",
        "sport/tennis/player1/#, sport/tennis/player1/ranking",
        "sport/tennis/player1/#, sport/tennis/player1/score/wimbledon",
        "sport/#, sport",
        "#, sport/tennis/player1",
        // 4.7.1.3, single-level wildcard
        "sport/tennis/+, sport/tennis/player1",
        "sport/tennis/+, sport/tennis/player2",
        "sport/+, sport/",
        "+/+, /finance",
        "/+, /finance",
        // 4.7.2, topics that begin with $
        "$SYS/#, $SYS/monitor/Clients",
        "$SYS/monitor/+, $SYS/monitor/Clients",
        // 4.7.3, spaces and a lone slash are allowed
        "Accounts payable, Accounts payable",
        "/, /",
    })
    void matches(String filter, String topic) {
        assertTrue(TopicFilter.of(filter).matches(topic));
        assertTrue(isFound(filter, topic));
    }

    /** Whether the index of many filters finds this one. */
    private static boolean isFound(String filter, String topic) {
        return new TopicIndex<>(Map.of(filter, Set.of("it"))).find(topic).contains("it");
    }

    @ParameterizedTest
    @CsvSource({
        // 4.7.1.3
        "sport/tennis/+, sport/tennis/player1/ranking",
        "sport/+, sport",
        "+, /finance",
        // 4.7.2
        "#, $SYS/monitor/Clients",
        "+/monitor/Clients, $SYS/monitor/Clients",
        // 4.7.3: names are case-sensitive, and a leading slash makes a different topic
        "ACCOUNTS, Accounts",
        "/finance, finance",
    })
    void doesNotMatch(String filter, String topic) {
        assertFalse(TopicFilter.of(filter).matches(topic));
        assertFalse(isFound(filter, topic));
    }

    /** Derived from the rules of 4.7.1; not among the standard's examples. */
    @ParameterizedTest
    @CsvSource({
        "a/b, a/b, true",
        "a/b, a/b/c, false",
        "a/b/c, a/b, false",
        "a/b, a/bb, false",
        "a/bb, a/b, false",
        "a/, a, false",
        "a, a/, false",
        "a//b, a//b, true",
        "a/+/b, a//b, true",
        "a/+/b, a/b, false",
        "+/b/#, a/b, true",
        "+/b/#, a/b/c/d, true",
        "+/b/#, a/c/b, false",
        "a/#, ab, false",
        "a/+, a/$b, true",
        "$SYS/#, $SYS, true",
    })
    void followsTheRules(String filter, String topic, boolean matches) {
        assertEquals(matches, TopicFilter.of(filter).matches(topic));
        assertEquals(matches, isFound(filter, topic));
    }

    @ParameterizedTest
    @ValueSource(strings = {"#", "sport/tennis/#", "+", "+/tennis/#", "sport/+/player1", "/", "/finance", "$SYS/#"})
    void isValid(String filter) {
        assertEquals(Optional.empty(), TopicFilter.problem(filter));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"sport/tennis#", "sport/tennis/#/ranking", "sport+", "", "a\0b", "##", "a/++", "#/", "\ud800"})
    void isNotValid(String filter) {
        assertTrue(TopicFilter.problem(filter).isPresent());
        assertThrows(IllegalArgumentException.class, () -> TopicFilter.of(filter));
    }

    /** 4.7.3: not longer than 65535 bytes in UTF-8. */
    @Test
    void countsBytesAndNotCharacters() {
        assertEquals(Optional.empty(), TopicFilter.problem("a".repeat(65_535)));
        assertTrue(TopicFilter.problem("a".repeat(65_536)).isPresent());
        assertTrue(TopicFilter.problem("ä".repeat(32_768)).isPresent());
    }
}
