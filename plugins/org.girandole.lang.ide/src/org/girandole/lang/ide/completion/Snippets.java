package org.girandole.lang.ide.completion;

import java.util.List;

/** Beginnings of every construct. Numbers in them are examples that a person must replace; none is a recommendation. */
final class Snippets {
    /** One beginning. */
    record Snippet(String label, String text, String detail) {
    }

    static final List<Snippet> TOP = List.of(
            s("use a file", "use \"${1:catalogue/house.show}\"", "joins another script"),
            s("show block", "show ${1:Name} \"${2:Title}\" {\n  on ${3:2027-06-19} at ${4:22:30} zone \"${5:Europe/Lisbon}\"\n"
                    + "  site ${6:Site}\n  firing system ${7:System}\n  sync within ${8:100 ms}\n  separation by ${9:UsTable}\n}", "the show itself"),
            s("soundtrack block", "soundtrack ${1:Name} {\n  length   ${2:4:10.000}\n  timecode ${3:25} fps from ${4:10:00:00:00}\n"
                    + "  preroll  ${5:60} s\n  tempo {\n    at ${6:0:02.000}  ${7:120} bpm ${8:4/4}\n  }\n  mark ${9:Start} at bar ${10:5}\n}",
                    "music, timecode and marks"),
            effect("shell", "  calibre ${3:75 mm}\n  rise    ${4:2.4 s} +- ${5:0.15 s}\n  apex    ${6:105 m}\n  spread  ${7:70 m}\n"),
            effect("salute", "  calibre ${3:75 mm}\n  rise    ${4:2.4 s} +- ${5:0.15 s}\n  apex    ${6:100 m}\n  report\n"),
            effect("mine", "  calibre ${3:75 mm}\n"), effect("comet", "  calibre ${3:45 mm}\n"),
            effect("candle", "  calibre ${3:30 mm}\n  shots   ${4:8} every ${5:2.5 s}\n"),
            effect("cake", "  calibre ${3:30 mm}\n  shots   ${4:25} over ${5:20 s}\n"), effect("fountain", ""), effect("wheel", ""),
            effect("flare", ""), effect("rocket", "  calibre ${3:75 mm}\n  rise    ${4:3 s} +- ${5:0.3 s}\n"),
            s("lot block", "lot ${1:Name} of ${2:Effect} { count ${3:24}  rise ${4:2.5 s} +- ${5:0.1 s} }", "what is on the shelf, as measured"),
            s("chain block", "chain ${1:Name} of ${2:8} ${3:Effect} { gap ${4:250 ms} +- ${5:8 %}  lead ${6:100 ms} }", "fused together, one igniter"),
            s("site block", "site ${1:Name} {\n  position ${2:A} at (${3:0 m}, ${4:0 m})\n  audience ${5:Front} along (${6:-100 m}, ${7:-200 m})"
                    + " (${8:100 m}, ${9:-200 m})\n  wind from ${10:240} deg at ${11:5} m/s gusting ${12:8} m/s\n  air ${13:18} degC\n}",
                    "positions, audience, wind"),
            s("igniter block", "igniter ${1:Name} { resistance ${2:1.6 ohm} +- ${3:0.2 ohm}  all-fire ${4:0.5 A}  no-fire ${5:0.2 A} }",
                    "what the maker states of an igniter"),
            s("wire block", "wire ${1:Name} { gauge ${2:20} awg }", "the wire of leads"),
            s("module type block", "module type ${1:Name} { pins ${2:32}  drive ${3:24 V}  source ${4:1.2 ohm}  test ${5:10 mA}"
                    + "  at most ${6:1} igniter per pin, ${7:8} pins at once }", "a kind of firing module"),
            s("module line", "module ${1:M1} \"${2:1}\" of ${3:Type} at ${4:A}", "one module at its position"),
            s("rack block", "rack ${1:R1} at ${2:A} { ${3:10} tubes ${4:75 mm} long ${5:500 mm}  spaced ${6:160 mm} }", "tubes at a position"),
            s("firing system block", "firing system ${1:Name} { step ${2:10 ms}  latency ${3:5 ms}  clock within ${4:25 ppm}  lead ${5:Wire} slack ${6:2 m} }",
                    "the controller"),
            s("figure block", "figure ${1:Name}(${2:shot}, ${3:step}) {\n  at 0          ${4:A}  ${2:shot}\n  at 0 + ${3:step}  ${5:B}  ${2:shot}\n}",
                    "a pattern to be played"),
            s("score block", "score ${1:Soundtrack} in slot ${2:0} {\n  section ${3:Opening} from ${4:Start} to ${5:End} {\n    $0\n  }\n}", "what is fired when"),
            s("distances block", "distances ${1:Name} {\n  document \"${2:Where it comes from}\"\n  keep ${3:ground} ${4:30 m}\n}", "a distance table of your own"),
            s("table block", "table ${1:Name} {\n  file \"${2:controller.csv}\"  separator \"${3:,}\"  line ending ${4:crlf}  header ${5:yes}\n"
                    + "  column \"${6:cue}\" = ${7:number}\n}", "a firing table laid out as a controller wants it"),
            s("waiver", "waive ${1:rule} for ${2:name} at ${3:position} because \"${4:why it is safe all the same}\" by \"${5:who agreed}\" until ${6:2027-06-20}",
                    "a written agreement to live with a finding"),
            s("rule line", "rule ${1:rule} is ${2:error}", "takes a rule more seriously"),
            s("rehearse block", "rehearse \"${1:Lost code}\" {\n  timecode lost from ${2:2:10} to ${3:2:35}\n  expect no cue later than ${4:80 ms}\n}",
                    "how the night may go wrong, and what must come of it all the same"),
            s("release block", "release { sheets pdf, html  table standard  timecode wav 48 kHz  marks midi }", "what a release holds"));

    static final List<Snippet> SCORE = List.of(
            s("at a time", "at ${1:bar 1}  ${2:A}  ${3:Effect}", "a cue"),
            s("cue with a name", "cue ${1:Name} at ${2:bar 1}  ${3:A}  ${4:Effect}  note \"${5:what it is for}\"", "a cue that keeps its name"),
            s("repeat block", "repeat ${1:4} every ${2:1 bar} from ${3:bar 17} {\n  at 0  ${4:A}  ${5:Effect}\n}", "the same again and again"),
            s("play a figure", "play ${1:Figure}(${2:Effect}, ${3:1/2 beat}) at ${4:bar 29}", "a figure with its values"),
            s("hold line", "hold from ${1:2:10} to ${2:2:16} \"${3:why}\"", "nothing may fire or fall"),
            s("section block", "section ${1:Name} from ${2:bar 1} to ${3:bar 17} {\n  $0\n}", "a part of the score"));

    private Snippets() {
    }

    private static Snippet effect(String kind, String fields) {
        return s(kind + " block", kind + " ${1:Name} \"${2:Label}\" {\n" + fields
                + "  lasts   ${6:2 s}\n  charge  ${8:62 g}\n  hazard  ${9:1.3G} ${10:UN0335}\n  igniter ${11:Standard}\n}", "an effect of the catalogue");
    }

    private static Snippet s(String label, String text, String detail) {
        return new Snippet(label, text, detail);
    }
}
