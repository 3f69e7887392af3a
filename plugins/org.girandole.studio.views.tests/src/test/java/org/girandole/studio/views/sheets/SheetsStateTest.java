package org.girandole.studio.views.sheets;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.girandole.protocol.SheetList;
import org.girandole.protocol.SheetPage;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class SheetsStateTest {
    private final int[] asked = new int[1];
    private final SheetsState state = new SheetsState(() -> asked[0]++);

    @BeforeEach
    void list() {
        state.list(list("1", "2 0", "3"));
    }

    private static SheetList list(String... ids) {
        return new SheetList("u", null, "stamp", List.of(ids).stream().map(id -> new SheetList.Entry(id, "f" + id, "Title " + id)).toList());
    }

    private static SheetPage page(String id, int page, int pages) {
        return new SheetPage(null, id, "Title", page, pages, 10, 10, "");
    }

    @Test
    void pagesGoOnIntoTheNextSheet() {
        assertThat(asked[0]).isEqualTo(1);
        state.page(page("1", 1, 2));
        state.step(1);
        assertThat(state.wantedPage()).isEqualTo(2);
        state.page(page("1", 2, 2));
        state.step(1);
        assertThat(state.chosen()).map(SheetList.Entry::id).contains("2 0");
        assertThat(state.wantedPage()).isEqualTo(1);
        state.step(-1);
        assertThat(state.chosen()).map(SheetList.Entry::id).contains("1");
    }

    @Test
    void aPageThatComesTooLateIsDropped() {
        state.choose(2);
        assertThat(state.page(page("1", 1, 2))).isFalse();
        assertThat(state.page(page("3", 1, 1))).isTrue();
        assertThat(state.words()).contains("Title 3, page 1 of 1", "not released");
    }

    @Test
    void theSameSheetStaysChosenAfterAnEdit() {
        state.choose(2);
        state.list(list("1", "3"));
        assertThat(state.chosen()).map(SheetList.Entry::id).contains("3");
        state.list(list("1"));
        assertThat(state.chosen()).map(SheetList.Entry::id).contains("1");
        state.list(SheetList.nothing("u", "no show here"));
        assertThat(state.words()).isEqualTo("no show here");
        state.step(1);
        assertThat(state.chosen()).isEmpty();
    }
}
