package dev.lampwright.config;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/** The section {@code [page]}: the live page, which exists if the section does. */
final class PageSection {
    private static final int HIGHEST_PORT = 65_535;
    /** Each needs a thread, of those allowed for the service (TasksMax in its unit). */
    private static final int MOST_VIEWERS = 100;

    private static final String TOKEN_FILE = "token_file";
    private static final String VIEW_TOKEN_FILE = "view_token_file";
    private static final List<String> TOKENS = List.of(TOKEN_FILE, VIEW_TOKEN_FILE);

    private static final Pattern ADDRESS =
            Pattern.compile("[0-9]{1,3}(\\.[0-9]{1,3}){3}|[0-9A-Fa-f:.]*:[0-9A-Fa-f:.]*");
    private static final String WANTED_ADDRESS =
            "give an IP address of this machine: \"127.0.0.1\" for itself alone, \"0.0.0.0\" for everybody who can reach it";
    private static final String WANTED_TOKEN =
            "give the path of a file whose first line is the token, 16 characters or more";
    private static final String WANTED_HOSTS =
            "give the names by which browsers ask for the page, for instance [\"alder.local\"]";
    private static final Pattern HOST = Pattern.compile("[A-Za-z0-9]([A-Za-z0-9.-]{0,251}[A-Za-z0-9])?");

    private static final Key<InetAddress> ADDRESS_KEY = Key.parsed(
                    "address", "IP address of this machine", WANTED_ADDRESS, PageSection::address)
            .otherwise(InetAddress.getLoopbackAddress(), "this machine alone")
            .comment("\"127.0.0.1\"", "this machine alone; another one needs a token_file");
    private static final Key<Integer> PORT = Key.whole("port", 0, HIGHEST_PORT)
            .usual(PageSettings.USUAL_PORT, Integer.toString(PageSettings.USUAL_PORT))
            .comment("61117", "0 for any that is free, which is logged then");
    private static final Key<Integer> VIEWERS = Key.whole("viewers", 1, MOST_VIEWERS)
            .usual(PageSettings.USUAL_VIEWERS, Integer.toString(PageSettings.USUAL_VIEWERS))
            .comment("32", "the most who may watch at the same time");

    private static final Key<Boolean> TLS = Key.flag("tls")
            .otherwise(false, "false")
            .comment("true", "all browsers come through a server with TLS, so the cookie is sent over TLS only");

    /** The live page. */
    static final Section SECTION = Section.of(
            "page",
            "the live page for browsers; without this section there is none",
            PORT,
            ADDRESS_KEY,
            Key.own(TOKEN_FILE, "path")
                    .without("no token")
                    .comment(
                            "\"page-token\"",
                            "its first line is what viewers have to know, 16 characters or more; in a rig's file: for that rig"),
            Key.own(VIEW_TOKEN_FILE, "path")
                    .without("no such token")
                    .comment(
                            "\"view-token\"",
                            "its first line lets people watch and change nothing; in a rig's file: for that rig"),
            Key.own("edit_token_file", "path")
                    .without("looks can be saved on this machine alone")
                    .comment("\"edit-token\"", "its first line lets people save looks and cues, and do all else"),
            Key.own("hosts", "array of host names")
                    .comment(
                            "[\"alder.local\"]",
                            "names by which browsers ask for it, in addition to localhost and addresses"),
            VIEWERS,
            TLS);

    private PageSection() {}

    /**
     * Reads the section.
     *
     * @param root the whole file
     * @return its content; empty if it does not exist
     */
    static Optional<PageSettings> read(Table root) {
        boolean there = root.has("page");
        Table table = root.table("page");
        return there ? Optional.of(page(table)) : Optional.empty();
    }

    private static PageSettings page(Table table) {
        InetAddress address = table.as(SECTION).get(ADDRESS_KEY);
        int port = table.get(PORT);
        Optional<Path> token = BrokerSection.path(table, TOKEN_FILE, WANTED_TOKEN);
        if (!address.isLoopbackAddress() && token.isEmpty()) {
            table.mistake(
                    "address",
                    "lets other machines reach the page, and there is no token_file",
                    "name a token_file, whose first line viewers have to know, or leave address out");
        }
        Optional<Path> viewToken = BrokerSection.path(table, VIEW_TOKEN_FILE, WANTED_TOKEN);
        if (viewToken.isPresent() && token.isEmpty()) {
            table.mistake(
                    VIEW_TOKEN_FILE,
                    "lets people watch only, and without a token_file everybody may ask",
                    "name a token_file too, or leave view_token_file out");
        }
        Optional<Path> editToken = BrokerSection.path(table, "edit_token_file", WANTED_TOKEN);
        int viewers = table.get(VIEWERS);
        boolean tls = table.get(TLS);
        return new PageSettings(address, port, token, viewToken, editToken, hosts(table), viewers, tls);
    }

    /**
     * Reads the section of a rig's file, which has nothing but tokens that let people use the page of that rig.
     *
     * @param root the rig's file
     * @param shared what the shop's file says about the page
     * @return what it names
     */
    static TokenFiles tokensOfRig(Table root, Optional<PageSettings> shared) {
        if (!root.has("page")) {
            return TokenFiles.NONE;
        }
        Table table = root.table("page").as(SECTION);
        SECTION.names().stream()
                .filter(key -> !TOKENS.contains(key) && table.has(key))
                .forEach(key -> ShopFile.noteShared(table, key));
        TokenFiles tokens = new TokenFiles(
                BrokerSection.path(table, TOKEN_FILE, WANTED_TOKEN),
                BrokerSection.path(table, VIEW_TOKEN_FILE, WANTED_TOKEN),
                Optional.empty());
        if (table.keys().isEmpty()) {
            ShopFile.noteShared(root, "page");
        } else if (tokens.areAny() && shared.flatMap(PageSettings::tokenFile).isEmpty()) {
            table.mistake(
                    tokens.asking().isPresent() ? TOKEN_FILE : VIEW_TOKEN_FILE,
                    "lets people use this rig alone, but without a page.token_file in " + ShopFile.NAME
                            + " everybody may use all rigs",
                    "name a token_file there, or remove this one");
        }
        return tokens;
    }

    /** Only addresses, so that no name has to be resolved. */
    private static InetAddress address(String text) {
        if (!ADDRESS.matcher(text).matches()) {
            throw new IllegalArgumentException("is " + Wording.quoted(text) + ", which is not an IP address");
        }
        try {
            return InetAddress.getByName(text);
        } catch (UnknownHostException e) {
            throw new IllegalArgumentException("is " + Wording.quoted(text) + ", which is not an IP address", e);
        }
    }

    private static List<String> hosts(Table table) {
        List<String> hosts = table.texts("hosts", WANTED_HOSTS);
        for (String host : hosts) {
            if (!HOST.matcher(host).matches()) {
                table.mistake(
                        "hosts", "has " + Wording.quoted(host) + " in it, which is not a host name", WANTED_HOSTS);
            }
        }
        return hosts.stream().map(host -> host.toLowerCase(Locale.ROOT)).toList();
    }
}
