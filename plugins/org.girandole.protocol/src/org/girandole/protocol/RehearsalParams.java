package org.girandole.protocol;

/**
 * @param uri of the script's document
 * @param name of the rehearsal; null to ask only which there are
 */
public record RehearsalParams(String uri, String name) {
}
