package dev.lampwright.cli;

import dev.lampwright.config.ConfigException;
import dev.lampwright.config.Shop;
import dev.lampwright.rig.Rigs;
import dev.lampwright.rig.ShopWatch;
import dev.lampwright.service.ServiceWatch;
import java.nio.file.Path;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Runs the rigs of a shop until it is stopped, and reads its files again when they change. */
final class ShopRun {
    private static final Logger LOG = LoggerFactory.getLogger(ShopRun.class);

    private final Path folder;
    private final CountDownLatch stopped;
    private final long lookEveryMillis;

    /**
     * Prepares.
     *
     * @param folder the shop's folder
     * @param stopped counts down when it must end
     * @param lookEveryMillis interval between checks of the files
     */
    ShopRun(Path folder, CountDownLatch stopped, long lookEveryMillis) {
        this.folder = folder;
        this.stopped = stopped;
        this.lookEveryMillis = lookEveryMillis;
    }

    /**
     * Runs.
     *
     * @param maker builds a rig's daemon
     * @throws ConfigException if at the start the shop's own file is not valid
     * @throws InterruptedException if the thread is interrupted
     */
    void run(Rigs.Maker maker) throws ConfigException, InterruptedException {
        ShopWatch watch = new ShopWatch(folder, KeptLooks.OF_THIS_DAEMON);
        Shop first = Shop.read(folder, Set.of(), KeptLooks.OF_THIS_DAEMON);
        HangUp hangUp = HangUp.listen();
        try (Rigs rigs = new Rigs(maker, System::nanoTime);
                ServiceWatch service = ServiceWatch.of(System.getenv(), rigs::pulse, () -> ShopWords.of(rigs));
                Servers servers = Servers.of(rigs, folder)) {
            follow(first, rigs, servers);
            service.start();
            LOG.info("started with {}: {}", folder, ShopWords.of(rigs));
            while (!stopped.await(lookEveryMillis, TimeUnit.MILLISECONDS)) {
                rigs.lookAround();
                servers.lookAround();
                boolean asked = hangUp.heard();
                if (watch.changed() || asked) {
                    service.reloading();
                    readAgain(rigs, servers);
                    service.reloaded();
                }
            }
        }
    }

    private void readAgain(Rigs rigs, Servers servers) {
        try {
            follow(Shop.read(folder, rigs.daemons().keySet(), KeptLooks.OF_THIS_DAEMON), rigs, servers);
        } catch (ConfigException e) {
            rigs.refused(e.mistakes());
        } catch (RuntimeException | StackOverflowError e) {
            LOG.error(
                    "{} hit an internal error, please report it ({}); all rigs run as before", folder, e.toString(), e);
        }
    }

    private static void follow(Shop shop, Rigs rigs, Servers servers) {
        rigs.follow(shop);
        servers.follow(shop.shared().page(), shop.shared().metricsPort());
    }
}
