package dev.lampwright.config;

import dev.lampwright.broker.Broker;
import dev.lampwright.guard.GuardSettings;
import dev.lampwright.look.Fitting;
import dev.lampwright.look.Zone;
import dev.lampwright.toml.Toml;
import dev.lampwright.wiring.Wiring;
import java.net.InetAddress;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/** Reads configuration files: TOML 1.0, like the project's example. */
public final class ConfigFile {
    private static final Key<Integer> FRAMES_PER_S =
            Key.whole("frames_per_s", 1, 240).usual(60, "60").example("60", "1 to 240; a change needs a restart");

    /** The outermost table. */
    static final Section SECTION = Section.of(
            "",
            "",
            FRAMES_PER_S,
            Key.own("broker", "table").needed(),
            Key.own("printer", "table").without("required, unless there is `printers`"),
            Key.own("printers", "table of printers by name, each with the keys of `printer`")
                    .without("there is one printer, without a name"),
            Key.own("controller", "table").needed(),
            Key.own("supply", "table"),
            Key.own("strip", "table").needed(),
            Key.own("wiring", "table"),
            Key.own("zones", "table"),
            Key.own("views", "table of views by name").without("each of `printers` has an equal share of the strip"),
            Key.own("dimmers", "table"),
            Key.own("guard", "table"),
            Key.own("alarm", "table"),
            Key.own("desk", "table"),
            Key.own("quiet", "table"),
            Key.own("history", "table"),
            Key.own("metrics", "table"),
            Key.own("page", "table"),
            Key.own("looks", "table"),
            Key.own("cues", "array of tables"));

    private static final int MOST_PORT = 65_535;
    private static final Key<Integer> METRICS_PORT =
            Key.whole("port", 1, MOST_PORT).without("nothing listens").comment("9464", "on the loopback address");

    private static final Key<Boolean> KEEP_HISTORY = Key.flag("keep")
            .without("`true` for a service with a `StateDirectory`, else `false`")
            .comment("false", "whether jobs, faults and curves survive a restart");

    /** What has happened. */
    static final Section HISTORY = Section.of("history", "what has happened: jobs, faults, curves", KEEP_HISTORY);

    /** Figures for Prometheus. */
    static final Section METRICS =
            Section.of("metrics", "figures for Prometheus, on http://127.0.0.1:PORT/metrics", METRICS_PORT);

    private ConfigFile() {}

    /**
     * Reads a file.
     *
     * @param file its path; relative paths in it are resolved against its folder. A file in the folder {@code rigs} of a shop is read
     *     together with the shop's
     * @return the configuration
     * @throws ConfigException with all mistakes, if the file cannot be read or is not valid
     */
    public static Config read(Path file) throws ConfigException {
        return examine(file).config();
    }

    /**
     * Reads a configuration from memory.
     *
     * @param text TOML
     * @param name its name in messages; relative paths in it are resolved against the current folder
     * @return the configuration
     * @throws ConfigException with all mistakes, if the text is not valid
     */
    public static Config read(String text, String name) throws ConfigException {
        return examined(Origins.of(new Origin(name, Toml.read(text), Path.of("").toAbsolutePath())), Optional.empty())
                .config();
    }

    /**
     * Reads a configuration that will be written.
     *
     * @param text TOML
     * @param file where it will be; relative paths in it are resolved against its folder
     * @return the configuration
     * @throws ConfigException with all mistakes, if the text is not valid
     */
    public static Config read(String text, Path file) throws ConfigException {
        String mark = "\uFEFF";
        return examine(file, text.startsWith(mark) ? text.substring(mark.length()) : text)
                .config();
    }

    /**
     * Reads a file, including what it leaves out.
     *
     * @param file its path; relative paths in it are resolved against its folder
     * @return the configuration and its defaults
     * @throws ConfigException with all mistakes, if the file cannot be read or is not valid
     */
    public static Examined examine(Path file) throws ConfigException {
        return examine(file, FileText.read(file));
    }

    private static Examined examine(Path file, String text) throws ConfigException {
        return examine(file, text, List.of());
    }

