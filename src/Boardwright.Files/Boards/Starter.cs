using System.Globalization;
using System.Text;
using Boardwright.Parts;
using static System.FormattableString;

namespace Boardwright.Files.Boards;

/// <summary>The board file that a builder begins with: what was answered, and parts that go with it, every one of them a guess.</summary>
public sealed class Starter
{
    // Where comments begin, and how far a line of a file should reach.
    const int CommentColumn = 38;

    const string Head = """
        boardwright: 1                  # version of this format, always the first line
        name: NAME

        # Every value carries its unit: 960 mm, 38 in, 80 kg, 180 lb, 25 km/h, 16 mph, 12 %, 18 °C.
        # A question mark behind a value marks a guess. Every part below is guessed from your answers:
        # nobody sells it. Write what your listing says, and take the question mark away.
        # A measured value says so: { value: 38 mm, give: 0.1 mm, from: measured }; give is one standard
        # deviation. Leave out what you do not know. Whatever needs it then asks for it,
        # and everything else is still worked out.


        """;

    readonly StringBuilder text = new();
    readonly StartPlan plan;

    Starter(StartPlan plan) => this.plan = plan;

    /// <summary>A commented board that reads without complaint and needs no shelf.</summary>
    /// <param name="name">Name of the board.</param>
    /// <param name="answers">What the builder answered; nothing where everything is to be guessed.</param>
    public static string Text(string name, StartAnswers? answers = null)
    {
        var starter = new Starter(StartPlan.Derive(answers ?? new StartAnswers()));
        starter.text.Append(Head.Replace("NAME", BoardText.Quote(name, inFlow: false, isText: true), StringComparison.Ordinal));
        starter.WriteBrief();
        starter.WriteRunningGear();
        starter.WriteDrive();
        starter.WriteElectrics();
        starter.WriteBox();
        starter.WriteRest();
        return starter.text.ToString();
    }

    void WriteBrief()
    {
        var answers = plan.Answers;
        Section("brief", "what the rider wants and where it is ridden");
        Answer("rider_mass", "rider");
        Guess("gear_mass", "5 kg", "clothes, shoes, bag");
        Guess("stance", "upright", "upright | crouched | tucked; or drag_area: 0.55 m2");
        Answer("cruise_speed", "cruise");
        Answer("range_wanted", "range", "at cruise speed");
        Answer("climb_wanted", "climb", "the steepest hill, rise over run");
        Guess("climb_speed", Invariant($"{plan.ClimbSpeed} km/h"), "on that hill");
        Comment("top_speed_wanted: 38 km/h", "take the # away where somebody asks for it");
        Comment("speed_limit: 25 km/h", "what you found in your local rules");
        Guess("temperature", "18 °C", "a day on which it is ridden");
        Guess("altitude", "50 m");
        Guess("headwind", "0 m/s");
        Line(2, "surface", Marked(StartQuestion.Named("surface").Usual(answers), "surface"), "smooth asphalt | rough asphalt | paving | packed gravel");
        Guess("reserve", "10 %", "charge you want left at the end");
        Comment("route: routes/home.gpx", "a recorded ride, from this file's folder");
        text.Append("""

            # A shelf is a folder of files, each a list of parts: - { id: ID, kind: deck, length: 960 mm }
            # Name it here, write an id in place of a part below (deck: ID), or take a part from
            # the shelf and change it: deck: { use: ID, mass: 2.2 kg }.
            shelf: []


            """);
    }

