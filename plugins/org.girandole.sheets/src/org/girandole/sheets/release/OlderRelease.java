package org.girandole.sheets.release;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;

/** Tells whether a folder holds a release and nothing else, so that replacing it loses nothing that anybody made by hand. */
final class OlderRelease {
    private OlderRelease() {
    }

    /**
     * Passes when everything in the folder is an unchanged part of an older release.
     *
     * @throws ReleaseException when the folder holds anything else
     */
    static void check(Path folder) throws ReleaseException, IOException {
        SortedMap<String, String> hashes = hashes(folder);
        List<Path> there;
        try (Stream<Path> walk = Files.walk(folder)) {
            there = walk.filter(path -> !Files.isDirectory(path)).sorted().toList();
        }
        for (Path file : there) {
            String path = folder.relativize(file).toString().replace(file.getFileSystem().getSeparator(), "/");
            if (path.equals(ReleaseJson.NAME)) {
                continue;
            }
            String hash = hashes.get(path);
            if (hash == null) {
                throw refuse(folder, "It holds '" + path + "', which no release wrote.");
            }
            if (!hash.equals(Hashes.of(file))) {
                throw refuse(folder, "'" + path + "' was changed after it was released.");
            }
        }
    }

    private static SortedMap<String, String> hashes(Path folder) throws ReleaseException, IOException {
        Path index = folder.resolve(ReleaseJson.NAME);
        if (!Files.isRegularFile(index)) {
            throw refuse(folder, "It is not empty and holds no " + ReleaseJson.NAME + ".");
        }
        try {
            JsonObject json = JsonParser.parseString(Files.readString(index, StandardCharsets.UTF_8)).getAsJsonObject();
            if (!ReleaseJson.GENERATOR.equals(json.get("generator").getAsString())) {
                throw refuse(folder, "Its " + ReleaseJson.NAME + " is not one of Girandole's.");
            }
            SortedMap<String, String> hashes = new TreeMap<>();
            for (JsonElement file : json.getAsJsonArray("files")) {
                hashes.put(file.getAsJsonObject().get("path").getAsString(), file.getAsJsonObject().get("sha256").getAsString());
            }
            return hashes;
        } catch (JsonParseException | IllegalStateException | NullPointerException | UnsupportedOperationException
                | java.nio.charset.CharacterCodingException e) {
            throw refuse(folder, "Its " + ReleaseJson.NAME + " cannot be read as one of Girandole's.");
        }
    }

    private static ReleaseException refuse(Path folder, String why) {
        return new ReleaseException(ReleaseException.Reason.FOLDER, "Nothing was released: the folder '" + folder
                + "' is not an older release that can be replaced. " + why
                + " Release into a new folder, or move this one away.");
    }
}
