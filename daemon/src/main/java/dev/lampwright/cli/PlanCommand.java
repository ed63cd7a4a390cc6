package dev.lampwright.cli;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.file.FileFailure;
import dev.lampwright.json.Json;
import dev.lampwright.tool.check.AskedLight;
import dev.lampwright.tool.plan.Plan;
import dev.lampwright.tool.plan.PlanPicture;
import dev.lampwright.tool.plan.PlanText;
import dev.lampwright.tool.plan.PlanValues;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The command {@code plan}: the electrical plan of the fitted lights. */
@Command(
        name = "plan",
        header = "Calculate load and voltage drop of the wiring.",
        description = {
            "Calculates load and voltage drop from the [wiring] section; lists what exceeds its rating and how to fix"
                    + " it."
        },
        exitCodeListHeading = "%nExit status:%n",
        exitCodeList = {
            "0:nothing is over its rating",
            "1:something is, or a file is invalid, cannot be read or cannot be written",
            "2:usage error"
        },
        footer = {"", "Example: lampwright plan alder.toml --picture alder.svg"})
final class PlanCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FILE", description = "The configuration file.")
    private Path file;

    @Mixin
    private RigOption rig;

    @Mixin
    private JsonOption json;

    @Option(
            names = "--picture",
            paramLabel = "FILE.svg",
            description = "Also draw the wiring and the voltage along the strip, as SVG.")
    private Path picture;

    @Override
    public Integer call() throws ConfigException, IOException {
        requireRight();
        file = rig.file(file);
        Plan plan = plan(KeptLooks.readToDraw(file, spec.commandLine().getErr()));
        if (picture != null) {
            draw(plan);
        }
        if (json.wanted()) {
            spec.commandLine().getOut().println(Json.of(PlanValues.of(plan)));
        } else {
            PlanText.of(plan).forEach(spec.commandLine().getOut()::println);
        }
        return plan.over() ? ExitCode.SOFTWARE : ExitCode.OK;
    }

    private Plan plan(Config config) {
        return Plan.of(WiringVerdicts.lights(config, String.valueOf(file.getFileName())), AskedLight.ofAll(config));
    }

    private void draw(Plan plan) throws IOException {
        try {
            Files.writeString(picture, PlanPicture.of(plan));
        } catch (IOException e) {
            throw FileFailure.ofWriting(picture, e);
        }
    }

    private void requireRight() {
        if (picture != null && !picture.toString().toLowerCase(Locale.ROOT).endsWith(".svg")) {
            throw new ParameterException(
                    spec.commandLine(), "--picture is " + picture + "; give a name that ends in .svg");
        }
    }
}
