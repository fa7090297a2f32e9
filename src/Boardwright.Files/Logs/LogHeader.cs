using System.Text;
using Boardwright.Logs;

namespace Boardwright.Files.Logs;

/// <summary>Reads what the name of a column says: its words and its unit.</summary>
static class LogHeader
{
    /// <summary>What a name was taken for.</summary>
    /// <param name="IsTime">Whether it names times.</param>
    /// <param name="Channel">The channel it names.</param>
    /// <param name="Unit">The unit it names, of the channel or of time.</param>
    /// <param name="Worth">How clearly: the clearest name of a channel wins where two columns name it.</param>
    /// <param name="Why">In words.</param>
    public sealed record Meaning(bool IsTime, Channel? Channel, Unit? Unit, int Worth, string Why);

    static readonly Meaning Nothing = new(false, null, null, 0, "passed over: the name is not one of a quantity that is used");

    /// <summary>The dimension of a channel's values.</summary>
    public static Dimension DimensionOf(Channel channel) => channel switch
    {
        Channel.Speed => Speed.Dimension,
        Channel.Distance or Channel.Elevation => Length.Dimension,
        Channel.PackVoltage => Voltage.Dimension,
        Channel.PackCurrent or Channel.PhaseCurrent => Current.Dimension,
        Channel.Duty or Channel.ChargeLeft => Fraction.Dimension,
        Channel.Latitude or Channel.Longitude => Angle.Dimension,
        _ => Temperature.Dimension,
    };

    /// <summary>The unit that a channel is usually logged in.</summary>
    public static Unit UsualUnit(Channel channel) => channel switch
    {
        Channel.Speed => Find(channel, "km/h")!,
        Channel.Distance or Channel.Elevation => Find(channel, "m")!,
        Channel.PackVoltage => Find(channel, "V")!,
        Channel.PackCurrent or Channel.PhaseCurrent => Find(channel, "A")!,
        Channel.Duty or Channel.ChargeLeft => Find(channel, "%")!,
        Channel.Latitude or Channel.Longitude => Degrees,
        _ => Find(channel, "C")!,
    };

    /// <summary>The units that a channel may be logged in, as a wish names them.</summary>
    public static IReadOnlyList<string> UnitsOf(Channel channel) =>
        DimensionOf(channel) is var dimension && dimension == Fraction.Dimension ? ["%", "share"]
        : dimension == Angle.Dimension ? ["°"]
        : [.. dimension.Units.Select(static unit => unit.Symbol).Where(static symbol => symbol.Length > 0)];

    /// <summary>A plain share, 0 to 1.</summary>
    public static Unit Plain { get; } = new("of 1", 1);

    static Unit Degrees { get; } = new("°", Math.PI / 180, null, "deg", "degrees");

    /// <summary>A unit of a channel by its symbol in any of the ways that loggers write it.</summary>
    public static Unit? Find(Channel channel, string symbol)
    {
        var dimension = DimensionOf(channel);
        var word = symbol.Trim().TrimStart('°').Trim();
        if (dimension == Temperature.Dimension && word is "c" or "C" or "degC" or "degc" or "celsius" or "Celsius" or "degrees C") word = "°C";
        else if (dimension == Temperature.Dimension && word is "f" or "F" or "degF" or "degf" or "fahrenheit" or "Fahrenheit") word = "°F";
        else if (dimension == Temperature.Dimension && word is "k" or "K" or "kelvin") word = "K";
        else if (dimension == Angle.Dimension && word is "" or "deg" or "degrees" or "d") return Degrees;
        else if (dimension == Fraction.Dimension && word is "percent" or "pct" or "%") word = "%";
        else
        {
            word = word.ToLowerInvariant() switch
            {
                "kmh" or "kph" or "km/h" or "kmph" or "km_h" or "km h" => "km/h",
                "mph" or "mi/h" => "mph",
                "ms" or "m/s" or "mps" or "m_s" or "m s" when dimension == Speed.Dimension => "m/s",
                "volt" or "volts" => "V",
                "v" => "V",
                "mv" => "mV",
                "amp" or "amps" or "ampere" or "amperes" or "a" => "A",
                "ma" => "mA",
                "metre" or "metres" or "meter" or "meters" or "m" => "m",
                "kilometre" or "kilometres" or "kilometer" or "kilometers" or "km" => "km",
                "mile" or "miles" or "mi" => "mi",
                "feet" or "foot" or "ft" => "ft",
                _ => word,
            };
        }

        return word.Length == 0 ? null : dimension.Find(word);
    }

