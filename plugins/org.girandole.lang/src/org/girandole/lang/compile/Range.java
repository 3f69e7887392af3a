package org.girandole.lang.compile;

import java.math.BigDecimal;

/**
 * What a quantity of the language may be. The limits only catch slips of a digit or a unit: they are wide, common practice without a
 * source, and no statement about what is safe.
 *
 * @param what the quantity, with article
 * @param least smallest value allowed, SI
 * @param most largest value allowed, SI
 * @param words both limits with units, for messages
 */
record Range(String what, Dimension dimension, BigDecimal least, BigDecimal most, String words) {
    static final Range CALIBRE = of("a calibre", Dimension.LENGTH, "5 mm", "1300 mm");
    static final Range RISE = of("a rise", Dimension.TIME, "0 s", "30 s");
    static final Range APEX = of("an apex", Dimension.LENGTH, "0 m", "2000 m");
    static final Range SPREAD = of("a spread", Dimension.LENGTH, "0 m", "2000 m");
    static final Range LASTS = of("a duration", Dimension.TIME, "0 s", "3600 s");
    static final Range CHARGE = of("a charge", Dimension.MASS, "0 g", "500000 g");
    static final Range MASS = of("a mass", Dimension.MASS, "0.1 g", "1000000 g");
    static final Range TUBE_LENGTH = of("a tube length", Dimension.LENGTH, "10 mm", "5000 mm");
    static final Range SHOT_SPAN = of("the time of the shots", Dimension.TIME, "1 ms", "3600000 ms");
    static final Range GAP = of("a gap", Dimension.TIME, "0 ms", "60000 ms");
    static final Range LEAD = of("a lead", Dimension.TIME, "0 ms", "60000 ms");
    static final Range TILT = of("an angle", Dimension.ANGLE, "-90 deg", "90 deg");
    static final Range BEARING = of("a bearing", Dimension.ANGLE, "0 deg", "360 deg");
    static final Range COORDINATE = of("a coordinate", Dimension.LENGTH, "-50000 m", "50000 m");
    static final Range MORE = of("what is added", Dimension.SHARE, "0 %", "1000 %");
    static final Range OFFSET = of("a distance from the position", Dimension.LENGTH, "-1000 m", "1000 m");
    static final Range RADIUS = of("a radius", Dimension.LENGTH, "0 m", "50000 m");
    static final Range WIND = of("a wind speed", Dimension.SPEED, "0 m/s", "100 m/s");
    static final Range AIR = of("an air temperature", Dimension.TEMPERATURE, "-60 degC", "60 degC");
    static final Range ELEVATION = of("an elevation", Dimension.LENGTH, "-500 m", "6000 m");
    static final Range IGNITER_OHM = of("an igniter's resistance", Dimension.RESISTANCE, "0.01 ohm", "1000 ohm");
    static final Range AMPERE = of("a current", Dimension.CURRENT, "0.001 A", "100 A");
    static final Range TEST_AMPERE = of("a test current", Dimension.CURRENT, "0 A", "100 A");
    static final Range AREA = of("a wire's area", Dimension.AREA, "0.01 mm2", "100 mm2");
    static final Range GAUGE = of("a wire gauge", Dimension.GAUGE, "0 awg", "40 awg");
    static final Range VOLT = of("a drive voltage", Dimension.VOLTAGE, "0.1 V", "2000 V");
    static final Range SOURCE_OHM = of("a source resistance", Dimension.RESISTANCE, "0 ohm", "10000 ohm");
    static final Range CAPACITANCE = of("a capacitance", Dimension.CAPACITANCE, "0.1 uF", "10000000 uF");
    static final Range PIN_GAP = of("a pin gap", Dimension.TIME, "0 ms", "60000 ms");
    static final Range LEAD_LENGTH = of("a length of wire", Dimension.LENGTH, "0 m", "10000 m");
    static final Range SPACING = of("a spacing", Dimension.LENGTH, "5 mm", "10000 mm");
    static final Range STEP = of("a step", Dimension.TIME, "0.001 ms", "10000 ms");
    static final Range LATENCY = of("a latency", Dimension.TIME, "0 ms", "10000 ms");
    static final Range DRIFT = of("a clock's drift", Dimension.DRIFT, "0 ppm", "100000 ppm");
    static final Range AGEING = of("the ageing of a clock in a day", Dimension.DRIFT, "-1000 ppm", "1000 ppm");
    static final Range JITTER = of("a jitter", Dimension.TIME, "0 ms", "1000 ms");
    static final Range SMOOTHING = of("a pace of smoothing", Dimension.DRIFT, "1 ppm", "500000 ppm");
    static final Range LATE = of("a lateness", Dimension.TIME, "0 ms", "60000 ms");
    static final Range MUSIC_LATE = of("the music's lateness", Dimension.TIME, "-3600 s", "3600 s");
    static final Range SHARE = of("a share", Dimension.SHARE, "0 %", "1000 %");
    static final Range COPPER = of("a copper temperature", Dimension.TEMPERATURE, "-60 degC", "150 degC");
    static final Range SYNC = of("a sync limit", Dimension.TIME, "0.001 ms", "60000 ms");
    static final Range PREROLL = of("a pre-roll", Dimension.TIME, "0 s", "86400 s");
    static final Range LENGTH_OF_MUSIC = of("a length", Dimension.TIME, "0.001 s", "86400 s");
    /** A label has room for its square code and the words beside it. */
    static final Range LABEL_WIDTH = of("a label's width", Dimension.LENGTH, "60 mm", "300 mm");
    static final Range LABEL_HEIGHT = of("a label's height", Dimension.LENGTH, "25 mm", "300 mm");
    static final Range LABEL_MARGIN = of("a margin", Dimension.LENGTH, "0 mm", "300 mm");
    static final Range LABEL_GAP = of("a gap between labels", Dimension.LENGTH, "0 mm", "300 mm");
    static final Range SAMPLE_RATE = of("a sample rate", Dimension.FREQUENCY, "8000 Hz", "384000 Hz");

    static final Range DISTANCE = of("a distance", Dimension.LENGTH, "0.1 m", "10000 m");
    static final Range HEIGHT = of("a height", Dimension.LENGTH, "0 m", "2000 m");
    static final Range SLOPE = of("a slope", Dimension.SHARE, "0 %", "1000 %");
    static final Range LEAN = of("a tilt", Dimension.ANGLE, "0 deg", "90 deg");
    static final Range SECTOR = of("a sector", Dimension.ANGLE, "1 deg", "90 deg");
    static final Range OFF = of("a share that may be taken off", Dimension.SHARE, "0 %", "100 %");

    private static Range of(String what, Dimension dimension, String least, String most) {
        return new Range(what, dimension, si(dimension, least), si(dimension, most), least + " to " + most);
    }

    private static BigDecimal si(Dimension dimension, String text) {
        String[] parts = text.split(" ");
        return dimension.toSi(new BigDecimal(parts[0]), parts[1]);
    }

    /** The unit in which its limits are told: the one that people would write. */
    String customaryUnit() {
        return words.substring(words.lastIndexOf(' ') + 1);
    }

    boolean holds(BigDecimal si) {
        return si.compareTo(least) >= 0 && si.compareTo(most) <= 0;
    }
}
