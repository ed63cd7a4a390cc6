package dev.lampwright.cli;

import dev.lampwright.config.BaudRate;
import dev.lampwright.config.DeskPrefix;
import java.math.BigDecimal;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.function.Function;
import picocli.CommandLine;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.TypeConversionException;

/** Converts the text of options and parameters to values, and words the errors. */
final class OptionValues {
    private static final String WANTED_NUMBER = "; write a number, for instance 2.5";

    private OptionValues() {}

    /**
     * Makes a command and its subcommands read values with these readers.
     *
     * @param command with its subcommands
     */
    static void readBy(CommandLine command) {
        command.registerConverter(Double.class, new Reader<>(OptionValues::number))
                .registerConverter(double.class, new Reader<>(OptionValues::number))
                .registerConverter(BigDecimal.class, new Reader<>(OptionValues::decimal))
                .registerConverter(boolean.class, new Reader<>(OptionValues::flag))
                .registerConverter(Path.class, new Reader<>(OptionValues::path));
    }

    /**
     * Reads with a function. Not a function itself: OpenJDK 17.0.15 may crash when it archives classes and finds a lambda for an interface
     * whose class file is as old as picocli's.
     */
    private record Reader<T>(Function<String, T> reader) implements ITypeConverter<T> {
        @Override
        public T convert(String text) {
            return reader.apply(text);
        }
    }

    /** Until when something lasts. */
    static final class Until implements ITypeConverter<String> {
        static final String CHANGED = "changed";

        @Override
        public String convert(String text) {
            if (!text.equals(CHANGED)) {
                throw new TypeConversionException(
                        "is " + text + "; write --until " + CHANGED + ", or --for with a number of seconds");
            }
            return text;
        }
    }

    /**
     * Reports that a value cannot be read.
     *
     * @param e what picocli found wrong
     * @return the option or parameter, its value, and what would be valid; the message itself if something else is wrong
     */
    static String wrong(ParameterException e) {
        boolean ours = e.getCause() instanceof TypeConversionException && e.getArgSpec() != null;
        return ours ? name(e.getArgSpec()) + " " + e.getCause().getMessage() : e.getMessage();
    }

    private static String name(ArgSpec spec) {
        return spec instanceof OptionSpec option ? option.longestName() : spec.paramLabel();
    }

    /** Bits per second. */
    static final class Baud implements ITypeConverter<Integer> {
        @Override
        public Integer convert(String text) {
            return OptionValues.of(text, BaudRate::parse);
        }
    }

    /** The prefix of a daemon's own topics. */
    static final class Prefix implements ITypeConverter<String> {
        @Override
        public String convert(String text) {
            return OptionValues.of(text, DeskPrefix::parse);
        }
    }

    private static <T> T of(String text, Function<String, T> reader) {
        try {
            return reader.apply(text);
        } catch (IllegalArgumentException e) {
            throw new TypeConversionException(e.getMessage());
        }
    }

    private static Double number(String text) {
        try {
            return Double.valueOf(text);
        } catch (NumberFormatException e) {
            throw new TypeConversionException("is " + text + WANTED_NUMBER);
        }
    }

    private static BigDecimal decimal(String text) {
        try {
            return new BigDecimal(text);
        } catch (NumberFormatException e) {
            throw new TypeConversionException("is " + text + WANTED_NUMBER);
        }
    }

    private static Boolean flag(String text) {
        if (!text.equals("true") && !text.equals("false")) {
            throw new TypeConversionException("is " + text + "; write true or false, or the option alone");
        }
        return Boolean.valueOf(text);
    }

    private static Path path(String text) {
        if (text.isEmpty()) {
            throw new TypeConversionException("is empty; give the path of a file");
        }
        try {
            return Path.of(text);
        } catch (InvalidPathException e) {
            throw new TypeConversionException(
                    "is " + text + ", which has characters that paths cannot have in this locale;"
                            + " set another, for instance LC_ALL=C.UTF-8");
        }
    }
}
