package org.girandole.sheets.print.values;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;

import org.girandole.sheets.print.values.PositionLoad.GroundPiece;
import org.girandole.sheets.print.values.PositionLoad.Load;
import org.girandole.sheets.print.values.PositionLoad.RackLoad;
import org.girandole.sheets.print.values.PositionLoad.TubeLoad;

/**
 * Labels for tubes and ground pieces, to be cut out.
 *
 * @param positions in the order of the position sheets; positions with nothing to label are left out
 */
public record TubeLabels(List<PositionPart> positions) {
	public TubeLabels {
		positions = List.copyOf(positions);
	}

	/** The labels of one position, racks first, tubes from the left. */
	public record PositionPart(String position, List<Label> labels) {
		public PositionPart {
			labels = List.copyOf(labels);
		}
	}

	/**
	 * One label.
	 *
	 * @param place rack and tube, or that it stands on the ground
	 * @param cues cue numbers
	 * @param what what goes in
	 * @param set how it is set, for a person behind the rack
	 * @param code what the square code says: words separated by single spaces, each but the first {@code name=value}
	 */
	public record Label(String position, String place, String cues, String what, String set, String pin, String code) {
	}

	/** The labels for these positions under this stamp. */
	public static TubeLabels of(List<PositionLoad> loads, String stamp) {
		List<PositionPart> parts = new ArrayList<>();
		for (PositionLoad load : loads) {
			List<Label> labels = new ArrayList<>();
			for (RackLoad rack : load.racks()) {
				rack.tubes().stream().filter(tube -> !tube.loads().isEmpty()).forEach(tube -> labels.add(label(load.position(), rack, tube, stamp)));
			}
			load.ground().forEach(piece -> labels.add(label(load.position(), piece, stamp)));
			if (!labels.isEmpty()) {
				parts.add(new PositionPart(load.position(), labels));
			}
		}
		return new TubeLabels(parts);
	}

	private static Label label(String position, RackLoad rack, TubeLoad tube, String stamp) {
		String cues = tube.loads().stream().map(load -> String.valueOf(load.cue())).collect(Collectors.joining(", "));
		return new Label(position, rack.name() + " · " + tube.number(), cues, each(tube, load -> load.effect()
				+ (load.chainPart().isEmpty() ? "" : " (" + load.chainPart() + ")")), each(tube, load -> load.lean().words()),
				each(tube, Load::pin), code(stamp, position, "rack=" + rack.name() + " tube=" + tube.number(), cues));
	}

	private static Label label(String position, GroundPiece piece, String stamp) {
		String cue = String.valueOf(piece.cue());
		return new Label(position, "ground", cue, piece.what(), piece.lean().words(), piece.pin(), code(stamp, position, "ground", cue));
	}

	private static String each(TubeLoad tube, Function<Load, String> words) {
		return tube.loads().stream().map(words).distinct().collect(Collectors.joining(" / "));
	}

	private static String code(String stamp, String position, String place, String cues) {
		return "GIRANDOLE1 stamp=" + stamp + " position=" + position + " " + place + " cue=" + cues.replace(" ", "");
	}
}
