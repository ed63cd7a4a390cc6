package dev.lampwright.http;

import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * The name that a request uses for a server. A foreign name may have been pointed at it, so that another site's page can read its answers
 * (DNS rebinding); an address is safe, because it cannot belong to another site.
 */
public final class HostName {
    private static final Pattern ADDRESS = Pattern.compile("[0-9]{1,3}(\\.[0-9]{1,3}){3}|\\[[0-9A-Fa-f:.]+]");
    private static final Pattern LOOPBACK = Pattern.compile("localhost|127(\\.[0-9]{1,3}){3}|\\[::1]");
    private static final Pattern PORT = Pattern.compile(":[0-9]{1,5}$");

    private HostName() {}

    /**
     * Whether a request calls the server by a name or an address that no other machine can reach it by.
     *
     * @param header the request's header {@code Host}; empty if it has none
     * @return whether it is {@code localhost} or an address of loopback (RFC 6761, section 6.3; RFC 1122, section 3.2.1.3)
     */
    public static boolean isLoopback(String header) {
        String host = PORT.matcher(header).replaceFirst("").toLowerCase(Locale.ROOT);
        return LOOPBACK.matcher(host).matches();
    }

    /**
     * Whether a name is the server's own.
     *
     * @param header the request's header {@code Host}; empty if it has none
     * @param own names of the server, in addition to {@code localhost} and addresses; in lower case
     * @return false for a foreign name, and without a name
     */
    public static boolean isOwn(String header, Set<String> own) {
        String host = PORT.matcher(header).replaceFirst("").toLowerCase(Locale.ROOT);
        return host.equals("localhost")
                || own.contains(host)
                || ADDRESS.matcher(host).matches();
    }
}