    /// <summary>What a name says.</summary>
    public static Meaning Read(string header)
    {
        var (words, symbol) = Split(header);
        bool Has(params ReadOnlySpan<string> any)
        {
            foreach (var word in any)
            {
                if (words.Contains(word)) return true;
            }

            return false;
        }

        if (words.Count == 0) return Nothing;
        if (Has("wind", "weather", "gust", "precipitation", "accuracy", "hdop", "cadence", "cell", "cells", "average", "avg", "mean", "max", "min", "limit", "target", "set", "total", "slope", "start", "end", "starting", "ending"))
            return Nothing with { Why = "passed over: the name tells of wind, weather, a limit or a summary, not of the ride at that moment" };
        if (Has("time", "timestamp", "datetime", "clock", "elapsed", "seconds", "millis", "milliseconds", "uptime") || (words.Count <= 2 && Has("t", "ms", "s", "sec")))
            return new(true, null, null, Has("timestamp", "elapsed", "datetime", "millis", "milliseconds", "seconds") ? 3 : 2, "the name is one of time");
        if (Has("temperature", "temp", "temps"))
        {
            return Has("motor", "winding", "stator") ? Of(Channel.MotorTemperature, 2)
                : Has("controller", "esc", "fet", "mosfet", "fets", "mosfets", "inverter", "drive") ? Of(Channel.ControllerTemperature, 2)
                : Has("battery", "pack", "batt") ? Of(Channel.PackTemperature, 2)
                : Has("air", "ambient", "outside", "outdoor") ? Of(Channel.AirTemperature, 2)
                : Nothing with { Why = "passed over: a temperature, but the name does not say of what" };
        }

        if (Has("tmotor", "motortemp")) return Of(Channel.MotorTemperature, 2);
        if (Has("latitude", "lat")) return Of(Channel.Latitude, 2);
        if (Has("longitude", "long", "lon", "lng")) return Of(Channel.Longitude, 2);
        if (Has("altitude", "elevation", "ele", "alt")) return Of(Channel.Elevation, 2);
        if (Has("duty", "dutycycle")) return Of(Channel.Duty, 2);
        if (Has("speed", "velocity", "vel") && !Has("motor", "rpm", "erpm")) return Of(Channel.Speed, Has("gps") ? 1 : 2);
        if (Has("soc") || (Has("charge", "battery", "batt", "pack") && (Has("state", "level", "left", "remaining") || symbol is "%" or "percent" or "pct"))) return Of(Channel.ChargeLeft, 2);
        if (Has("voltage", "volts", "volt", "vin", "vbat", "vbatt", "vpack") || (symbol is "V" or "mV" && Has("battery", "pack", "batt", "input", "supply")))
            return Has("motor", "phase", "vd", "vq") ? Nothing with { Why = "passed over: a voltage of the motor, not of the pack" } : Of(Channel.PackVoltage, Has("battery", "pack", "batt", "input", "vin", "vbat", "vbatt", "vpack") ? 3 : 2);
        if (Has("current", "amps", "amp", "amperes", "iin", "ibat", "ibatt", "imotor", "iphase") || (symbol is "A" or "mA" && Has("battery", "pack", "batt", "input", "motor", "phase")))
        {
            return Has("motor", "phase", "imotor", "iphase") ? Of(Channel.PhaseCurrent, Has("phase") ? 3 : 2)
                : Has("id", "iq", "fault") ? Nothing
                : Of(Channel.PackCurrent, Has("battery", "pack", "batt", "input", "in", "iin", "ibat", "ibatt") ? 3 : 2);
        }

        return Has("distance", "odometer", "odo", "trip") ? Of(Channel.Distance, 2) : Nothing;

        Meaning Of(Channel channel, int worth)
        {
            var unit = symbol.Length > 0 ? Find(channel, symbol) : null;
            return new(false, channel, unit, worth, unit is null ? "the name; it gives no unit" : "the name and its unit");
        }
    }

    /// <summary>The unit of a name of time: <c>ms</c>, <c>s</c>, or nothing.</summary>
    public static TimeForm? TimeUnit(string header)
    {
        var (words, symbol) = Split(header);
        if (symbol is "ms" or "msec" or "millis" or "milliseconds" || words.Contains("ms") || words.Contains("millis") || words.Contains("milliseconds")) return TimeForm.Milliseconds;
        return symbol is "s" or "sec" or "seconds" || words.Contains("seconds") || words.Contains("sec") || words.Contains("s") ? TimeForm.Seconds : null;
    }

    /// <summary>Lower-case words, and what stands in brackets, or after the last underline, where that can be a unit.</summary>
    static (HashSet<string> Words, string Symbol) Split(string header)
    {
        var name = header.Trim().Trim('\uFEFF', '"');
        var symbol = "";
        var open = name.LastIndexOfAny(['(', '[', '{']);
        var close = open < 0 ? -1 : name.IndexOfAny([')', ']', '}'], open);
        if (close > open)
        {
            symbol = name[(open + 1)..close].Trim();
            name = name[..open] + " " + name[(close + 1)..];
        }
        else
        {
            var cut = name.LastIndexOfAny(['_', ' ', '.']);
            if (cut > 0 && IsUnit(name[(cut + 1)..]))
                (symbol, name) = (name[(cut + 1)..], name[..cut]);
            else if (cut > 0 && name.Length > 5 && name.EndsWith("km_h", StringComparison.OrdinalIgnoreCase))
                (symbol, name) = ("km/h", name[..^5]);
        }

        var words = new HashSet<string>(StringComparer.Ordinal);
        var word = new StringBuilder();
        for (var i = 0; i < name.Length; i++)
        {
            var c = name[i];
            // packVoltage is two words, as pack_voltage is.
            if (char.IsUpper(c) && i > 0 && char.IsLower(name[i - 1])) End();
            if (char.IsLetter(c)) word.Append(char.ToLowerInvariant(c));
            else if (c == '%') symbol = symbol.Length == 0 ? "%" : symbol;
            else End();
        }

        End();
        // SoC is one word, though it looks like two.
        words.Add(string.Concat(name.Where(char.IsLetter)).ToLowerInvariant());
        words.Remove("");
        return (words, symbol);

        void End()
        {
            if (word.Length > 0) words.Add(word.ToString());
            word.Clear();
        }
    }

    static bool IsUnit(string text) =>
        text.ToLowerInvariant() is "ms" or "s" or "sec" or "kmh" or "kph" or "km/h" or "mph" or "m/s" or "mps" or "v" or "mv" or "a" or "ma" or "c" or "f" or "degc" or "degf"
        or "m" or "km" or "mi" or "ft" or "%" or "pct" or "percent" or "deg" or "volts" or "amps" or "msec" or "°c" or "°f";
}
