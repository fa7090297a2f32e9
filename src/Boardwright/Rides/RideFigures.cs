using Boardwright.Findings;

namespace Boardwright.Rides;

/// <summary>The figures of a ride, by stable ids.</summary>
public static class RideFigures
{
    /// <summary>ride.distance.</summary>
    public static FigureKind Distance { get; } = new("ride.distance", "km", "Distance", "Distance ridden until the ride ended, at the end of the route or before.", "∫ v dt", Sources.Mechanics);
    /// <summary>ride.time.</summary>
    public static FigureKind Time { get; } = new("ride.time", "min", "Time", "Time from start to end, stops included.", "Σ steps", Sources.Mechanics);
    /// <summary>ride.moving.</summary>
    public static FigureKind Moving { get; } = new("ride.moving", "min", "Time on the move", "The same without the stops.", "Σ steps with v > 0", Sources.Mechanics);
    /// <summary>ride.energy.</summary>
    public static FigureKind Energy { get; } = new("ride.energy", "Wh", "Energy", "Energy out of the cells' terminals, less what the electric brake returned.", "∫ I V_cells dt", Sources.CircuitTheory);
    /// <summary>ride.returned.</summary>
    public static FigureKind Returned { get; } = new("ride.returned", "Wh", "Returned by the brake", "Energy that the electric brake brought back into the cells.", "∫ −I V_cells dt where I < 0", Sources.CircuitTheory);
    /// <summary>ride.consumption.</summary>
    public static FigureKind Consumption { get; } = new("ride.consumption", "Wh/km", "Consumption", "Energy for each kilometre of this ride.", "energy / distance", Sources.CircuitTheory);
    /// <summary>ride.charge_left.</summary>
    public static FigureKind ChargeLeft { get; } = new("ride.charge_left", "%", "Charge left", "State of charge at the end.", "1 − ∫ I dt/Q", Sources.CircuitTheory);
    /// <summary>ride.cell_voltage_min.</summary>
    public static FigureKind LowestCell { get; } = new("ride.cell_voltage_min", "V", "Lowest cell voltage", "Least voltage of a loaded cell.", "E − I R0 − v1 − v2", Sources.Plett);
    /// <summary>ride.phase_peak.</summary>
    public static FigureKind PeakPhase { get; } = new("ride.phase_peak", "A", "Phase current, peak", "Greatest phase amplitude of a motor, driving or braking.", "largest |i|", Sources.Pmsm);
    /// <summary>ride.phase_rms.</summary>
    public static FigureKind RmsPhase { get; } = new("ride.phase_rms", "A", "Phase current, RMS", "Root mean square of the phase amplitude over the ride, stops included.", "√(∫ i² dt/t)", Sources.Pmsm);
    /// <summary>ride.pack_peak.</summary>
    public static FigureKind PeakPack { get; } = new("ride.pack_peak", "A", "Pack current, peak", "Greatest current out of the pack.", "largest I", Sources.CircuitTheory);
    /// <summary>ride.pack_rms.</summary>
    public static FigureKind RmsPack { get; } = new("ride.pack_rms", "A", "Pack current, RMS", "Root mean square of the pack's current over the ride, stops included.", "√(∫ I² dt/t)", Sources.CircuitTheory);
    /// <summary>ride.regen_peak.</summary>
    public static FigureKind PeakRegen { get; } = new("ride.regen_peak", "A", "Braking pack current, peak", "Greatest current into the pack.", "largest −I", Sources.CircuitTheory);
    /// <summary>ride.winding_peak.</summary>
    public static FigureKind Winding { get; } = new("ride.winding_peak", "°C", "Hottest winding", "Greatest temperature of the windings.", "two nodes in time: winding – case – air", Sources.TwoNodeMotor);
    /// <summary>ride.case_peak.</summary>
    public static FigureKind Case { get; } = new("ride.case_peak", "°C", "Hottest motor case", "Greatest temperature of the motors' cases.", "as ride.winding_peak", Sources.TwoNodeMotor);
    /// <summary>ride.cell_peak.</summary>
    public static FigureKind Cells { get; } = new("ride.cell_peak", "°C", "Hottest cells", "Greatest temperature of the cells, all alike.", "C dT/dt = I² R0 + v1²/R1 + v2²/R2 − UA (T − T_air)", Sources.CircuitTheory);
    /// <summary>ride.controller_peak.</summary>
    public static FigureKind Controller { get; } = new("ride.controller_peak", "°C", "Hottest controller", "Greatest temperature of the controllers.", "C dT/dt = losses − (T − T_air)/R", Sources.CircuitTheory);
    /// <summary>ride.fade.</summary>
    public static FigureKind InFade { get; } = new("ride.fade", "min", "Time in fade", "Time with a controller so hot that it fades the phase current.", "Σ steps", Sources.MakersSheet);
    /// <summary>ride.taper.</summary>
    public static FigureKind InTaper { get; } = new("ride.taper", "min", "Time in taper", "Time with the pack so low that its current is tapered.", "Σ steps", Sources.MakersSheet);
    /// <summary>ride.foot_brake.</summary>
    public static FigureKind FootBrake { get; } = new("ride.foot_brake", "Wh", "Left to foot or slide", "Braking that the electric brake could not do.", "∫ F_foot v dt", Sources.Mechanics);

    /// <summary>Every kind, in the order of a report.</summary>
    public static IReadOnlyList<FigureKind> All { get; } =
    [
        Distance, Time, Moving, Energy, Returned, Consumption, ChargeLeft, LowestCell, PeakPhase, RmsPhase, PeakPack, RmsPack, PeakRegen,
        Winding, Case, Cells, Controller, InFade, InTaper, FootBrake,
    ];

    /// <summary>What a figure says the greatest temperature of; <c>null</c> for a figure of another sort.</summary>
    public static Hottest? HottestOf(FigureKind kind, Ride ride) => kind.Id switch
    {
        "ride.winding_peak" => ride.Winding,
        "ride.case_peak" => ride.Case,
        "ride.cell_peak" => ride.Cells,
        "ride.controller_peak" => ride.Controller,
        _ => null,
    };

    /// <summary>The value of a figure; <c>null</c> where the ride has none.</summary>
    public static double? ValueOf(FigureKind kind, Ride ride) => kind.Id switch
    {
        "ride.distance" => ride.Distance.Kilometres,
        "ride.time" => ride.Time.Minutes,
        "ride.moving" => ride.Moving.Minutes,
        "ride.energy" => ride.Used.WattHours,
        "ride.returned" => ride.Energy.Returned / 3600,
        "ride.consumption" => ride.Consumption?.WattHoursPerKilometre,
        "ride.charge_left" => 100 * ride.ChargeLeft.Value,
        "ride.cell_voltage_min" => ride.LowestCell.Volts.Volts,
        "ride.phase_peak" => ride.PeakPhase.Amperes,
        "ride.phase_rms" => ride.RmsPhase.Amperes,
        "ride.pack_peak" => ride.PeakPack.Amperes,
        "ride.pack_rms" => ride.RmsPack.Amperes,
        "ride.regen_peak" => ride.PeakRegen.Amperes,
        "ride.fade" => ride.InFade.Minutes,
        "ride.taper" => ride.InTaper.Minutes,
        "ride.foot_brake" => ride.Energy.FootBrake / 3600,
        _ => HottestOf(kind, ride) is { } hottest
            ? hottest.Peak.Celsius
            : throw new ArgumentOutOfRangeException(nameof(kind), kind.Id, "No figure of a ride."),
    };
}
