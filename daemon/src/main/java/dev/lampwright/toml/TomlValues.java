package dev.lampwright.toml;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/** Values of a text, whatever their spelling. */
final class TomlValues {
    private TomlValues() {}

    /** What is at a path. */
    static Optional<Object> at(Object values, List<String> path) {
        Object value = values;
        for (String name : path) {
            if (value instanceof Map<?, ?> table) {
                value = table.get(name);
            } else if (value instanceof List<?> array) {
                int index = TomlPart.index(name);
                value = index >= 0 && index < array.size() ? array.get(index) : null;
            } else {
                return Optional.empty();
            }
        }
        return Optional.ofNullable(value);
    }

    /** Whether two values are the same: numbers are compared by value, tables without regard to order. */
    static boolean same(Object one, Object other) {
        if (one instanceof Map<?, ?> table && other instanceof Map<?, ?> second) {
            return table.keySet().equals(second.keySet())
                    && table.keySet().stream().allMatch(key -> same(table.get(key), second.get(key)));
        }
        if (one instanceof List<?> array && other instanceof List<?> second) {
            return array.size() == second.size()
                    && IntStream.range(0, array.size()).allMatch(i -> same(array.get(i), second.get(i)));
        }
        if (one instanceof Number number && other instanceof Number second) {
            return (isFinite(number) && isFinite(second))
                    ? decimal(number).compareTo(decimal(second)) == 0
                    : number.equals(second);
        }
        return one.equals(other);
    }

    private static boolean isFinite(Number number) {
        return !(number instanceof Double d) || Double.isFinite(d);
    }

    private static BigDecimal decimal(Number number) {
        if (number instanceof BigDecimal decimal) {
            return decimal;
        }
        return number instanceof BigInteger whole ? new BigDecimal(whole) : new BigDecimal(number.toString());
    }

    /** Values without what is at a path; a table or an array on the way that is then empty is left out as well. */
    static Object without(Object values, List<String> path) {
        return without(values, path, true).orElse(Map.of());
    }

    private static Optional<Object> without(Object value, List<String> path, boolean outermost) {
        if (path.isEmpty()) {
            return Optional.empty();
        }
        String name = path.get(0);
        List<String> rest = path.subList(1, path.size());
        if (value instanceof Map<?, ?> table) {
            Map<Object, Object> left = new LinkedHashMap<>(table);
            Optional<Object> inner = Optional.ofNullable(table.get(name)).flatMap(each -> without(each, rest, false));
            left.remove(name);
            inner.ifPresent(each -> left.put(name, each));
            return left.isEmpty() && !outermost ? Optional.empty() : Optional.of(left);
        }
        if (value instanceof List<?> array) {
            int index = TomlPart.index(name);
            List<Object> left = new ArrayList<>(array);
            if (index >= 0 && index < left.size()) {
                Optional<Object> inner = without(left.remove(index), rest, false);
                inner.ifPresent(each -> left.add(index, each));
            }
            return left.isEmpty() ? Optional.empty() : Optional.of(left);
        }
        return Optional.of(value);
    }
}
