package org.girandole.plan.table;

import static org.girandole.plan.table.TableFormat.CLOCK;
import static org.girandole.plan.table.TableFormat.FRAMES;
import static org.girandole.plan.table.TableFormat.GRAMS;
import static org.girandole.plan.table.TableFormat.INCHES;
import static org.girandole.plan.table.TableFormat.KILOGRAMS;
import static org.girandole.plan.table.TableFormat.MILLIMETRES;
import static org.girandole.plan.table.TableFormat.MILLISECONDS;
import static org.girandole.plan.table.TableFormat.SECONDS;
import static org.girandole.plan.table.TableFormat.TIMECODE;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.girandole.plan.PlannedCue;
import org.girandole.plan.script.Module;

/** Everything that a column of a firing table can hold. */
public enum TableField {
    NUMBER("number", "number of the cue over the whole show, from 1", row -> Cell.of(row.cue().number())),
    KEY("key", "the cue's stable name", row -> Cell.of(row.cue().key())),
    NAME("name", "the name that the script gave the cue", row -> text(row.cue().cueName())),
    SHOW("show", "label of the show", row -> Cell.of(row.plan().script().show().label())),
    STAMP("stamp", "the release stamp as it is printed on sheets", row -> Cell.of(row.plan().stamp().printed())),
    SLOT("slot", "slot of the controller", row -> Cell.of(row.cue().slot())),
    SOUNDTRACK("soundtrack", "name of the soundtrack", row -> Cell.of(row.cue().soundtrack())),
    SECTION("section", "section of the score", row -> Cell.of(row.cue().section())),
    FIRE("fire", "when the igniter is fired",
            (row, format) -> Values.moment(row.cue().timing().fireUs(), format, row.soundtrack()),
            TIMECODE, CLOCK, SECONDS, MILLISECONDS, FRAMES),
    REMAINDER("remainder", "milliseconds from the beginning of the frame that contains the firing to the firing",
            row -> Values.remainder(row.cue().timing().fireUs(), row.soundtrack())),
    SEEN("seen", "when the audience sees it, or hears it",
            (row, format) -> Values.moment(row.cue().timing().seenUs(), format, row.soundtrack()),
            CLOCK, TIMECODE, SECONDS, MILLISECONDS, FRAMES),
    MODE("mode", "seen or heard", row -> Cell.of(row.cue().timing().mode().name().toLowerCase(Locale.ROOT))),
    RISE("rise", "firing to burst", (row, format) -> Values.span(row.cue().timing().riseUs(), format), SECONDS, MILLISECONDS),
    RISE_SOURCE("rise source", "where the rise comes from: lot, catalogue, estimated, or none",
            row -> Cell.of(row.cue().timing().riseSource().name().toLowerCase(Locale.ROOT))),
    LATENCY("latency", "latency of the firing system",
            (row, format) -> Values.span(row.cue().timing().latencyUs(), format), SECONDS, MILLISECONDS),
    SOUND("sound", "travel of the sound, for what is heard",
            (row, format) -> Values.span(row.cue().timing().soundUs(), format), SECONDS, MILLISECONDS),
    TOLERANCE("tolerance", "worst-case error of the moment",
            (row, format) -> Values.span(row.cue().timing().toleranceUs(), format), SECONDS, MILLISECONDS),
    MODULE("module", "name of the module", row -> pin(row, pin -> Cell.of(pin.module()))),
    ADDRESS("address", "what the controller calls the module", row -> pin(row, pin -> Cell.of(address(row, pin.module())))),
    PIN("pin", "pin of the module, from 1", row -> pin(row, pin -> Cell.of(pin.pin()))),
    POSITION("position", "position on the site", row -> Cell.of(row.cue().position())),
    RACK("rack", "name of the rack", row -> tube(row, tube -> Cell.of(tube.rack()))),
    TUBE("tube", "tube of the rack, from 1; for a chain the first of its tubes", row -> tube(row, tube -> Cell.of(tube.tube()))),
    TILT("tilt", "degrees from the vertical; to the side, positive to the right as the audience sees it",
            row -> Values.measured(row.cue().aim().tiltDeg(), 1)),
    EFFECT("effect", "name of the effect or chain", row -> Cell.of(row.cue().what())),
    EFFECT_LABEL("effect label", "label of the effect or chain", row -> Cell.of(row.cue().label())),
    KIND("kind", "kind of effect, such as shell", row -> Cell.of(row.cue().effect().kind().word())),
    COLOUR("colour", "colour as the catalogue says it", row -> text(row.cue().effect().colour())),
    CALIBRE("calibre", "inside diameter of the tube it is made for",
            (row, format) -> row.cue().effect().calibreM().map(m -> Values.small(m, format)).orElse(Cell.EMPTY), MILLIMETRES, INCHES),
    PIECES("pieces", "pieces of pyrotechnics that this firing uses", row -> Cell.of(row.cue().pieces())),
    LOT("lot", "lot the item is drawn from", row -> text(row.cue().lot())),
    CHARGE("charge", "net explosive content of this firing",
            (row, format) -> row.cue().effect().chargeKg().map(kg -> Values.mass(kg * row.cue().pieces(), format)).orElse(Cell.EMPTY),
            GRAMS, KILOGRAMS),
    HAZARD("hazard", "hazard class", row -> text(row.cue().effect().hazardClass())),
    OHMS("ohms", "expected continuity reading of the pin, ohms",
            row -> row.cue().circuit().map(c -> Values.measured(c.loopOhm(), 2)).orElse(Cell.EMPTY)),
    AMPERES("amperes", "current in each igniter at firing",
            row -> row.cue().circuit().map(c -> Values.measured(c.currentA(), 2)).orElse(Cell.EMPTY)),
    NOTE("note", "the note of the cue line", row -> text(row.cue().script().note())),
    SOURCE("source", "where the cue is written, file:line:column", row -> Cell.of(row.cue().source().toString()));

