package org.girandole.sheets.json;

import com.google.gson.FormattingStyle;
import com.google.gson.Strictness;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;

/** Writes JSON the same way everywhere: two spaces, line feeds, nulls kept, numbers never in scientific form. */
public final class JsonText {
    private final JsonWriter out;

    /** Over a writer that stays open. */
    public JsonText(Writer writer) {
        out = new JsonWriter(writer);
        out.setFormattingStyle(FormattingStyle.PRETTY.withIndent("  ").withNewline("\n"));
        out.setStrictness(Strictness.STRICT);
        out.setHtmlSafe(false);
        out.setSerializeNulls(true);
    }

    public JsonText object() throws IOException {
        out.beginObject();
        return this;
    }

    public JsonText object(String name) throws IOException {
        out.name(name).beginObject();
        return this;
    }

    public JsonText endObject() throws IOException {
        out.endObject();
        return this;
    }

    public JsonText array(String name) throws IOException {
        out.name(name).beginArray();
        return this;
    }

    public JsonText endArray() throws IOException {
        out.endArray();
        return this;
    }

    public JsonText field(String name, String value) throws IOException {
        out.name(name).value(value);
        return this;
    }

    public JsonText field(String name, long value) throws IOException {
        out.name(name).value(value);
        return this;
    }

    public JsonText field(String name, boolean value) throws IOException {
        out.name(name).value(value);
        return this;
    }

    /** A text, a whole number, or null when there is none. */
    public JsonText field(String name, Optional<?> value) throws IOException {
        out.name(name);
        Object known = value.orElse(null);
        if (known instanceof Number number) {
            out.value(number);
        } else if (known == null) {
            out.nullValue();
        } else {
            out.value(known.toString());
        }
        return this;
    }

    /** A text of an array. */
    public JsonText item(String value) throws IOException {
        out.value(value);
        return this;
    }

    /** A number rounded half up to so many places; null when it is not a number at all. */
    public JsonText field(String name, double value, int places) throws IOException {
        out.name(name);
        if (Double.isFinite(value)) {
            out.value(BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_UP));
        } else {
            out.nullValue();
        }
        return this;
    }

    /** Ends the document with a line feed. */
    public void end(Writer writer) throws IOException {
        out.flush();
        writer.write('\n');
        writer.flush();
    }
}
