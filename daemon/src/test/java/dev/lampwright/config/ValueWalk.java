package dev.lampwright.config;

import com.fasterxml.jackson.core.JsonPointer;
import java.lang.reflect.Field;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.RecordComponent;
import java.net.InetAddress;
import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;

/** Visits everything that is reachable from a value, and notes what could change. */
final class ValueWalk {
    /** Immutable types of the JDK and of the JSON library. */
    private static final List<Class<?>> PLAIN = List.of(
            String.class,
            Number.class,
            Boolean.class,
            OptionalInt.class,
            OptionalDouble.class,
            Duration.class,
            LocalTime.class,
            ZoneId.class,
            URI.class,
            Path.class,
            InetAddress.class,
            JsonPointer.class);

    private final List<String> faults = new ArrayList<>();
    private final Set<Class<?>> met = new HashSet<>();

    /** What could change, with the path to it. */
    List<String> faults() {
        return faults;
    }

    /** Every class that was visited. */
    Set<Class<?>> met() {
        return met;
    }

    /** A component of a record. */
    static Object component(Object record, RecordComponent component) {
        try {
            Method accessor = component.getAccessor();
            accessor.setAccessible(true);
            return accessor.invoke(record);
        } catch (ReflectiveOperationException e) {
            throw new LinkageError(e.getMessage(), e);
        }
    }

    /** Visits a value and everything that it consists of. */
    void visit(Object value, String way) {
        Class<?> type = value.getClass();
        met.add(type);
        if (value instanceof Collection<?> collection) {
            requireFixed(way, collection::clear);
            collection.forEach(element -> visit(element, way + "[]"));
        } else if (value instanceof Map<?, ?> map) {
            requireFixed(way, map::clear);
            map.forEach((key, element) -> {
                visit(key, way + "{}");
                visit(element, way + '.' + key);
            });
        } else if (value instanceof Optional<?> optional) {
            optional.ifPresent(inner -> visit(inner, way + '?'));
        } else if (value instanceof Record) {
            for (RecordComponent component : type.getRecordComponents()) {
                visit(component(value, component), way + '.' + component.getName());
            }
        } else if (!(value instanceof Enum) && PLAIN.stream().noneMatch(plain -> plain.isInstance(value))) {
            requireValueType(type, way);
        }
    }

    private void requireFixed(String way, Runnable change) {
        try {
            change.run();
            faults.add(way + " is a collection that can be changed");
        } catch (UnsupportedOperationException e) {
            // as it should be
        }
    }

    /** One of our own classes that is not a record: final, with final private fields, and equal by its contents. */
    private void requireValueType(Class<?> type, String way) {
        boolean closed =
                Modifier.isFinal(type.getModifiers()) && type.getPackageName().startsWith("dev.lampwright.");
        boolean fixed = Arrays.stream(type.getDeclaredFields()).allMatch(ValueWalk::isFixed);
        boolean hidesArrays = Arrays.stream(type.getMethods())
                .noneMatch(method -> method.getReturnType().isArray());
        if (type.isArray() || !closed || !fixed || !hidesArrays) {
            faults.add(way + " is a " + type.getName() + ", which can change");
        }
    }

    private static boolean isFixed(Field field) {
        int modifiers = field.getModifiers();
        return Modifier.isFinal(modifiers) && (Modifier.isPrivate(modifiers) || Modifier.isStatic(modifiers));
    }
}