    void WriteRunningGear()
    {
        Section("parts", "a price: 120 EUR on a part adds up what the board costs");
        Place("deck");
        Entry("mass", "2.1 kg", "listing: weight; or a kitchen scale");
        Entry("length", Millimetres(plan.Wheelbase + 230), "listing: length");
        Entry("width", "210 mm", "listing: width");
        Entry("thickness", "15 mm", "count the layers, or a caliper");
        Entry("mounting", "top", "top | drop-through | drop-platform");
        Entry("wheelbase", Millimetres(plan.Wheelbase), "between the axles");
        Entry("hole_pattern", "53.975 x 41.275", "\"old school\" or \"new school\" holes");
        Entry("underside_flat_length", Millimetres(plan.Flat), "straight edge under the deck");
        Entry("underside_flat_width", "190 mm", "the same, across");
        Entry("tail_overhang", "110 mm", "behind the rear axle");
        foreach (var end in new[] { "front", "rear" })
        {
            Place($"{end}_truck");
            Entry("mass", "480 g", "listing: weight of one");
            Entry("hanger_width", "218 mm", "listing: hanger; without the axle");
            Entry("axle_diameter", "8 mm", "listing: axle, 8 mm or 10 mm");
            Entry("axle_overhang", "60 mm", "half of axle width less hanger width");
            Entry("height", "72 mm", "base plate to the middle of the axle");
            Entry("kingpin", "single", "single | double");
            Entry("pivot_angle", "44 deg", "listing: degrees");
            Entry("lean_stop", "18 deg", "lean the deck by hand to its stop");
            Entry("hole_pattern", "53.975 x 41.275", "the same name as on the deck");
            if (end == "rear")
                Entry("hanger_profile", "square 27", "the same name as on the mount");
        }

        var wheels = plan.Answers.Wheels;
        Place("wheels");
        Line(4, "count", "4", "");
        Entry("mass", Grams(plan.WheelMass), "listing: weight of one");
        Line(4, "diameter", Marked(plan.Answers.Diameter.ToString("mm", null), "wheels"), "listing: the first number");
        Entry("width", Millimetres(plan.WheelWidth), "listing: the second number");
        Entry("core", "six spokes 44", "the same name as on the wheel pulley");
        if (wheels == WheelKind.Urethane)
            Entry("durometer", "78A", "listing: hardness");
        else
            Entry("rolling_resistance", wheels == WheelKind.Rubber ? "0.028" : "0.022", "let it roll out on level ground and measure it");
        Entry("bearing", "608", "printed on its shield");
    }

    void WriteDrive()
    {
        Place("drive");
        Line(4, "kind", "belt", "belt | gear | hub");
        Entry("driven", "rear", "rear | front | both");
        Line(4, "motors", Marked(Whole(plan.Answers.Motors), "motors"), "");
        Entry("placement", "behind", "behind | ahead of the axle");
        Entry("mount_angle", Invariant($"{plan.MountAngle} deg"), "above the horizontal, of those the mount offers");
        Place("mount");
        Entry("hanger_profile", "square 27", "for which truck it is sold");
        Entry("bolt_circle", "44 mm", "the same as the motor's");
        Entry("bolt", "M4", "the same as the motor's");
        Entry("bolt_count", "4", "");
        Note("Measure on the part, before you buy what has to fit it:");
        Note("plate_thickness, plate_from_wheel, centre_min, centre_max, bolt_length, cover_depth, cover_standoff");
        Note(Invariant($"The belt below is taut at {plan.Centre:0.0} mm between shaft and axle: the slot has to reach there."));
        Place("motor");
        Entry("mass", Grams(plan.MotorMass), "listing: weight");
        Entry("kv", Invariant($"{plan.Kv} rpm/V"), "listing: KV");
        Entry("line_resistance", Invariant($"{plan.LineMilliohms} mohm"), "listing: resistance between two leads");
        Entry("pole_pairs", "7", "half the number of magnets");
        Entry("phase_current_peak", Amperes(plan.PhasePeak), "listing: peak current");
        Entry("can", Invariant($"{plan.CanDiameter} x {plan.CanLength} mm"), "diameter x length; listing: 6374 is 63 x 74");
        Entry("shaft_diameter", "8 mm", "listing: shaft");
        Entry("shaft_length", "36 mm", "beyond the face on the mount");
        Entry("bolt_circle", "44 mm", "listing: mounting holes");
        Entry("bolt", "M4", "listing: mounting holes");
        Entry("sensor", "hall", "none | hall | encoder");
        Entry("lead_plug", plan.MotorPlug, "listing: connectors");
        Note("Measure on the part: key_width, key_height, bolt_depth.");
        Place("motor_pulley");
        Entry("profile", "HTD 5M", "listing: HTD 5M, 5 mm pitch");
        Entry("teeth", Whole(plan.MotorTeeth), "listing: 15T is 15 teeth");
        Entry("bore", "8 mm", "the motor's shaft");
        Entry("keyway_width", "3 mm", "the motor's key");
        Entry("face_width", Millimetres(plan.BeltWidth + 1), "listing: for belts of this width");
        Entry("length", Millimetres(plan.BeltWidth + 9), "along the shaft");
        Entry("fixing", "both", "key | set-screw | both");
        Note("Measure on the part: face_offset, from its inner end to its teeth.");
        Place("wheel_pulley");
        Entry("profile", "HTD 5M", "the same as the motor pulley's");
        Entry("teeth", Whole(plan.WheelTeeth), "listing: 40T is 40 teeth");
        Entry("face_width", Millimetres(plan.BeltWidth + 1), "listing: for belts of this width");
        Entry("core", "six spokes 44", "for which wheel it is sold");
        Note("Measure on the part: length, face_offset.");
        Place("belt");
        Entry("profile", "HTD 5M", "the same as the pulleys'");
        Entry("teeth", Whole(plan.BeltTeeth), Invariant($"or length: {plan.BeltTeeth * 5} mm, as belts are marked"));
        Entry("width", Millimetres(plan.BeltWidth), "listing: 5M-15 is 15 mm wide");
    }

