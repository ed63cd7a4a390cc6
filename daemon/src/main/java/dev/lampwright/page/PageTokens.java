package dev.lampwright.page;

import dev.lampwright.config.TokenFiles;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * The tokens of a page, and what each allows.
 *
 * @param asking allows watching and asking
 * @param watching allows watching
 * @param editing lets people watch, ask and save looks
 */
record PageTokens(Optional<Token> asking, Optional<Token> watching, Optional<Token> editing) {
    /** None. */
    static final PageTokens NONE = new PageTokens(Optional.empty(), Optional.empty(), Optional.empty());

    /** What somebody may do. */
    enum Right {
        /** Nothing. */
        NONE,
        /** See everything and ask for nothing. */
        WATCH,
        /** See everything and ask. */
        ASK,
        /** See all, ask, and save looks. */
        EDIT;

        /** The one that allows more. */
        Right orBetter(Right other) {
            return compareTo(other) >= 0 ? this : other;
        }
    }

    /**
     * Reads the tokens.
     *
     * @param files which files they are in
     * @return those that there are
     * @throws IOException if one cannot be read; the message says why and what to do
     */
    static PageTokens read(TokenFiles files) throws IOException {
        return new PageTokens(
                read("token_file", files.asking()),
                read("view_token_file", files.watching()),
                read("edit_token_file", files.editing()));
    }

    private static Optional<Token> read(String key, Optional<Path> file) throws IOException {
        return file.isPresent() ? Optional.of(Token.read(key, file.get())) : Optional.empty();
    }

    /** What a token allows. */
    Right ofToken(String given) {
        return right(token -> token.is(given));
    }

    /** What a pass allows. */
    Right ofPass(String pass) {
        return right(token -> token.isPass(pass));
    }

    private Right right(Predicate<Token> fits) {
        if (editing.filter(fits).isPresent()) {
            return Right.EDIT;
        }
        if (asking.filter(fits).isPresent()) {
            return Right.ASK;
        }
        return watching.filter(fits).isPresent() ? Right.WATCH : Right.NONE;
    }

    private Stream<Token> all() {
        return Stream.of(editing, asking, watching).flatMap(Optional::stream);
    }

    /** The pass for one of these tokens. */
    String pass(String given) {
        return all().filter(token -> token.is(given))
                .map(Token::pass)
                .findFirst()
                .orElse("");
    }

    /** Whether other tokens are the same. */
    boolean sameAs(PageTokens others) {
        return passes().equals(others.passes());
    }

    private List<Optional<String>> passes() {
        return Stream.of(editing, asking, watching)
                .map(token -> token.map(Token::pass))
                .toList();
    }
}
