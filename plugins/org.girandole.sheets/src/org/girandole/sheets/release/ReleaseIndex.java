package org.girandole.sheets.release;

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
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.girandole.plan.ReleaseStamp;
import org.girandole.plan.script.InputFile;

/**
 * What the {@code release.json} of a folder says.
 *
 * @param hashes SHA-256 of every other file of the release, by path
 */
record ReleaseIndex(ReleaseStamp stamp, List<InputFile> inputs, SortedMap<String, String> hashes) {
    /** Reads the index of a folder. */
    static ReleaseIndex read(Path folder) throws Unreadable, IOException {
        Path index = folder.resolve(ReleaseJson.NAME);
        if (!Files.isRegularFile(index)) {
            throw new Unreadable("It is not empty and holds no " + ReleaseJson.NAME + ".");
        }
        try {
            JsonObject json = JsonParser.parseString(Files.readString(index, StandardCharsets.UTF_8)).getAsJsonObject();
            if (!ReleaseJson.GENERATOR.equals(json.get("generator").getAsString())) {
                throw new Unreadable("Its " + ReleaseJson.NAME + " is not one of Girandole's.");
            }
            ReleaseStamp stamp = new ReleaseStamp(json.get("stamp").getAsString());
            if (!stamp.full().matches("[0-9a-f]{64}")) {
                throw new Unreadable("The stamp in its " + ReleaseJson.NAME + " is none.");
            }
            List<InputFile> inputs = new ArrayList<>();
            for (JsonElement input : json.getAsJsonArray("inputs")) {
                inputs.add(new InputFile(text(input, "path"), text(input, "sha256")));
            }
            SortedMap<String, String> hashes = new TreeMap<>();
            for (JsonElement file : json.getAsJsonArray("files")) {
                hashes.put(text(file, "path"), text(file, "sha256"));
            }
            return new ReleaseIndex(stamp, List.copyOf(inputs), hashes);
        } catch (JsonParseException | IllegalStateException | NullPointerException | UnsupportedOperationException
                | CharacterCodingException e) {
            throw new Unreadable("Its " + ReleaseJson.NAME + " cannot be read as one of Girandole's.");
        }
    }

    private static String text(JsonElement object, String name) {
        return object.getAsJsonObject().get(name).getAsString();
    }

    /** The files that lie in a folder beside its index, as paths with forward slashes, sorted. */
    static List<String> filesIn(Path folder) throws IOException {
        try (Stream<Path> walk = Files.walk(folder)) {
            return walk.filter(path -> !Files.isDirectory(path))
                    .map(file -> folder.relativize(file).toString().replace(file.getFileSystem().getSeparator(), "/"))
                    .filter(path -> !path.equals(ReleaseJson.NAME)).sorted().toList();
        }
    }

    /** The folder has no index of ours; the message is a sentence about the folder. */
    static final class Unreadable extends Exception {
        private static final long serialVersionUID = 1;

        Unreadable(String message) {
            super(message);
        }
    }
}
