package dev.lampwright.link;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

class LineBackoffTest {
    private final LineBackoff backoff = new LineBackoff();

    private List<Long> millis(int count) {
        return LongStream.range(0, count)
                .map(i -> backoff.next() / 1_000_000)
                .boxed()
                .toList();
    }

    @Test
    void doublesUpToASecondAndStartsAgain() {
        assertEquals(List.of(250L, 500L, 1000L, 1000L), millis(4));
        backoff.restart();
        assertEquals(List.of(250L), millis(1));
    }
}
