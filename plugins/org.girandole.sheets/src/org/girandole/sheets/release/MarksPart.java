package org.girandole.sheets.release;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Plan;
import org.girandole.plan.PlannedSoundtrack;
import org.girandole.plan.script.ReleaseSpec;
import org.girandole.sheets.sound.MarkFiles;

/** {@code marks/}: the marks of each soundtrack in the forms that the script asks for. */
final class MarksPart implements ReleasePart {
    @Override
    public List<String> write(CheckedPlan checked, String toolVersion, ReleaseFolder folder) throws IOException {
        Plan plan = checked.plan();
        List<String> leftOut = new ArrayList<>();
        List<String> forms = plan.script().release().map(ReleaseSpec::marks).orElse(List.of()).stream().distinct().toList();
        if (forms.isEmpty()) {
            return leftOut;
        }
        for (PlannedSoundtrack soundtrack : plan.soundtracks()) {
            MarkFiles files = MarkFiles.of(soundtrack);
            files.beforeFirstNote().forEach(name -> leftOut.add("mark " + name + " of " + soundtrack.name()
                    + " in the files of marks: it lies before the first note, where they begin"));
            String path = "marks/" + SoundtrackFiles.name(plan, soundtrack);
            for (String form : forms) {
                write(form, path, soundtrack, files, folder, leftOut);
            }
        }
        return leftOut;
    }

    private static void write(String form, String path, PlannedSoundtrack soundtrack, MarkFiles files, ReleaseFolder folder,
            List<String> leftOut) throws IOException {
        switch (form) {
            case "midi" -> {
                folder.write(path + ".mid", out -> out.write(files.midi()));
                if (soundtrack.tempo().isPresent() && !files.hasMidiTempo()) {
                    leftOut.add("tempo of " + soundtrack.name() + " in the MIDI file: its first bar lies before the first note, where the file"
                            + " begins");
                }
            }
            case "labels" -> folder.write(path + ".txt", out -> out.write(files.labels()));
            case "cues" -> folder.write(path + "-cues.wav", files::cues);
            default -> leftOut.add("marks as " + form);
        }
    }
}
