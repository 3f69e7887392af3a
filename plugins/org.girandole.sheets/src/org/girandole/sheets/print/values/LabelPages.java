package org.girandole.sheets.print.values;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.girandole.plan.script.LabelGrid;
import org.girandole.sheets.print.values.TubeLabels.Label;

/**
 * Labels laid out on sheets of paper. Every position begins a new sheet, so that its crew can take it along.
 *
 * @param grid where labels lie on the paper
 * @param plainPaper whether the labels are still to be cut out
 */
public record LabelPages(LabelGrid grid, boolean plainPaper, List<PositionPages> positions) {
	/** Labels on plain paper, to be cut out: they fit on A4 and on Letter, below the page's head and above its foot. */
	public static final LabelGrid PLAIN = new LabelGrid(3, 6, 0.060, 0.040, 0.013, 0.021, 0.002, 0);

	public LabelPages {
		positions = List.copyOf(positions);
	}

	/** The sheets of paper of one position, each with its labels row by row. */
	public record PositionPages(String position, List<List<Label>> pages) {
		public PositionPages {
			pages = pages.stream().map(List::copyOf).toList();
		}

		/** How many labels there are. */
		public int labels() {
			return pages.stream().mapToInt(List::size).sum();
		}
	}

	/** These labels on label paper, or on plain paper when there is no grid of a label paper. */
	public static LabelPages of(TubeLabels labels, Optional<LabelGrid> written) {
		LabelGrid grid = written.orElse(PLAIN);
		int onAPage = grid.across() * grid.down();
		List<PositionPages> positions = new ArrayList<>();
		for (TubeLabels.PositionPart part : labels.positions()) {
			List<List<Label>> pages = new ArrayList<>();
			for (int first = 0; first < part.labels().size(); first += onAPage) {
				pages.add(part.labels().subList(first, Math.min(first + onAPage, part.labels().size())));
			}
			positions.add(new PositionPages(part.position(), pages));
		}
		return new LabelPages(grid, written.isEmpty(), positions);
	}

	/** From the paper's left edge to label {@code index} of a page, counted from 0, metres. */
	public double leftM(int index) {
		return grid.leftM() + index % grid.across() * (grid.widthM() + grid.gapAcrossM());
	}

	/** From the paper's top edge to label {@code index} of a page, counted from 0, metres. */
	public double topM(int index) {
		return grid.topM() + index / grid.across() * (grid.heightM() + grid.gapDownM());
	}
}