    /**
     * Reads a file together with looks that are kept apart from it, and tells what they leave out.
     *
     * @param file its path; relative paths in it start from its folder
     * @param overlays finds the looks
     * @return the configuration and the defaults in it
     * @throws ConfigException with all mistakes, if the file cannot be read or the two together are not right
     */
    public static Examined examine(Path file, Overlays overlays) throws ConfigException {
        return overlays.over(file, over -> examine(file, FileText.read(file), over));
    }

    /**
     * Reads a configuration that is to be written, together with looks that are kept apart from it.
     *
     * @param file where it is to be; relative paths in it start from its folder
     * @param text TOML
     * @param over looks and cues that are read after it, in this order
     * @return the configuration and the defaults in it
     * @throws ConfigException with all mistakes, if the texts are not right
     */
    public static Examined examine(Path file, String text, List<LooksOverlay> over) throws ConfigException {
        Optional<Path> shop = ShopFile.around(file);
        if (shop.isPresent()) {
            return examine(RigFile.at(file), text, ShopFile.read(shop.get()), over);
        }
        return examined(under(Origins.of(origin(file, text)), over), Optional.empty());
    }

    private static Origins under(Origins file, List<LooksOverlay> over) {
        Origins all = file;
        for (LooksOverlay overlay : over) {
            all = all.under(overlay.origin());
        }
        return all;
    }

    /**
     * Reads the file of a rig, together with what it shares with others.
     *
     * @param rig its file
     * @param shop what all rigs share
     * @param overlays finds the looks that are kept apart from it
     * @return the configuration and its defaults
     * @throws ConfigException with all mistakes, if the file cannot be read or the two together are not valid
     */
    static Examined examine(RigFile rig, ShopFile shop, Overlays overlays) throws ConfigException {
        return overlays.over(rig.path(), over -> examine(rig, FileText.read(rig.path()), shop, over));
    }

    private static Examined examine(RigFile rig, String text, ShopFile shop, List<LooksOverlay> over)
            throws ConfigException {
        rig.requireName();
        Origins both = shop.with(origin(rig.path(), text), rig.name());
        return examined(under(both, over), Optional.of(new OfRig(rig.name(), shop)));
    }

    private static Origin origin(Path file, String text) {
        Path whole = file.toAbsolutePath();
        return new Origin(file.toString(), Toml.read(text), whole.getParent() == null ? whole : whole.getParent());
    }

    /**
     * Reads only the broker from a file. The file needs only a section {@code [broker]}; a rig's file not even that, if the shop has one.
     *
     * @param file its path; relative paths in it are resolved against its folder
     * @return the broker
     * @throws ConfigException with all mistakes in that section, or if the file cannot be read
     */
    public static Broker readBroker(Path file) throws ConfigException {
        Origin own = origin(file, FileText.read(file));
        Optional<Path> shop = ShopFile.around(file);
        Mistakes findings = new Mistakes(
                shop.isPresent()
                        ? ShopFile.read(shop.get()).with(own, RigFile.at(file).name())
                        : Origins.of(own));
        return broker(findings.root().table("broker"), findings);
    }

    /**
     * Creates a broker from single values, with the same checks as in the section {@code [broker]}.
     *
     * @param values by the keys of that section
     * @return the broker; relative paths are resolved against the current folder
     * @throws ConfigException with all mistakes
     */
    public static Broker broker(Map<String, Object> values) throws ConfigException {
        Mistakes findings = new Mistakes("broker", Toml.read(""));
        return broker(Table.root(values, findings), findings);
    }

    private static Broker broker(Table table, Mistakes findings) throws ConfigException {
        Broker broker = BrokerSection.read(table);
        table.noteUnknown();
        findings.throwIfMistaken();
        return broker;
    }

    /** Whose file it is, where it is that of a rig. */
    private record OfRig(String name, ShopFile shop) {}

