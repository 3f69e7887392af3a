package org.girandole.protocol;

/** @param uri of the script's document */
public record ScriptParams(String uri) {
}
