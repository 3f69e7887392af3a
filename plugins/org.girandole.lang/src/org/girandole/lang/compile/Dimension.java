package org.girandole.lang.compile;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What a quantity measures, with its units and their size in the SI unit used inside. Inch and foot: international yard and pound
 * agreement of 1959 (0.0254 m, 0.3048 m); pound 0.45359237 kg; ounce a sixteenth; grain a 7000th of a pound; knot 1852 m/h.
 */
public enum Dimension {
    LENGTH("a length", units("mm", "0.001", "cm", "0.01", "m", "1", "km", "1000", "in", "0.0254", "ft", "0.3048")),
    TIME("a time", units("ms", "0.001", "s", "1", "min", "60")),
    MASS("a mass", units("mg", "0.000001", "g", "0.001", "kg", "1", "lb", "0.45359237", "oz", "0.028349523125", "gr", "0.00006479891")),
    ANGLE("an angle", units("deg", "1", "°", "1")),
    TEMPERATURE("a temperature", units("degC", "1", "°C", "1")),
    SPEED("a speed", units("m/s", "1", "km/h", "1/3.6", "kn", "1852/3600", "mph", "0.44704", "ft/s", "0.3048")),
    VOLTAGE("a voltage", units("V", "1", "mV", "0.001")),
    CURRENT("a current", units("A", "1", "mA", "0.001")),
    RESISTANCE("a resistance", units("ohm", "1", "mohm", "0.001", "Ω", "1", "\u2126", "1")),
    CAPACITANCE("a capacitance", units("F", "1", "mF", "0.001", "uF", "0.000001", "µF", "0.000001", "\u03BCF", "0.000001")),
    AREA("an area", units("mm2", "1", "mm²", "1")),
    GAUGE("a wire gauge", units("awg", "1", "AWG", "1")),
    DRIFT("a drift", units("ppm", "1")),
    SHARE("a share", units("%", "0.01")),
    FREQUENCY("a sample rate", units("Hz", "1", "kHz", "1000")),
    TEMPO("a tempo", units("bpm", "1")),
    RATE("a timecode rate", units("fps", "1"));

    private final String words;
    private final Map<String, BigDecimal[]> units;

    Dimension(String words, Map<String, BigDecimal[]> units) {
        this.words = words;
        this.units = units;
    }

    /** With article, for messages. */
    public String words() {
        return words;
    }

    /** Symbols of its units, the customary first. */
    public List<String> symbols() {
        return List.copyOf(units.keySet());
    }

    /** Whether a symbol is one of its units. */
    public boolean has(String symbol) {
        return units.containsKey(symbol);
    }

    /** A number of some unit in SI units (areas in mm², angles in degrees, temperatures in °C), exact where a decimal can be. */
    public BigDecimal toSi(BigDecimal number, String symbol) {
        BigDecimal[] factor = units.get(symbol);
        BigDecimal times = number.multiply(factor[0]);
        return factor[1] == BigDecimal.ONE ? times.round(MathContext.DECIMAL128) : times.divide(factor[1], MathContext.DECIMAL128);
    }

    /** A number of one unit in another of the same dimension. */
    public BigDecimal in(BigDecimal number, String symbol, String other) {
        BigDecimal[] factor = units.get(other);
        return toSi(number, symbol).multiply(factor[1]).divide(factor[0], MathContext.DECIMAL128);
    }

    private static Map<String, BigDecimal[]> units(String... pairs) {
        Map<String, BigDecimal[]> map = new LinkedHashMap<>();
        for (int i = 0; i < pairs.length; i += 2) {
            String[] fraction = pairs[i + 1].split("/");
            map.put(pairs[i], new BigDecimal[] {new BigDecimal(fraction[0]),
                    fraction.length == 1 ? BigDecimal.ONE : new BigDecimal(fraction[1])});
        }
        return map;
    }
}