    private static Examined examined(Origins origins, Optional<OfRig> rig) throws ConfigException {
        Mistakes findings = new Mistakes(origins);
        origins.laidOver().forEach(overlay -> LooksOverlay.noteOthers(overlay, findings));
        Table root = findings.root();
        if (rig.isPresent()) {
            ShopFile.noteNotOfARig(root);
        }
        Config config = config(root, rig);
        root.noteUnknown();
        root.noteUnseen();
        notePortTwice(root, config.page(), config.metricsPort());
        findings.throwIfMistaken();
        return new Examined(config, findings.defaults(), origins);
    }

    /** Metrics are on the loopback address; a page on another address may have the same port. */
    static void notePortTwice(Table root, Optional<PageSettings> settings, OptionalInt metricsPort) {
        boolean same = settings.filter(page -> page.port() == metricsPort.orElse(0) && page.port() != 0)
                .map(PageSettings::address)
                .filter(address -> address.isAnyLocalAddress() || address.equals(InetAddress.getLoopbackAddress()))
                .isPresent();
        if (same) {
            root.table("metrics")
                    .mistake(
                            "port",
                            "is " + metricsPort.getAsInt() + ", which page.port is too",
                            "give each a port of its own");
        }
    }

    /** Contains substitutes where there are mistakes. */
    private static Config config(Table root, Optional<OfRig> rig) {
        int framesPerSecond = root.as(SECTION).get(FRAMES_PER_S);
        Broker broker = BrokerSection.read(root.table("broker"));
        PrintersSection printers = PrintersSection.read(root);
        ControllerSection controller = ControllerSection.read(root.table("controller"));
        SupplySection supply = SupplySection.read(root.table("supply"));
        StripSection strip = StripSection.read(root.table("strip"));
        DimmersSection dimmers = DimmersSection.read(root.table("dimmers"), supply.volts());
        Mounting mounting = MountingKeys.read(root.table("strip"), strip.pixels(), dimmers);
        Map<String, Zone> zones = ZonesSection.read(root.table("zones"), strip.pixels(), dimmers.colourStrips());
        SetupParts.noteDarkStrip(root, strip, supply);
        BoardKinds.noteLimits(root, controller, strip, dimmers);
        List<ViewSpec> views = new ViewsSection(printers.names(), strip.pixels(), dimmers).read(root, zones);
        Fitting fitting = SetupParts.fitting(strip.pixels(), ViewsSection.withZones(zones, views), dimmers);
        LooksAndCues lights = LooksAndCues.read(root, fitting, printers, views);
        Wiring wiring = WiringSection.read(
                root,
                BoardKinds.likely(controller, strip),
                supply.volts(),
                strip.pixels(),
                fitting.dimmers().stream().map(Fitting.DimmerUse::name).toList());
        GuardSettings guard = GuardSection.read(root.table("guard"), fitting, dimmers.supplyVolts());
        LightSpec light = new LightSpec(
                fitting,
                strip.spec(),
                lights.looks(),
                lights.cues(),
                AlarmSection.read(root.table("alarm")),
                guard,
                printers.lights(),
                views,
                printers.own());
        Table desk = root.table("desk");
        return new Config(
                framesPerSecond,
                new TalkSpec(broker, printers.bindings(), DeskPrefix.read(desk, rig.map(OfRig::name))),
                controller.spec(SetupParts.setup(strip, supply, controller, dimmers)),
                light,
                controller.atEnd(),
                DeskSection.read(desk, root.table("quiet")),
                mounting,
                rig.isPresent() ? Optional.empty() : PageSection.read(root),
                rig.map(one -> PageSection.tokensOfRig(root, one.shop().page())).orElse(TokenFiles.NONE),
                rig.isPresent() ? OptionalInt.empty() : metricsPort(root),
                wiring,
                root.table("history").as(HISTORY).find(KEEP_HISTORY));
    }

    /** The port of the section {@code [metrics]}; empty if there is none. */
    static OptionalInt metricsPort(Table root) {
        return root.table("metrics")
                .as(METRICS)
                .find(METRICS_PORT)
                .map(OptionalInt::of)
                .orElse(OptionalInt.empty());
    }
}
