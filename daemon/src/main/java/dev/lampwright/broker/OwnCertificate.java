package dev.lampwright.broker;

import java.nio.file.Path;

/**
 * Our client certificate, and its key. Both are read at each connection attempt, so that a renewed one takes effect without a restart.
 *
 * @param certificateFile PEM file with the certificate, followed by its issuers' certificates, if the broker does not have them
 * @param keyFile PEM file with its key: PKCS #8, not encrypted; never logged
 */
public record OwnCertificate(Path certificateFile, Path keyFile) {}
