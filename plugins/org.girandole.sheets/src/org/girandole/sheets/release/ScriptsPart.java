package org.girandole.sheets.release;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.script.InputFile;

/** {@code scripts/}: what the plan was read from, so that a later release can be compared with this one. Sound is left out, for it is large. */
final class ScriptsPart implements ReleasePart {
    static final String FOLDER = "scripts/";
    private static final Set<String> SOUND = Set.of("wav", "wave", "aif", "aiff", "au", "flac", "mp3", "ogg", "m4a");

    private final Optional<ReleaseOrder.Origin> origin;

    ScriptsPart(Optional<ReleaseOrder.Origin> origin) {
        this.origin = origin;
    }

    /** Whether the input lies in a release. */
    static boolean holds(InputFile input) {
        return !SOUND.contains(input.path().substring(input.path().lastIndexOf('.') + 1).toLowerCase(Locale.ROOT));
    }

    @Override
    public List<String> write(CheckedPlan checked, String toolVersion, ReleaseFolder folder) throws IOException {
        if (origin.isPresent()) {
            for (InputFile input : checked.plan().script().inputs()) {
                if (holds(input)) {
                    copy(input, origin.get().root(), folder);
                }
            }
        }
        return List.of();
    }

    private static void copy(InputFile input, Path root, ReleaseFolder folder) throws IOException {
        byte[] bytes = Files.readAllBytes(root.resolve(input.path()));
        if (!HexFormat.of().formatHex(Hashes.sha256().digest(bytes)).equals(input.sha256())) {
            throw new IOException("'" + input.path() + "' was changed while the show was being released. Release it again");
        }
        folder.write(FOLDER + input.path(), out -> out.write(bytes));
    }
}
