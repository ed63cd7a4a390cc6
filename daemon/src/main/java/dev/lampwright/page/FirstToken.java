package dev.lampwright.page;

import dev.lampwright.file.FileFailure;
import dev.lampwright.file.PrivateFile;
import dev.lampwright.file.RandomToken;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermission;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * The token for the first fitting, which opens the page to other computers until there is a configuration, and the port of that page. Both are
 * in a file that only the service's user and root can read. There is no {@code toString}, so no log can show the token.
 */
public final class FirstToken {
    /** The file's name in the folder for state. */
    private static final String NAME = "first-token";

    private static final Set<PosixFilePermission> OWN =
            Set.of(PosixFilePermission.OWNER_READ, PosixFilePermission.OWNER_WRITE);
    private static final Pattern PORT = Pattern.compile("[0-9]{1,5}");

    private final String text;
    private final int port;

    private FirstToken(String text, int port) {
        this.text = text;
        this.port = port;
    }

    /**
     * Where it is.
     *
     * @param folder for the service's state
     * @return the path of its file
     */
    public static Path in(Path folder) {
        return folder.resolve(NAME);
    }

    /**
     * Makes the token, or keeps the one that there is.
     *
     * @param folder for the service's state
     * @param port of the page
     * @return the token
     * @throws IOException if it cannot be kept there; the message says why and what to do
     */
    public static FirstToken make(Path folder, int port) throws IOException {
        Path file = in(folder);
        Optional<FirstToken> kept = isOpen(file) ? Optional.empty() : find(folder);
        if (kept.filter(token -> token.port == port).isPresent()) {
            return kept.get();
        }
        FirstToken made = new FirstToken(kept.map(token -> token.text).orElseGet(RandomToken::make), port);
        PrivateFile.replace(file, made.text + "\n" + port + "\n");
        return made;
    }

    /** Whether there is a file that others may read. What they may know is replaced. */
    private static boolean isOpen(Path file) throws IOException {
        PosixFileAttributeView view =
                Files.getFileAttributeView(file, PosixFileAttributeView.class, LinkOption.NOFOLLOW_LINKS);
        return view != null
                && Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
                && !OWN.containsAll(view.readAttributes().permissions());
    }

    /**
     * Finds the token that a service has made.
     *
     * @param folder for the service's state
     * @return none if there is none, or a file of another form
     * @throws IOException if it cannot be read; the message says why and what to do, and shows nothing of it
     */
    public static Optional<FirstToken> find(Path folder) throws IOException {
        Path file = in(folder);
        if (Files.exists(file, LinkOption.NOFOLLOW_LINKS) && !Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
            throw new IOException(file + ": is not a file; delete it and restart the service");
        }
        try (BufferedReader reader = new BufferedReader(
                new InputStreamReader(Files.newInputStream(file, LinkOption.NOFOLLOW_LINKS), StandardCharsets.UTF_8))) {
            return of(Optional.ofNullable(reader.readLine()), Optional.ofNullable(reader.readLine()));
        } catch (NoSuchFileException e) {
            return Optional.empty();
        } catch (AccessDeniedException e) {
            throw new IOException(
                    file + ": only root and the service's user can read this; run the command with sudo", e);
        } catch (IOException e) {
            throw new IOException(
                    file + ": " + FileFailure.whyNotRead(file, e) + "; delete it and restart the service", e);
        }
    }

    private static Optional<FirstToken> of(Optional<String> text, Optional<String> port) {
        return text.filter(RandomToken::isOne)
                .flatMap(token -> port.filter(digits -> PORT.matcher(digits).matches())
                        .map(digits -> new FirstToken(token, Integer.parseInt(digits))));
    }

    /**
     * Deletes the token, which opens nothing any more.
     *
     * @param folder for the service's state
     * @throws IOException if it cannot be deleted
     */
    public static void forget(Path folder) throws IOException {
        Files.deleteIfExists(in(folder));
    }

    /**
     * The port of the page that it opens.
     *
     * @return the port
     */
    public int port() {
        return port;
    }

    /**
     * An address of the page followed by the token, in the part that browsers never send (RFC 3986, section 3.5).
     *
     * @param url the address
     * @return the address with the token
     */
    public String after(String url) {
        return url + "#" + text;
    }

    /** What it allows: everything. */
    PageTokens tokens() {
        Optional<Token> token = Optional.of(Token.of(text));
        return new PageTokens(token, Optional.empty(), token);
    }
}
