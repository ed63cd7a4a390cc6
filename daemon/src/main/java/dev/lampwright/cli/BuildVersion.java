package dev.lampwright.cli;

import dev.lampwright.engine.Release;
import picocli.CommandLine.IVersionProvider;

/** The version of this build. */
final class BuildVersion implements IVersionProvider {
    @Override
    public String[] getVersion() {
        return new String[] {"lampwright " + Release.version()};
    }
}
