package dev.lampwright.tool.survey;

import dev.lampwright.broker.Broker;
import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.payload.Leaves;
import dev.lampwright.payload.Quantity;
import dev.lampwright.payload.Source;
import dev.lampwright.printer.Bindings;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.printer.StatusReader;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * How well a survey binds a printer without help: the proposed configuration is read, the whole job is fed to its bindings, and the result
 * is compared with what the job really did. A reading or the state is bound right if it is right in 95 of 100 seconds.
 *
 * @param printer the printer
 * @param right what is bound right
 * @param wrong what is bound wrong, or not bound, or bound although the printer does not report it
 * @param unheard the state, if it is wrong only in what the printer had not reported yet while the survey listened
 * @param falseFaultSeconds for how long a fault would be shown while there is none
 * @param hiddenFaultSeconds for how long there is a fault while another state than before would be shown, or while the file binds its word to
 *     another state
 */
record Score(
        Printer printer,
        List<String> right,
        List<String> wrong,
        List<String> unheard,
        int falseFaultSeconds,
        int hiddenFaultSeconds) {
    /** Layers are counted while the job runs, and are meaningless before and after. */
    private static final Set<Quantity> COUNTS = EnumSet.of(Quantity.JOB_DONE, Quantity.JOB_TOTAL);

    private static final double SHARE = 0.95;
    private static final Broker BROKER =
            new Broker(URI.create("mqtt://127.0.0.1:1883"), Optional.empty(), Optional.empty(), Optional.empty());
    private static final long NANOS_A_SECOND = 1_000_000_000L;

    /**
     * Surveys a printer and judges the result.
     *
     * @param printer the printer
     * @param seconds how many seconds of its job the survey listens to
     */
    static Score of(Printer printer, int seconds) throws ConfigException {
        Survey survey = new Survey();
        List<Job.Moment> moments = printer.moments();
        for (Job.Moment moment : moments.subList(0, Math.min(seconds, moments.size()))) {
            printer.speaker()
                    .apply(moment)
                    .forEach(message ->
                            survey.hear(message.topic(), bytes(message.payload()), moment.second() * NANOS_A_SECOND));
        }
        return of(printer, survey.proposal(), seconds);
    }

    /**
     * Judges a survey's proposal for a printer.
     *
     * @param printer the printer
     * @param proposal what was proposed
     * @param seconds how many seconds of its job the survey listened to
     */
    static Score of(Printer printer, Proposal proposal, int seconds) throws ConfigException {
        return ProposedConfig.isEnough(proposal)
                ? judged(printer, ConfigFile.read(ProposedConfig.whole(proposal, BROKER), "proposed"), seconds)
                : new Score(printer, List.of(), all(printer), List.of(), 0, 0);
    }

    private static List<String> all(Printer printer) {
        List<String> all =
                new ArrayList<>(printer.tells().stream().map(Quantity::key).toList());
        if (!printer.states().isEmpty()) {
            all.add("state");
        }
        return all;
    }

    private static Score judged(Printer printer, Config config, int seconds) {
        StatusReader reader = new StatusReader(config.bindings());
        PrinterStatus status = PrinterStatus.nothingHeard();
        Map<Quantity, Integer> good = new EnumMap<>(Quantity.class);
        Map<Quantity, Integer> asked = new EnumMap<>(Quantity.class);
        int goodStates = 0;
        int askedStates = 0;
        int goodHeard = 0;
        int askedHeard = 0;
        int falseFaults = 0;
        int hiddenFaults = 0;
        PrinterState beforeTheFault = PrinterState.SILENT;
        List<Job.Moment> moments = printer.moments();
        Set<PrinterState> heard = moments.subList(0, Math.min(seconds, moments.size())).stream()
                .map(Job.Moment::state)
                .collect(Collectors.toSet());
        for (Job.Moment moment : moments) {
            for (Printer.Message message : printer.speaker().apply(moment)) {
                status = reader.read(
                        status, message.topic(), bytes(message.payload()), moment.second() * NANOS_A_SECOND);
            }
            for (Quantity quantity : printer.tells()) {
                if (COUNTS.contains(quantity) && moment.state() != PrinterState.PRINTING) {
                    continue;
                }
                asked.merge(quantity, 1, Integer::sum);
                double off = Math.abs(status.value(quantity) - moment.value(quantity));
                good.merge(quantity, off <= Printers.TOLERANCES.get(quantity) ? 1 : 0, Integer::sum);
            }
            boolean isFault = moment.state() == PrinterState.FAULT;
            boolean isShown = status.state() == PrinterState.FAULT;
            boolean isAsked = printer.states().contains(moment.state());
            askedStates += isAsked ? 1 : 0;
            goodStates += isAsked && status.state() == moment.state() ? 1 : 0;
            boolean isHeard = isAsked && heard.contains(moment.state());
            askedHeard += isHeard ? 1 : 0;
            goodHeard += isHeard && status.state() == moment.state() ? 1 : 0;
            falseFaults += isShown && !isFault ? 1 : 0;
            beforeTheFault = isFault ? beforeTheFault : status.state();
            boolean isHidden = status.state() != beforeTheFault || isCalledOtherwise(config, printer, moment);
            hiddenFaults += isFault && !isShown && isHidden ? 1 : 0;
        }
        List<String> right = new ArrayList<>();
        List<String> wrong = new ArrayList<>();
        good.forEach((quantity, count) -> (count >= SHARE * asked.get(quantity) ? right : wrong).add(quantity.key()));
        List<String> unheard = new ArrayList<>();
        if (askedStates > 0) {
            boolean isRight = goodStates >= SHARE * askedStates;
            (isRight ? right : wrong).add("state");
            if (!isRight && goodHeard >= SHARE * askedHeard) {
                unheard.add("state");
            }
        }
        config.bindings().readings().keySet().stream()
                .filter(quantity -> !printer.tells().contains(quantity))
                .forEach(quantity -> wrong.add(quantity.key() + ", which it does not tell"));
        return new Score(printer, right, wrong, unheard, falseFaults, hiddenFaults);
    }

    /** Whether the printer says a known word for a fault at that moment, and the file takes it for another state. */
    private static boolean isCalledOtherwise(Config config, Printer printer, Job.Moment moment) {
        if (config.bindings().states().stream().noneMatch(state -> saysAFault(state.source(), printer, moment))) {
            return false;
        }
        StatusReader words = new StatusReader(new Bindings(config.bindings().states(), Map.of(), Map.of()));
        PrinterStatus status = PrinterStatus.nothingHeard();
        for (Printer.Message message : printer.speaker().apply(moment)) {
            status = words.read(status, message.topic(), bytes(message.payload()), 0);
        }
        return status.state() != PrinterStatus.nothingHeard().state() && status.state() != PrinterState.FAULT;
    }

    private static boolean saysAFault(Source place, Printer printer, Job.Moment moment) {
        return printer.speaker().apply(moment).stream()
                .flatMap(message -> Leaves.of(bytes(message.payload())).list().stream()
                        .filter(leaf -> leaf.on(message.topic()).equals(place)))
                .anyMatch(leaf -> StateWords.stateOf(leaf.text())
                        .filter(PrinterState.FAULT::equals)
                        .isPresent());
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    /** The share that is bound right. */
    double share() {
        return (double) right.size() / (right.size() + wrong.size());
    }

    @Override
    public String toString() {
        return String.format(
                "%-8s %-32s %2d of %2d%s",
                printer.name(),
                printer.shape(),
                right.size(),
                right.size() + wrong.size(),
                (wrong.isEmpty() ? "" : "  not: " + String.join(", ", wrong))
                        + (unheard.isEmpty() ? "" : " (not all reported yet)")
                        + (falseFaultSeconds > 0 ? "  FALSE FAULT " + falseFaultSeconds + " s" : "")
                        + (hiddenFaultSeconds > 0 ? "  HIDDEN FAULT " + hiddenFaultSeconds + " s" : ""));
    }
}
