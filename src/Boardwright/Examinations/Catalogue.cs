using Boardwright.Findings;

namespace Boardwright.Examinations;

/// <summary>Every figure that an examination can compute, by its id.</summary>
public static class Catalogue
{
    /// <summary>mass.board.</summary>
    public static FigureKind BoardMass { get; } = new("mass.board", "kg", "Board", "Mass of all parts that ride along, the remote in the hand included; the charger stays behind. A lower bound when a part has no mass.", "Σ count · mass of the parts; cells one by one, a belt by its size", Sources.Geometry);
    /// <summary>mass.rolling.</summary>
    public static FigureKind RollingMass { get; } = new("mass.rolling", "kg", "Board, rider and gear", "Mass that has to be moved and lifted.", "m = board + rider + gear", Sources.Geometry);
    /// <summary>mass.effective.</summary>
    public static FigureKind EffectiveMass { get; } = new("mass.effective", "kg", "Mass with what turns", "Mass that has to be accelerated: wheels and rotors turn as well.", "m_e = m + Σ J_wheel/r² + n J_rotor G²/r²", Sources.Mechanics);
    /// <summary>drive.ratio.</summary>
    public static FigureKind Ratio { get; } = new("drive.ratio", "", "Ratio", "Turns of a motor for one turn of its wheel.", "G = z_wheel / z_motor, or the gearbox's own", Sources.Geometry);
    /// <summary>drive.belt_teeth.</summary>
    public static FigureKind BeltTeeth { get; } = new("drive.belt_teeth", "", "Belt teeth", "Teeth of the belt.", "length / pitch", Sources.Geometry);
    /// <summary>drive.centre_distance.</summary>
    public static FigureKind CentreDistance { get; } = new("drive.centre_distance", "mm", "Shaft to axle", "Distance between motor shaft and axle at which the belt is just taut.", "L = 2 C cos φ + π (d1 + d2)/2 + φ (d2 − d1), sin φ = (d2 − d1)/2C, solved for C", Sources.Shigley);
    /// <summary>drive.teeth_in_mesh.</summary>
    public static FigureKind TeethInMesh { get; } = new("drive.teeth_in_mesh", "", "Teeth in mesh", "Teeth of the small pulley that the belt touches; whole teeth count for its rating.", "z1 (π − 2 φ)/(2 π)", Sources.Shigley);
    /// <summary>drive.span.</summary>
    public static FigureKind Span { get; } = new("drive.span", "mm", "Free span", "Length of belt between the pulleys.", "C cos φ", Sources.Shigley);
    /// <summary>drive.peak_belt_pull.</summary>
    public static FigureKind BeltPull { get; } = new("drive.peak_belt_pull", "N", "Belt pull at peak", "Effective pull on the belt at the largest torque that the phase current limits allow.", "F_e = 2 Kt i / d_motor pulley", Sources.OptibeltManual);
    /// <summary>drive.belt_rating.</summary>
    public static FigureKind BeltRating { get; } = new("drive.belt_rating", "N", "Belt working tension", "Continuous working tension of the belt: by width, less the cut edge cords, and by teeth in mesh.", "454 N (w − 2.27 mm)/(25.4 − 2.27 mm) · mesh factor for a 5 mm round-toothed belt", Sources.SdpSiTimingBelts);
    /// <summary>drive.static_tension.</summary>
    public static FigureKind StaticTension { get; } = new("drive.static_tension", "N", "Tension to set", "Tension of each span of the belt at rest.", "0.55 F_e, and at least half of the braking pull, so that no span goes slack", Sources.OptibeltManual);
    /// <summary>drive.span_frequency.</summary>
    public static FigureKind SpanFrequency { get; } = new("drive.span_frequency", "Hz", "Note of the span", "Frequency at which the plucked span sounds at that tension. The belt's mass is one maker's, so a tension read from it is good to some 15 %.", "f = √(T / (4 k t²)), k the belt's mass per length, t the span", Sources.OptibeltManual);
    /// <summary>drive.belt_speed.</summary>
    public static FigureKind BeltSpeed { get; } = new("drive.belt_speed", "m/s", "Belt speed", "Speed of the belt with the wheels in the air at full charge.", "v = π d n", Sources.Geometry);
    /// <summary>motor.torque_constant.</summary>
    public static FigureKind TorqueConstant { get; } = new("motor.torque_constant", "N·m/A", "Torque constant", "Shaft torque for each ampere of phase amplitude.", "Kt = (√3/2) · 60/(2 π KV)", Sources.Pmsm);
    /// <summary>motor.flux_linkage.</summary>
    public static FigureKind FluxLinkage { get; } = new("motor.flux_linkage", "Wb", "Flux linkage", "Peak flux of the magnets through one phase.", "λ = 60/(√3 · 2 π · KV · pole pairs)", Sources.Pmsm);
    /// <summary>motor.peak_torque.</summary>
    public static FigureKind PeakTorque { get; } = new("motor.peak_torque", "N·m", "Peak torque", "Torque of one motor at the phase current limit.", "Kt i", Sources.Pmsm);
    /// <summary>motor.electrical_speed.</summary>
    public static FigureKind ElectricalSpeed { get; } = new("motor.electrical_speed", "rpm", "Electrical speed", "Electrical r/min with the wheels in the air at full charge.", "motor r/min · pole pairs", Sources.Pmsm);
    /// <summary>pack.cells.</summary>
    public static FigureKind Cells { get; } = new("pack.cells", "", "Cells", "Number of cells.", "S · P", Sources.Geometry);
    /// <summary>pack.energy.</summary>
    public static FigureKind PackEnergy { get; } = new("pack.energy", "Wh", "Energy", "Nominal energy, as it is sold and shipped. A rider gets less: some stays in reserve, some warms the cells.", "S · P · capacity · nominal voltage", Sources.CircuitTheory);
    /// <summary>pack.capacity.</summary>
    public static FigureKind PackCapacity { get; } = new("pack.capacity", "Ah", "Capacity", "Capacity of the pack.", "P · capacity of a cell", Sources.CircuitTheory);
    /// <summary>pack.voltage_full.</summary>
    public static FigureKind VoltageFull { get; } = new("pack.voltage_full", "V", "Voltage full", "Voltage of the pack when it is full.", "S · full voltage of a cell", Sources.CircuitTheory);
    /// <summary>pack.voltage_empty.</summary>
    public static FigureKind VoltageEmpty { get; } = new("pack.voltage_empty", "V", "Voltage empty", "Voltage of the pack at the cells' least voltage.", "S · least voltage of a cell", Sources.CircuitTheory);
    /// <summary>pack.resistance.</summary>
    public static FigureKind PackResistance { get; } = new("pack.resistance", "ohm", "Pack resistance", "Steady resistance of the pack at half charge and the brief's temperature, the cells' slow branches and the links included, wires outside the pack not.", "(S/P) (R0 + R1 + R2) + links", Sources.CircuitTheory);
    /// <summary>pack.feed_power.</summary>
    public static FigureKind FeedPower { get; } = new("pack.feed_power", "W", "Power the pack can feed", "Power at the controllers at the pack current that the board holds, at half charge: more than this no motor can ever take, whatever is printed on it.", "I (E − I R)", Sources.CircuitTheory);
    /// <summary>limits.phase_current.</summary>
    public static FigureKind PhaseLimit { get; } = new("limits.phase_current", "A", "Phase current limit", "What the board holds the phase current of each motor to: the least of what is set and the controller's own peak. What the motor is rated for holds nothing; findings judge it.", "least of what is held", Sources.MakersSheet);
    /// <summary>limits.pack_current.</summary>
    public static FigureKind PackLimit { get; } = new("limits.pack_current", "A", "Pack current limit", "What the board holds the current out of the pack to: the least of what is set, the controllers' own maximum and the protection's rating, at which it is taken to open. What cells, plug and fuse are rated for holds nothing; findings judge it.", "least of what is held", Sources.MakersSheet);
    /// <summary>limits.regen_current.</summary>
    public static FigureKind RegenLimit { get; } = new("limits.regen_current", "A", "Braking pack current limit", "What the board holds the current back into the pack to: the least of what is set, the controllers' own maximum and what the protection lets back. What the cells may take, and at which temperature, holds nothing; findings judge it.", "least of what is held", Sources.MakersSheet);
    /// <summary>speed.top_full.</summary>
    public static FigureKind TopFull { get; } = new("speed.top_full", "km/h", "Top speed, full", "Top speed on the level with the rider, full charge, the brief's headwind.", "walking up from rest, the first speed beyond which the largest force no longer meets the road's", Sources.Mechanics);
    /// <summary>speed.top_half.</summary>
    public static FigureKind TopHalf { get; } = new("speed.top_half", "km/h", "Top speed, half", "The same at half charge.", "as speed.top_full", Sources.Mechanics);
    /// <summary>speed.top_reserve.</summary>
    public static FigureKind TopReserve { get; } = new("speed.top_reserve", "km/h", "Top speed, reserve", "The same at the reserve that the brief wants left; the taper may already be at work.", "as speed.top_full", Sources.Mechanics);
    /// <summary>speed.unloaded_full.</summary>
    public static FigureKind UnloadedFull { get; } = new("speed.unloaded_full", "km/h", "Wheels in the air", "Speed of the wheels in the air at full charge. No board reaches it on the road.", "√(v_d² + v_q²) = 0.95 V/√3 with the drag current alone", Sources.Pmsm);
    /// <summary>force.start.</summary>
    public static FigureKind StartForce { get; } = new("force.start", "N", "Push from rest", "Force at the wheels from rest, full charge, by current limits and grip.", "n G η (Kt i − drag)/r", Sources.Mechanics);
    /// <summary>climb.grade_at_climb_speed.</summary>
    public static FigureKind Grade { get; } = new("climb.grade_at_climb_speed", "%", "Steepest climb", "Steepest grade that is held at the brief's climbing speed at half charge, motors and controllers cold.", "largest force = m g (Crr cos θ + sin θ) + air", Sources.Mechanics);
    /// <summary>climb.phase_current.</summary>
    public static FigureKind ClimbPhase { get; } = new("climb.phase_current", "A", "Phase current on the climb", "Phase amplitude of each motor on the brief's climb at its speed, half charge.", "i = (F r/(n G η) + drag)/Kt", Sources.Pmsm);
    /// <summary>climb.pack_current.</summary>
    public static FigureKind ClimbPack { get; } = new("climb.pack_current", "A", "Pack current on the climb", "Current out of the pack on the brief's climb at its speed, half charge.", "V = ½ (E + √(E² − 4 P R)), I = P/V", Sources.CircuitTheory);
    /// <summary>cruise.power.</summary>
    public static FigureKind CruisePower { get; } = new("cruise.power", "W", "Power at cruise", "Power that the controllers take at cruise speed on the level at half charge, the brief's headwind.", "n (3/2 (R + R_switch) i² + Kt i ω + s V i) + idle", Sources.Pmsm);
    /// <summary>cruise.consumption.</summary>
    public static FigureKind Consumption { get; } = new("cruise.consumption", "Wh/km", "Consumption at cruise", "Energy at the cells' terminals for each kilometre at cruise speed on the level at half charge. Stops, hills and cold wheels come on top.", "I (E − I R_cells)/v", Sources.CircuitTheory);
    /// <summary>cruise.range.</summary>
    public static FigureKind Range { get; } = new("cruise.range", "km", "Range at cruise", "Distance on the level at a steady cruise speed, from full to the reserve or to where the taper cuts, whichever comes first.", "v ∫ Q/I dSoC at constant power", Sources.Mechanics);
    /// <summary>cruise.pace_for_range_wanted.</summary>
    public static FigureKind Pace { get; } = new("cruise.pace_for_range_wanted", "km/h", "Pace for the range wanted", "Fastest steady speed on the level at which the range that the brief wants is reached, and which the board holds to the end.", "range(v) = range wanted", Sources.Mechanics);
    /// <summary>brake.regen_distance.</summary>
    public static FigureKind BrakeDistance { get; } = new("brake.regen_distance", "m", "Stop with the electric brake", "Distance to stop from cruise speed on the level at half charge with the electric brake alone, one second of reaction included.", "v · 1 s + ∫ v/a dv", Sources.Mechanics);
    /// <summary>brake.regen_distance_full.</summary>
    public static FigureKind BrakeDistanceFull { get; } = new("brake.regen_distance_full", "m", "The same, full charge", "The same at full charge, where the pack hardly takes anything back.", "as brake.regen_distance", Sources.Mechanics);
    /// <summary>brake.regen_distance_downhill.</summary>
    public static FigureKind BrakeDistanceDownhill { get; } = new("brake.regen_distance_downhill", "m", "The same, downhill", "The same at half charge down the brief's climb, from its climbing speed.", "as brake.regen_distance", Sources.Mechanics);
    /// <summary>brake.grade_held_full.</summary>
    public static FigureKind GradeHeld { get; } = new("brake.grade_held_full", "%", "Descent held, full charge", "Steepest descent on which the electric brake holds the climbing speed, and down to rest, at full charge.", "largest braking force = m g (sin θ − Crr cos θ) − air", Sources.Mechanics);
    /// <summary>brake.foot_or_slide_note.</summary>
    public static FigureKind BrakeNote { get; } = new("brake.foot_or_slide_note", "", "Beside the electric brake", "What the rider must be able to do when the electric brake is not enough or not there.", "words, from the figures above", Sources.CommonPractice);
    /// <summary>charge.time_full.</summary>
    public static FigureKind ChargeFull { get; } = new("charge.time_full", "h", "Charge from empty", "Time from empty until the charger stops: with the tail of a measured charge where the cell has one, else with its steady resistance, which is short by up to a quarter.", "cell.charge_tail known: Q/I + τ (ln(1/k) − 1 + k), k = I_end/I; else constant current, then I = (V_full − E)/R down to the end current", Sources.LgHg2Kollmeyer);
    /// <summary>charge.time_80.</summary>
    public static FigureKind Charge80 { get; } = new("charge.time_80", "h", "Charge to 80 %", "Time from empty to 80 % of the charge.", "as charge.time_full", Sources.CircuitTheory);
    /// <summary>charge.time_lower_bound.</summary>
    public static FigureKind ChargeBound { get; } = new("charge.time_lower_bound", "h", "Capacity over current", "No charge can be quicker than this; it leaves out the falling current at the end.", "capacity / current", Sources.CircuitTheory);
    /// <summary>heat.winding_at_climb.</summary>
    public static FigureKind Winding { get; } = new("heat.winding_at_climb", "°C", "Winding on an endless climb", "Temperature of the windings after hours on the brief's climb at its speed.", "copper loss grows with 0.00393/K; winding – case – air", Sources.TwoNodeMotor);
    /// <summary>heat.minutes_to_limit_at_climb.</summary>
    public static FigureKind Minutes { get; } = new("heat.minutes_to_limit_at_climb", "min", "Minutes to the winding's limit", "Time on the brief's climb from cold until the winding passes its limit.", "two nodes in time from the brief's temperature", Sources.TwoNodeMotor);
    /// <summary>wire.pack_temperature.</summary>
    public static FigureKind PackWire { get; } = new("wire.pack_temperature", "°C", "Pack wire", "Conductor temperature of the pack wire at the pack current limit, in free air.", "I² R'(T) = π D (h_conv + h_rad)(T − T_air)", Sources.ChurchillChuCylinder);
    /// <summary>wire.motor_temperature.</summary>
    public static FigureKind MotorWire { get; } = new("wire.motor_temperature", "°C", "Motor wire", "Conductor temperature of a motor wire at the phase current of the climb, in free air.", "as wire.pack_temperature, with i/√2", Sources.ChurchillChuCylinder);
    /// <summary>wire.motor_lead_loss.</summary>
    public static FigureKind LeadLoss { get; } = new("wire.motor_lead_loss", "W", "Lost in the motor leads", "Power lost in the leads of all motors on the climb; the figures above leave it out.", "3/2 R_lead i² · motors", Sources.CircuitTheory);
    /// <summary>wire.pack_drop.</summary>
    public static FigureKind PackDrop { get; } = new("wire.pack_drop", "V", "Drop in the pack wires", "Voltage lost between pack and controllers at the pack current limit, plugs included.", "I R", Sources.CircuitTheory);
    /// <summary>fit.motor_above_road.</summary>
    public static FigureKind MotorAboveRoad { get; } = new("fit.motor_above_road", "mm", "Motor above the road", "Clearance under the motors.", "r + C sin α − can/2", Sources.Geometry);
    /// <summary>fit.box_above_road.</summary>
    public static FigureKind BoxAboveRoad { get; } = new("fit.box_above_road", "mm", "Box above the road", "Clearance under the box with the rider on the board.", "r + deck above axle − box depth − wall − bend", Sources.Geometry);
    /// <summary>fit.breakover.</summary>
    public static FigureKind Breakover { get; } = new("fit.breakover", "deg", "Breakover angle", "Sharpest crest that the board crosses without sitting down on its box.", "2 atan(2 c / wheelbase)", Sources.Geometry);
    /// <summary>money.parts.</summary>
    public static FigureKind PartsCost { get; } = new("money.parts", "currency", "Parts", "Sum of the parts' prices, charger and remote included. A lower bound when a part has no price.", "Σ count · price", Sources.CommonPractice);
    /// <summary>money.cost.</summary>
    public static FigureKind Cost { get; } = new("money.cost", "currency", "Cost", "Cost of making one board.", "(parts + hours · rate)(1 + overhead)", Sources.CommonPractice);
    /// <summary>money.price.</summary>
    public static FigureKind Price { get; } = new("money.price", "currency", "Price", "Price with the margin on top of the cost, without tax.", "cost (1 + margin)", Sources.CommonPractice);

    /// <summary>Every kind of figure, in the order of a report.</summary>
    public static IReadOnlyList<FigureKind> All { get; } =
    [
        TopFull, TopHalf, TopReserve, UnloadedFull,
        Range, Pace, Consumption, CruisePower,
        Grade, ClimbPhase, ClimbPack, StartForce,
        BrakeDistance, BrakeDistanceFull, BrakeDistanceDownhill, GradeHeld, BrakeNote,
        ChargeFull, Charge80, ChargeBound,
        BoardMass, RollingMass, EffectiveMass,
        Ratio, BeltTeeth, CentreDistance, TeethInMesh, Span, BeltPull, BeltRating, StaticTension, SpanFrequency, BeltSpeed,
        TorqueConstant, FluxLinkage, PeakTorque, ElectricalSpeed,
        Cells, PackEnergy, PackCapacity, VoltageFull, VoltageEmpty, PackResistance, FeedPower,
        PhaseLimit, PackLimit, RegenLimit,
        Winding, Minutes, PackWire, MotorWire, LeadLoss, PackDrop,
        MotorAboveRoad, BoxAboveRoad, Breakover,
        PartsCost, Cost, Price,
    ];
}
