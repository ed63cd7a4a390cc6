package dev.lampwright.broker;

import java.io.IOException;
import java.net.URI;

/** A broker did not accept the login of a command with a person waiting. The message is for the user: which broker, what, what to do. */
public final class UnreachedException extends IOException {
    private static final long serialVersionUID = 1L;

    private final String code;
    private final URI url;

    UnreachedException(String code, URI url, String reason) {
        super("broker " + url + ": " + reason);
        this.code = code;
        this.url = url;
    }

    /**
     * Identifies the reason for those with texts of their own.
     *
     * @return of lower-case letters and underscores; empty if it has no code
     */
    public String code() {
        return code;
    }

    /**
     * The broker.
     *
     * @return its address as configured
     */
    public URI url() {
        return url;
    }
}
