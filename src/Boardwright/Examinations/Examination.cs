using Boardwright.Analyses;
using Boardwright.Findings;
using Boardwright.Fits;
using Boardwright.Parts;
using Boardwright.Rules;
using static Boardwright.Examinations.Catalogue;

namespace Boardwright.Examinations;

/// <summary>A board's analysis with its figures and what the rules find.</summary>
public sealed class Examination : BoardAnalysis
{
    readonly Lazy<IReadOnlyList<Finding>> findings;

    Examination(Board board)
        : base(board)
    {
        Figures = ListFigures();
        findings = new(() => [.. Rulebook.All.SelectMany(rule => rule.Judge(this, board.Parts.UnchosenPlaceOf)).OrderBy(f => f.Level)]);
    }

    /// <summary>Every figure that applies to the board, known or not, in the order of the catalogue.</summary>
    public IReadOnlyList<Figure> Figures { get; }
    /// <summary>Every finding, worst first, and within a level in the order of the rulebook.</summary>
    public IReadOnlyList<Finding> Findings => findings.Value;
    /// <summary>Examines a board whose entries are named (see <see cref="Board.WithNames()"/>).</summary>
    public static Examination Examine(Board board) => new(board);
    /// <summary>The figures alone.</summary>
    public static IReadOnlyList<Figure> FiguresOf(Board board) => new Examination(board).Figures;

