package org.girandole.sheets.diff;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.girandole.plan.CheckedPlan;
import org.girandole.plan.Severity;
import org.girandole.plan.diff.DiffReport;
import org.girandole.plan.diff.DiffReporter;
import org.girandole.plan.diff.PlanDiff;
import org.girandole.sheets.SmallShow;
import org.junit.jupiter.api.Test;

class DiffFormatTest {
    @Test
    void jsonIsValidByItsSchema() throws IOException {
        CheckedPlan before = new SmallShow().checked();
        CheckedPlan after = new SmallShow().findings(SmallShow.finding(Severity.ERROR, "a"),
                SmallShow.waived(SmallShow.finding(Severity.WARNING, "b"))).checked();
        String changed = json(DiffReporter.report(PlanDiff.between(before, after), before, after));

        assertThat(schema().validate(changed, InputFormat.JSON)).isEmpty();
        assertThat(schema().validate(json(DiffReporter.report(PlanDiff.between(before, before), before, before)), InputFormat.JSON)).isEmpty();
        assertThat(changed).contains("\"For safety\"");
        assertThat(schema().validate(changed.replace("For safety", "For fun"), InputFormat.JSON)).isNotEmpty();
        assertThat(schema().validate(changed.replace("\"headline\"", "\"head\""), InputFormat.JSON)).isNotEmpty();
        assertThat(schema().validate(changed.replace("\"schema\": 1", "\"schema\": 2"), InputFormat.JSON)).isNotEmpty();
    }

    @Test
    void wordsOfTheScriptStayWordsInEveryForm() throws IOException {
        DiffReport report = new DiffReport("a, stamp 0000-0000", "b, stamp 0000-0001", "<b> & *c*",
                List.of(new DiffReport.Part("For the crew", List.of(new DiffReport.Entry("<script>x</script>", List.of("[d](e)"))))));

        assertThat(text(DiffFormat.HTML, report)).contains("&lt;script&gt;x&lt;/script&gt;").doesNotContain("<script>");
        assertThat(text(DiffFormat.MARKDOWN, report)).contains("\\[d\\](e)").contains("\\*c\\*").contains("\\<script\\>");
        assertThat(schema().validate(json(report), InputFormat.JSON)).isEmpty();
    }

    private static String json(DiffReport report) throws IOException {
        return text(DiffFormat.JSON, report);
    }

    private static String text(DiffFormat format, DiffReport report) throws IOException {
        StringWriter out = new StringWriter();
        format.write(report, out);
        return out.toString();
    }

    private static JsonSchema schema() throws IOException {
        return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(Files.readString(Path.of("../../docs/diff.schema.json")));
    }
}
