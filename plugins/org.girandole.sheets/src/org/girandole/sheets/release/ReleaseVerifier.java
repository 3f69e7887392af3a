package org.girandole.sheets.release;

import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.girandole.plan.ReleaseStamp;

/**
 * Proves that a release folder is whole and as it was written, and that what is in it belongs together. It cannot tell a folder that
 * somebody wrote anew from end to end, {@code release.json} and all: for that, compare the stamp with one that was told another way.
 */
public final class ReleaseVerifier {
    private ReleaseVerifier() {
    }

    /**
     * Verifies a folder.
     *
     * @throws IOException when files cannot be read
     */
    public static Verification verify(Path folder) throws IOException {
        ReleaseIndex index;
        try {
            index = ReleaseIndex.read(folder);
        } catch (ReleaseIndex.Unreadable e) {
            return new Verification("", 0, List.of("'" + folder + "' is no release. " + e.getMessage()));
        }
        List<String> there = ReleaseIndex.filesIn(folder);
        List<String> troubles = new ArrayList<>();
        for (Map.Entry<String, String> file : index.hashes().entrySet()) {
            if (!there.contains(file.getKey())) {
                troubles.add("'" + file.getKey() + "' is missing.");
            } else if (!Hashes.of(folder.resolve(file.getKey())).equals(file.getValue())) {
                troubles.add("'" + file.getKey() + "' was changed after it was released.");
            }
        }
        TreeSet<String> foreign = new TreeSet<>(there);
        foreign.removeAll(index.hashes().keySet());
        foreign.forEach(file -> troubles.add("'" + file + "' is no part of the release."));
        stamps(folder, index, there, troubles);
        return new Verification(index.stamp().printed(), index.hashes().size() + 1, troubles);
    }

    private static void stamps(Path folder, ReleaseIndex index, List<String> there, List<String> troubles) throws IOException {
        if (!ReleaseStamp.of(index.inputs()).equals(index.stamp())) {
            troubles.add("The stamp in '" + ReleaseJson.NAME + "' is not that of the inputs it lists.");
        }
        for (String file : there) {
            if (file.equals(PlanPart.NAME) && !planStamp(folder.resolve(file)).equals(index.stamp().full())) {
                troubles.add("'" + file + "' carries another stamp.");
            }
            if (file.endsWith(".html") && !Files.readString(folder.resolve(file), StandardCharsets.UTF_8).contains(index.stamp().printed())) {
                troubles.add("'" + file + "' does not carry the stamp " + index.stamp().printed() + ".");
            }
        }
    }

    private static String planStamp(Path plan) throws IOException {
        try {
            return JsonParser.parseString(Files.readString(plan, StandardCharsets.UTF_8)).getAsJsonObject().get("stamp").getAsString();
        } catch (JsonParseException | IllegalStateException | NullPointerException | UnsupportedOperationException e) {
            return "";
        }
    }

    /**
     * What was found.
     *
     * @param stamp the printed stamp, empty when the folder is no release
     * @param files how many files belong to the release
     * @param troubles one sentence each; none when the folder is whole and unaltered
     */
    public record Verification(String stamp, int files, List<String> troubles) {
        public Verification {
            troubles = List.copyOf(troubles);
        }
    }
}