    void WriteElectrics()
    {
        var cells = plan.Answers.Cells;
        Place("controller");
        Entry("mass", plan.Answers.Motors == 1 ? "180 g" : "320 g", "listing: weight");
        Entry("motors", Whole(plan.Answers.Motors), "how many one of them drives");
        Entry("voltage_min", "14 V", "listing: input voltage");
        Entry("voltage_max", Invariant($"{plan.ControllerVolts} V"), "listing: input voltage; a full pack stays below it");
        Entry("phase_current_peak", Amperes(plan.PhasePeak), "listing: motor current, peak");
        Entry("phase_current_continuous", Amperes(Math.Ceiling(plan.PhasePeak * 0.6)), "listing: motor current, continuous");
        Entry("pack_current", Amperes(Math.Ceiling(plan.PackCurrent * 1.2 / 5) * 5), "listing: battery current");
        Entry(
            "size", Invariant($"{plan.ControllerLength} x {plan.ControllerWidth} x {plan.ControllerHeight} mm"), "listing: length x width x height");
        Entry("pack_plug", "XT90", "listing: connectors");
        Entry("motor_plug", plan.MotorPlug, "listing: connectors");
        Entry("remote_port", "pulse 3-pin", "the same name as on the remote");
        Note("electrical_speed_limit: look for ERPM in the sheet.");
        Place("cell");
        Entry("format", "21700", "listing: 21700 or 18650");
        Entry("mass", "70 g", "data sheet");
        Entry("capacity", Invariant($"{plan.CellCapacity:0.0} Ah"), "data sheet: 5000 mAh is 5.0 Ah; both are read");
        Entry("voltage_nominal", "3.6 V", "data sheet");
        Entry("voltage_full", "4.2 V", "data sheet: charge voltage");
        Entry("voltage_empty", "2.5 V", "data sheet: discharge cut-off");
        Entry("discharge_current", Amperes(plan.CellCurrent), "data sheet: continuous, not the pulse");
        Entry("charge_current", Amperes(plan.CellCharge), "data sheet: greatest charge current");
        Entry("diameter", "21.2 mm", "data sheet");
        Entry("length", "70.2 mm", "data sheet");
        Place("pack");
        Line(4, "series", Marked(Whole(cells.Series), "pack"), Invariant($"{cells}"));
        Line(4, "parallel", Marked(Whole(cells.Parallel), "pack"), "");
        text.Append("    protection:                       # the board that watches the cells (BMS)\n");
        Deep("series", Whole(cells.Series), "listing: for how many in series");
        Deep("discharge_current", Amperes(plan.Protection), "listing: continuous");
        Deep("charge_current", Amperes(Math.Max(plan.RegenCurrent, plan.ChargeCurrent) + 2), "listing: charging, braking too");
        Deep("regen_through", "yes", "whether braking current can come back through it");
        Deep("voltage_cut", "2.8 V", "listing: over-discharge");
        Entry("plug", "XT90", "listing: connectors");
        Entry("length", Millimetres(plan.PackLength), Invariant($"{plan.Layers} {(plan.Layers == 1 ? "layer" : "layers")}, two cells end to end across"));
        Entry("width", "145 mm", "");
        Entry("height", Millimetres(plan.PackHeight), "measure it when it is wrapped");
        Place("charger");
        Entry("voltage", Invariant($"{cells.Series * 4.2:0.0} V"), "listing: output; for this many cells and no other");
        Entry("current", Amperes(plan.ChargeCurrent), "listing: output");
        Entry("end_current", Invariant($"{plan.ChargeCurrent / 10} A"), "where it stops: a tenth of its current as a rule");
        Entry("plug", "round 3-pin", "listing: connectors");
        Place("remote");
        Entry("port", "pulse 3-pin", "what its receiver plugs into");
        Entry("failsafe", "coast", "coast | brake | none: try it on a stand");
        Place("fuse");
        Entry("rating", Amperes(plan.Fuse), "printed on it");
        Entry("voltage", cells.Series * 4.2 > 58 ? "100 V" : "80 V", "printed on it; a car's 32 V does not do");
    }

