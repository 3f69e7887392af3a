package org.girandole.sheets.release;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.girandole.plan.script.InputFile;

/**
 * What {@code release.json} says.
 *
 * @param script the script that was planned, when the release holds it
 * @param files every file but {@code release.json} itself, by path
 * @param findings as they stand there
 */
record ReleaseIndex(String version, String show, String label, String stamp, String stampPrinted, List<InputFile> inputs,
        Optional<String> script, SortedMap<String, ReleasedFile> files, int cues, JsonArray findings) {
    ReleaseIndex {
        inputs = List.copyOf(inputs);
        files = Collections.unmodifiableSortedMap(new TreeMap<>(files));
    }

    /**
     * Reads the index of a release folder.
     *
     * @throws IndexException when there is none or it is not one of ours
     */
    static ReleaseIndex read(Path folder) throws IndexException, IOException {
        Path file = folder.resolve(ReleaseJson.NAME);
        if (!Files.isRegularFile(file)) {
            throw new IndexException("It holds no " + ReleaseJson.NAME + ".");
        }
        try {
            JsonObject json = JsonParser.parseString(Files.readString(file, StandardCharsets.UTF_8)).getAsJsonObject();
            if (!ReleaseJson.GENERATOR.equals(text(json, "generator"))) {
                throw new IndexException("Its " + ReleaseJson.NAME + " is not one of Girandole's.");
            }
            return of(json);
        } catch (JsonParseException | IllegalStateException | NullPointerException | UnsupportedOperationException | ClassCastException
                | NumberFormatException | CharacterCodingException e) {
            throw new IndexException("Its " + ReleaseJson.NAME + " cannot be read as one of Girandole's.");
        }
    }

    private static ReleaseIndex of(JsonObject json) {
        List<InputFile> inputs = new ArrayList<>();
        for (JsonElement input : json.getAsJsonArray("inputs")) {
            inputs.add(new InputFile(text(input.getAsJsonObject(), "path"), text(input.getAsJsonObject(), "sha256")));
        }
        SortedMap<String, ReleasedFile> files = new TreeMap<>();
        for (JsonElement element : json.getAsJsonArray("files")) {
            JsonObject file = element.getAsJsonObject();
            files.put(text(file, "path"), new ReleasedFile(text(file, "path"), file.get("bytes").getAsLong(), text(file, "sha256")));
        }
        return new ReleaseIndex(text(json, "version"), text(json, "show"), text(json, "label"), text(json, "stamp"),
                text(json, "stampPrinted"), inputs, optional(json, "script"), files, json.getAsJsonObject("counts").get("cues").getAsInt(),
                json.getAsJsonArray("findings"));
    }

    /** Releases of earlier versions do not have the field. */
    private static Optional<String> optional(JsonObject json, String field) {
        return Optional.ofNullable(json.get(field)).filter(value -> !value.isJsonNull()).map(JsonElement::getAsString);
    }

    private static String text(JsonObject json, String field) {
        return json.get(field).getAsString();
    }

    /** The folder has no index that can be read; the message is a sentence about the folder. */
    static final class IndexException extends Exception {
        private static final long serialVersionUID = 1;

        IndexException(String message) {
            super(message);
        }
    }
}
