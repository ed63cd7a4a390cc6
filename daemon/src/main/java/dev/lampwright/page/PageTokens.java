package dev.lampwright.page;

import dev.lampwright.config.TokenFiles;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The tokens of a page, and what each allows.
 *
 * @param asking lets people watch and ask
 * @param watching lets people watch
 */
record PageTokens(Optional<Token> asking, Optional<Token> watching) {
    /** No token at all. */
    static final PageTokens NONE = new PageTokens(Optional.empty(), Optional.empty());

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
     * @param files which files they are in
     * @return those that there are
     * @throws IOException if one cannot be read; the message says why and what to do
     */
    static PageTokens read(TokenFiles files) throws IOException {
        return new PageTokens(read("token_file", files.asking()), read("view_token_file", files.watching()));
    }

    private static Optional<Token> read(String key, Optional<Path> file) throws IOException {
        return file.isPresent() ? Optional.of(Token.read(key, file.get())) : Optional.empty();
    }

    /** What a token allows. */
    Right ofToken(String given) {
        return asking.filter(token -> token.is(given)).isPresent()
                ? Right.ASK
                : watching.filter(token -> token.is(given)).isPresent() ? Right.WATCH : Right.NONE;
    }

    /** What a pass allows. */
    Right ofPass(String pass) {
        return asking.filter(token -> token.isPass(pass)).isPresent()
                ? Right.ASK
                : watching.filter(token -> token.isPass(pass)).isPresent() ? Right.WATCH : Right.NONE;
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