    void WriteBox()
    {
        Place("box");
        Entry("inner_length", Millimetres(plan.BoxLength), "pack, controller, and room for hands");
        Entry("inner_width", "152 mm", "");
        Entry("inner_depth", Millimetres(plan.BoxDepth), "deck to floor");
        Entry("wall", "2.5 mm", "");
        Entry("flange_width", "12 mm", "the rim that is screwed on");
        Entry("gasket_thickness", "3 mm", "before it is squeezed");
        Entry("material", "ABS", "");
        text.Append('\n');
    }

    void WriteRest()
    {
        text.Append("wiring:                               # a gauge is printed on the wire\n");
        Wire("pack", "controller", plan.PackWire, "0.25 m", "plug: XT90 ?");
        Wire("controller", "motors", plan.MotorWire, "0.6 m", $"plug: {plan.MotorPlug} ?");
        Wire("charger", "pack", "AWG 16", "0.3 m", Invariant($"plug: round 3-pin ?, fuse: {plan.ChargeCurrent + 1} A ?"));
        text.Append('\n');
        Section("limits", "what you have set, or mean to set, in the controller");
        Guess("phase_current", Amperes(plan.PhaseCurrent), "for each motor");
        Guess("brake_phase_current", Amperes(plan.PhaseCurrent), "for each motor");
        Guess("pack_current", Amperes(plan.PackCurrent), "all motors together");
        Guess("regen_current", Amperes(plan.RegenCurrent), "braking, all together; no more than the cells may be charged with");
        Guess("taper_start", "3.2 V", "loaded volts per cell at which power begins to fade");
        Guess("taper_end", "2.9 V", "and at which it is cut");
        text.Append(Invariant($$"""

            fixings:
              box: { count: {{plan.BoxBolts}} ?, bolt: M5 ?, insert: deck_insert ? }

            layout:                         # where things lie in the box; what is not said is proposed
              # pack: { x: 80 mm, y: 0 mm, turn: 180 deg }    # its middle, from the box's middle: x to the nose, y to the right

            money:                          # what is said here is added to the parts
              # labour_hours: 9 h
              # labour_rate: 35 EUR/h
              # overhead: 12 %
              # margin: 25 %

            """));
    }

    void Section(string key, string comment) => text.Append($"{key}:".PadRight(CommentColumn)).Append("# ").Append(comment).Append('\n');

    void Place(string key) => text.Append("  ").Append(key).Append(":\n");

    void Answer(string key, string question, string comment = "") =>
        Line(2, key, Marked(StartQuestion.Named(question).Usual(plan.Answers), question), comment);

    void Guess(string key, string value, string comment = "") => Line(2, key, value + ValueReader.GuessMark, comment);

    void Comment(string line, string comment) =>
        text.Append("  # ").Append(line.PadRight(CommentColumn - 4)).Append("# ").Append(comment).Append('\n');

    void Note(string note) => text.Append("    # ").Append(note).Append('\n');

    void Entry(string key, string value, string comment) => Line(4, key, value + ValueReader.GuessMark, comment);

    void Deep(string key, string value, string comment) => Line(6, key, value + ValueReader.GuessMark, comment);

    void Wire(string from, string to, string gauge, string length, string rest) =>
        text.Append($"  - {{ from: {from}, to: {to}, gauge: {gauge} ?, length: {length} ?, {rest} }}\n");

    void Line(int indent, string key, string value, string comment)
    {
        var line = $"{new string(' ', indent)}{key}: {value}";
        text.Append(comment.Length == 0 ? line : $"{line.PadRight(CommentColumn - 1)} # {comment}").Append('\n');
    }

    // What nobody answered is as much a guess as the rest.
    string Marked(string value, string question) => plan.Answers.Answered.Contains(question) ? value : value + ValueReader.GuessMark;

    static string Millimetres(double value) => Invariant($"{value:0.#} mm");

    static string Amperes(double value) => Invariant($"{value:0.#} A");

    static string Grams(double kilograms) => Invariant($"{kilograms * 1000:0} g");

    static string Whole(int value) => value.ToString(CultureInfo.InvariantCulture);
}