    private final String id;
    private final String meaning;
    private final List<TableFormat> formats;
    private final BiFunction<Row, TableFormat, Cell> value;

    TableField(String id, String meaning, Function<Row, Cell> value) {
        this(id, meaning, (row, format) -> value.apply(row));
    }

    TableField(String id, String meaning, BiFunction<Row, TableFormat, Cell> value, TableFormat... formats) {
        this.id = id;
        this.meaning = meaning;
        this.formats = List.of(formats);
        this.value = value;
    }

    /** The words of the language. */
    public String id() {
        return id;
    }

    /** For help and documentation. */
    public String meaning() {
        return meaning;
    }

    /** The formats it may be written in, the usual one first; empty when there is only one way. */
    public List<TableFormat> formats() {
        return formats;
    }

    /** The field of this id; a hyphen does for a space. */
    public static Optional<TableField> find(String id) {
        String words = id.replace('-', ' ');
        return Arrays.stream(values()).filter(field -> field.id.equals(words)).findFirst();
    }

    /** The format of this name, or the usual one for no name; empty when the field cannot be written so. */
    Optional<TableFormat> format(String name) {
        if (name.isEmpty()) {
            // A field with one form ignores the format it is given.
            return Optional.of(formats.isEmpty() ? SECONDS : formats.get(0));
        }
        return TableFormat.find(name).filter(formats::contains);
    }

    Cell cell(Row row, TableFormat format) {
        return value.apply(row, format);
    }

    private static Cell text(Optional<String> value) {
        return value.map(Cell::of).orElse(Cell.EMPTY);
    }

    private static Cell pin(Row row, Function<PlannedCue.Pin, Cell> value) {
        return row.cue().pin().map(value).orElse(Cell.EMPTY);
    }

    private static Cell tube(Row row, Function<PlannedCue.Tube, Cell> value) {
        return row.cue().tube().map(value).orElse(Cell.EMPTY);
    }

    private static String address(Row row, String module) {
        return row.plan().script().modules().stream().filter(m -> m.name().equals(module)).map(Module::address).findFirst()
                .orElse(module);
    }
}
