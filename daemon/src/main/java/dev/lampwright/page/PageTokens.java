package dev.lampwright.page;

import dev.lampwright.config.PageSettings;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The tokens of a page, and what each allows. Without any, everybody may ask.
 *
 * @param asking lets people watch and ask
 * @param watching lets people watch
 */
record PageTokens(Optional<Token> asking, Optional<Token> watching) {
    /** What somebody may do. */
    enum Right {
        /** Nothing. */
        NONE,
        /** See all and ask for nothing. */
        WATCH,
        /** See all and ask. */
        ASK;

        /** The one that allows more. */
        Right orBetter(Right other) {
            return compareTo(other) >= 0 ? this : other;
        }
    }

    /**
     * Reads them.
     *
     * @param settings which files they are in
     * @return those that there are
     * @throws IOException if one cannot be read; the message says why and what to do
     */
    static PageTokens read(PageSettings settings) throws IOException {
        return new PageTokens(
                read("token_file", settings.tokenFile()), read("view_token_file", settings.viewTokenFile()));
    }

    private static Optional<Token> read(String key, Optional<Path> file) throws IOException {
        return file.isPresent() ? Optional.of(Token.read(key, file.get())) : Optional.empty();
    }

    /** Whether anybody has to know one. */
    boolean areNeeded() {
        return asking.isPresent();
    }

    /** What a token allows. */
    Right ofToken(String given) {
        return !areNeeded() || asking.get().is(given)
                ? Right.ASK
                : watching.filter(token -> token.is(given)).isPresent() ? Right.WATCH : Right.NONE;
    }

    /** What the best of some passes allows. */
    Right ofPasses(List<String> passes) {
        if (!areNeeded() || passes.stream().anyMatch(asking.get()::isPass)) {
            return Right.ASK;
        }
        boolean mayWatch = watching.isPresent() && passes.stream().anyMatch(watching.get()::isPass);
        return mayWatch ? Right.WATCH : Right.NONE;
    }

    /** The pass for a token that is one of these. */
    String pass(String given) {
        return Stream.concat(asking.stream(), watching.stream())
                .filter(token -> token.is(given))
                .map(Token::pass)
                .findFirst()
                .orElse("");
    }

    /** Whether others are the same. */
    boolean sameAs(PageTokens others) {
        return asking.map(Token::pass).equals(others.asking.map(Token::pass))
                && watching.map(Token::pass).equals(others.watching.map(Token::pass));
    }
}
