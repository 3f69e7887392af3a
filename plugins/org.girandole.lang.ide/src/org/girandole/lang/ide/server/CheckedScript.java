package org.girandole.lang.ide.server;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.girandole.lang.check.CheckedShow;
import org.girandole.plan.Plan;

/**
 * A script with everything found about it.
 *
 * @param uri the script, as the client names it
 * @param root the project folder; files in findings are relative to it
 * @param texts the text that was checked of each file, by its path relative to the root
 */
public record CheckedScript(String uri, Path root, CheckedShow show, Map<String, CheckedText> texts) {
    public CheckedScript {
        texts = Map.copyOf(texts);
    }

    /** The plan, when the script has a show and could be planned. */
    public Optional<Plan> plan() {
        return show.plan().map(checked -> checked.plan());
    }

    /** Paths of all files of the show, relative to the root, in order. */
    public List<String> files() {
        return texts.keySet().stream().sorted().toList();
    }
}
