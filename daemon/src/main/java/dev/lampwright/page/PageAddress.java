package dev.lampwright.page;

import dev.lampwright.config.PageSettings;
import dev.lampwright.config.TokenFiles;
import java.io.IOException;
import java.net.Inet6Address;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The address of a page for browsers, from its configuration. */
public final class PageAddress {
    private PageAddress() {}

    /**
     * Whether other machines can reach a page: it listens for them, or a server with TLS does.
     *
     * @param settings its settings
     * @return false if only this machine can
     */
    public static boolean isForOthers(PageSettings settings) {
        return settings.tls()
                ? !settings.hosts().isEmpty()
                : !settings.address().isLoopbackAddress();
    }

    /**
     * The addresses of a page, the best one for another machine first. Behind a server with TLS they are the names of {@code hosts} at the
     * usual port of HTTPS.
     *
     * @param settings where it is
     * @param port its port, which differs from the configuration's if that is 0
     * @return each with a trailing slash: by the names of {@code hosts}, then by the addresses that it listens on
     * @throws SocketException if this machine's addresses cannot be listed
     */
    public static List<String> all(PageSettings settings, int port) throws SocketException {
        if (settings.tls() && isForOthers(settings)) {
            return settings.hosts().stream()
                    .map(host -> "https://" + host + "/")
                    .toList();
        }
        List<String> all = new ArrayList<>();
        if (isForOthers(settings)) {
            settings.hosts().forEach(host -> all.add(url(host, port)));
        }
        for (InetAddress address : settings.address().isAnyLocalAddress() ? outward() : List.of(settings.address())) {
            all.add(url(text(address), port));
        }
        return all;
    }

    /**
     * The best address of a page for another machine.
     *
     * @param settings where it is
     * @param port its port
     * @return empty if no other machine can reach it, or this one has no address that others can reach
     * @throws SocketException if this machine's addresses cannot be listed
     */
    static String forOthers(PageSettings settings, int port) throws SocketException {
        boolean named = !settings.hosts().isEmpty();
        boolean reached = isForOthers(settings)
                && (named
                        || !settings.address().isAnyLocalAddress()
                        || !reachable().isEmpty());
        return reached ? all(settings, port).get(0) : "";
    }

    /** This machine's addresses that others can reach, or the loopback address if there are none. */
    private static List<InetAddress> outward() throws SocketException {
        List<InetAddress> all = reachable();
        return all.isEmpty() ? List.of(InetAddress.getLoopbackAddress()) : all;
    }

    /** IPv4 first, because they are shorter to type. */
    private static List<InetAddress> reachable() throws SocketException {
        return NetworkInterface.networkInterfaces()
                .flatMap(NetworkInterface::inetAddresses)
                .filter(address -> !address.isLoopbackAddress() && !address.isLinkLocalAddress())
                .sorted((one, other) -> Boolean.compare(one instanceof Inet6Address, other instanceof Inet6Address))
                .toList();
    }

    private static String text(InetAddress address) {
        String text = address.getHostAddress().replaceFirst("%.*", "");
        return address instanceof Inet6Address ? "[" + text + "]" : text;
    }

    private static String url(String host, int port) {
        return "http://" + host + ":" + port + "/";
    }

    /**
     * The best address of a page, with its token, as a code.
     *
     * @param settings where it is
     * @param port its port
     * @param rig whose page; empty for that of the only one
     * @param tokens files with the tokens that open it
     * @return SVG; empty if no other machine can reach it
     * @throws IOException if address or token is not available
     */
    static Optional<String> code(PageSettings settings, int port, String rig, TokenFiles tokens) throws IOException {
        return isForOthers(settings)
                ? Optional.of(PageCode.of(withToken(of(rig, all(settings, port).get(0)), tokens))
                        .svg())
                : Optional.empty();
    }

    /**
     * The address of a rig's page.
     *
     * @param rig the rig's name; empty for a single one
     * @param url as in {@link #all}
     * @return the address, with a trailing slash
     */
    public static String of(String rig, String url) {
        return rig.isEmpty() ? url : url + rig + "/";
    }

    /**
     * An address followed by the token, in the part that browsers never send (RFC 3986, section 3.5).
     *
     * @param url as in {@link #all}
     * @param tokens files with the page's tokens
     * @return the address alone if there is no token
     * @throws IOException if the token cannot be read; the message says why and what to do
     */
    public static String withToken(String url, TokenFiles tokens) throws IOException {
        return tokens.asking().isEmpty() ? url : withTokenIn(tokens.asking().get(), "token_file", url);
    }

    /**
     * As {@link #withToken}, with the view-only token.
     *
     * @param url as in {@link #all}
     * @param tokens files with the page's tokens
     * @return the address with the token
     * @throws IOException if there is no such token, or it cannot be read; the message says why and what to do
     */
    public static String withViewToken(String url, TokenFiles tokens) throws IOException {
        return withRequired(tokens.watching(), "view_token_file", "only watch", url);
    }

    /**
     * As {@link #withToken}, with the token for saving looks.
     *
     * @param url as in {@link #all}
     * @param tokens files with the page's tokens
     * @return the address with the token
     * @throws IOException if there is no such token, or it cannot be read; the message says why and what to do
     */
    public static String withEditToken(String url, TokenFiles tokens) throws IOException {
        return withRequired(tokens.editing(), "edit_token_file", "save looks and fit", url);
    }

    /**
     * The addresses of a page on which lights are fitted for the first time, for other computers.
     *
     * @param port its port
     * @return the best one first; none while this machine has no address that others can reach
     * @throws SocketException if this machine's addresses cannot be listed
     */
    public static List<String> ofFirst(int port) throws SocketException {
        return reachable().stream().map(address -> url(text(address), port)).toList();
    }

    private static String withRequired(Optional<Path> file, String key, String right, String url) throws IOException {
        if (file.isEmpty()) {
            throw new IOException("page." + key + " is missing, so no token lets people " + right
                    + "; set it to a file with a token");
        }
        return withTokenIn(file.get(), key, url);
    }

    private static String withTokenIn(Path file, String key, String url) throws IOException {
        String token = URLEncoder.encode(Token.readText(key, file), StandardCharsets.UTF_8);
        return url + "#" + token.replace("+", "%20");
    }
}