    List<Figure> ListFigures()
    {
        var list = new List<Figure>();

        void Add<T>(FigureKind kind, Answer<T> answer, Func<T, double?> value, Func<T, string?>? caution = null, string? unit = null)
            where T : notnull
        {
            if (answer.IsBeside)
                return;
            list.Add(new Figure
            {
                Kind = kind,
                Unit = unit ?? kind.Unit,
                Value = answer.IsKnown ? value(answer.Value) : null,
                From = answer.From,
                Missing = answer.Missing,
                Caution = answer.IsKnown ? caution?.Invoke(answer.Value) : null,
            });
        }

        Add(TopFull, Speeds, s => 3.6 * s.Full);
        Add(TopHalf, Speeds, s => 3.6 * s.Half);
        Add(TopReserve, Speeds, s => 3.6 * s.Reserve, s => s.Reserve == 0 ? "the taper leaves no power at the reserve" : null);
        Add(UnloadedFull, Speeds, s => 3.6 * s.UnloadedFull);
        Add(Catalogue.Range, Cruise, c => c.Steady?.Metres / 1000, c => c.Steady is null ? "the pack cannot hold this speed" : c.Steady.EndsAtTaper ? "ends where the taper cuts, before the reserve" : null);
        if (Board.Brief.RangeWanted.IsKnown)
            Add(Pace, Cruise, c => 3.6 * c.Pace, c => c.Pace is null ? "not reached at any pace" : null);
        Add(Consumption, Cruise, c => c.Steady?.Consumption / 3.6);
        Add(CruisePower, Cruise, c => c.Steady?.AtHalf.Bus.Watts);
        Add(Grade, Climb, c => 100 * c.Steepest);
        Add(ClimbPhase, Climb, c => c.Asked?.PhaseCurrent, c => c.Asked is null ? "the pack cannot give the power" : c.Asked.IsWithinLimits ? null : "beyond the limits");
        Add(ClimbPack, Climb, c => c.Asked?.Bus.Amperes, c => c.Asked is { IsWithinLimits: false } ? "beyond the limits" : null);
        Add(StartForce, Speeds, s => s.StartForce);
        Add(BrakeDistance, Brakes, b => b.Half, b => b.Half is null ? "does not stop" : null);
        Add(BrakeDistanceFull, Brakes, b => b.Full, b => b.Full is null ? "does not stop" : null);
        Add(BrakeDistanceDownhill, Brakes, b => b.Downhill, b => b.Downhill is null ? "does not stop" : null);
        Add(GradeHeld, Brakes, b => 100 * b.GradeHeldFull);
        if (!Brakes.IsBeside)
        {
            list.Add(new Figure
            {
                Kind = BrakeNote,
                Unit = "",
                Text = Brakes.IsKnown ? Brakes.Value.Note : null,
                From = Brakes.From,
                Missing = Brakes.Missing,
            });
        }

        Add(ChargeFull, Charge, c => c.Full.Hours);
        Add(Charge80, Charge, c => c.ToFourFifths.Hours);
        Add(ChargeBound, Charge, c => c.LowerBound.Hours);
        Add(BoardMass, Masses, m => m.Board.Kilograms, m => LowerBound(m.Unweighed));
        Add(Catalogue.RollingMass, RollingMass, m => m.Mass.Kilograms, _ => Masses.IsKnown ? LowerBound(Masses.Value.Unweighed) : null);
        Add(Catalogue.EffectiveMass, EffectiveMass, m => m.Mass.Kilograms, _ => Masses.IsKnown ? LowerBound(Masses.Value.Unweighed) : null);
        Add(Ratio, Gearing, g => g.Ratio);
        Add(Catalogue.BeltTeeth, BeltTeeth, b => b.Teeth);
        Add(CentreDistance, Belt, b => b.Path.CentreDistance.Millimetres);
        Add(TeethInMesh, Belt, b => b.Path.TeethInMesh);
        Add(Span, Belt, b => b.Path.Span.Millimetres);
        Add(BeltPull, BeltLoad, b => b.PeakPull.Newtons);
        Add(BeltRating, BeltLoad, b => b.Rating?.Newtons);
        Add(StaticTension, BeltLoad, b => b.StaticTension.Newtons);
        Add(SpanFrequency, BeltLoad, b => b.Frequency.Hertz);
        Add(BeltSpeed, BeltSpeedAtTop, v => v.MetresPerSecond);
        Add(TorqueConstant, MotorConstants, m => new Motors.MotorConstants(m.Kv, 1).NewtonMetresPerPeakAmpere);
        Add(FluxLinkage, Motors.MotorModel.FluxOf(Board), m => m.FluxLinkageWebers);
        Add(PeakTorque, Traction.CurrentLimits.PeakTorqueOf(MotorConstants, PhaseLimits), t => t.NewtonMetres);
        Add(ElectricalSpeed, Traction.TopSpeeds.ElectricalOf(Speeds, Drive), w => w.Rpm);
        Add(Cells, Energy, e => e.Cells);
        Add(Catalogue.PackEnergy, Energy, e => e.Energy.WattHours);
        Add(PackCapacity, Packs.PackModel.CapacityOf(Board), c => c.AmpereHours);
        Add(VoltageFull, Window, w => w.Full.Volts);
        Add(VoltageEmpty, Window, w => w.Empty.Volts);
        Add(PackResistance, Pack, p => p.OhmsAt(0.5));
        Add(FeedPower, Traction.CurrentLimits.FeedPowerOf(PackLimits, Pack, PackWiring), p => p.Watts);
        Add(PhaseLimit, PhaseLimits, l => l.Weakest.Current.Amperes, l => l.Weakest.Says);
        Add(PackLimit, PackLimits, l => l.Weakest.Current.Amperes, l => l.Weakest.Says);
        Add(RegenLimit, RegenLimits, l => l.Weakest.Current.Amperes, l => l.Weakest.Says);
        Add(Winding, ClimbHeat, h => h.Settled?.Winding.Celsius, h => h.Outlived is null ? "never settles: no winding outlives 250 °C" : null);
        Add(Minutes, ClimbHeat, h => h.TimeToLimit?.Minutes,
            h => h.Limit is null ? "no limit of the winding is known" : !h.IsTold ? "cannot be told: winding and case have heat capacities too unlike" : h.TimeToLimit is null ? "the limit is not reached" : null);
        Add(PackWire, Wires, w => w.Pack?.Temperature?.Celsius, w => w.Pack is { Temperature: null } ? "no end below the melting of copper" : null);
        Add(MotorWire, Wires, w => w.Motor?.Temperature?.Celsius, w => w.Motor is { Temperature: null } ? "no end below the melting of copper" : null);
        Add(LeadLoss, Wires, w => w.MotorLeadLoss?.Watts);
        Add(PackDrop, Traction.CurrentLimits.DropOf(PackLimits, PackWiring), v => v.Volts);
        Add(Catalogue.MotorAboveRoad, MotorAboveRoad, l => l.Millimetres);
        Add(Catalogue.BoxAboveRoad, BoxAboveRoad, l => l.Millimetres);
        Add(Catalogue.Breakover, Breakover, a => a.Degrees);
        Add(PartsCost, Quote, q => (double)q.Parts.Amount, q => LowerBound(q.Unpriced), Currency);
        Add(Catalogue.Cost, Cost, c => (double)c.Money.Amount, _ => Quote.IsKnown ? LowerBound(Quote.Value.Unpriced) : null, Currency);
        Add(Catalogue.Price, Price, c => (double)c.Money.Amount, _ => Quote.IsKnown ? LowerBound(Quote.Value.Unpriced) : null, Currency);
        return list;
    }

    string Currency => Quote.IsKnown ? Quote.Value.Parts.Currency : "";

    static string? LowerBound(IReadOnlyList<string> missing) => missing.Count == 0 ? null
        : $"a lower bound: {string.Join(", ", missing)} not known";
}
