package dev.lampwright.broker;

import java.nio.file.Path;

/**
 * A certificate that says who we are, and its key. Both are read at each connect, so that a renewed one counts without a restart.
 *
 * @param certificateFile PEM file with the certificate, and after it those that vouch for it, if the broker has not got them
 * @param keyFile PEM file with its key: PKCS #8, not encrypted; never logged
 */
public record OwnCertificate(Path certificateFile, Path keyFile) {}
