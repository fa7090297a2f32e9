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
    /// <summary>The usual values among entries and figures, and among what those figures rest on.</summary>
    /// <param name="from">Keys of entries and ids of figures.</param>
    public IReadOnlyList<string> UsualAmong(IEnumerable<string> from)
    {
        ArgumentNullException.ThrowIfNull(from);
        return Usual.Count == 0 ? [] : [.. FigureNeeds.Follow(Figures, from).Where(key => Usual.Any(u => u.Key == key))];
    }

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

        Add(TopFull, Speeds, s => 3.6 * s.Full, _ => Board.Parts.Controller.ElectricalSpeedLimit.IsKnown ? null
            : "as far as the controller turns: its electrical speed limit is not known");
        Add(TopHalf, Speeds, s => 3.6 * s.Half);
        Add(TopReserve, SpeedAtReserve, s => 3.6 * s.MetresPerSecond, s => s.Si == 0 ? "the taper leaves no power at the reserve" : null);
        Add(UnloadedFull, UnloadedSpeed, s => 3.6 * s.MetresPerSecond);
        Add(Catalogue.Range, Cruise, c => c.Steady?.Metres / 1000, c => c.Steady is null ? "the pack cannot hold this speed" : c.Steady.EndsAtTaper ? "ends where the taper cuts, before the reserve" : null);
        Add(Pace, RangePace, p => 3.6 * p.Fastest, p => p.Fastest is null ? "not reached at any pace" : null);
        Add(Consumption, Cruise, c => c.Steady?.Consumption / 3.6);
        Add(CruisePower, Cruise, c => c.Steady?.AtHalf.Bus.Watts);
        Add(Grade, SteepestClimb, g => 100 * g.Value);
        Add(ClimbPhase, Climb, c => c.Asked?.PhaseCurrent, c => c.Asked is null ? "the pack cannot give the power" : IsBeyond(c.Asked) ? "beyond the limits" : null);
        Add(ClimbPack, Climb, c => c.Asked?.Bus.Amperes, c => c.Asked is { } asked && IsBeyond(asked) ? "beyond the limits" : null);
        Add(Catalogue.StartForce, StartForce, f => f.Newtons);
        Add(BrakeDistance, Brakes, b => b.Half, b => b.Half is null ? "does not stop" : null);
        Add(BrakeDistanceFull, Brakes, b => b.Full, b => b.Full is null ? "does not stop" : null);
        Add(BrakeDistanceDownhill, Descent, d => d.Stop, d => d.Stop is null ? "does not stop" : null);
        Add(GradeHeld, DescentHeld, g => 100 * g.Value);
        if (!BrakeNote.IsBeside)
        {
            list.Add(new Figure
            {
                Kind = Catalogue.BrakeNote,
                Unit = "",
                Text = BrakeNote.IsKnown ? BrakeNote.Value : null,
                From = BrakeNote.From,
                Missing = BrakeNote.Missing,
            });
        }

        Add(ChargeFull, Charge, c => c.Full.Hours);
        Add(Charge80, Charge, c => c.ToFourFifths.Hours);
        Add(ChargeBound, Packs.ChargeTime.BoundOf(Board), b => b.Hours);
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
        Add(ElectricalSpeed, Traction.TopSpeeds.ElectricalOf(UnloadedSpeed, Wheels), w => w.Rpm);
        Add(Cells, Energy, e => e.Cells);
        Add(Catalogue.PackEnergy, Energy, e => e.Energy.WattHours);
        Add(PackCapacity, Packs.PackModel.CapacityOf(Board), c => c.AmpereHours);
        Add(VoltageFull, Window, w => w.Full.Volts);
        Add(VoltageEmpty, Window, w => w.Empty.Volts);
        Add(PackResistance, Pack, p => p.OhmsAt(0.5));
        Add(FeedPower, Traction.CurrentLimits.FeedPowerOf(PackLimits, Pack, PackWiring), p => p.Watts);
        Add(PhaseLimit, PhaseLimits, l => l.Enforced.Current.Amperes, l => l.Enforced.Says);
        Add(PackLimit, PackLimits, l => l.Enforced.Current.Amperes, l => l.Enforced.Says);
        Add(RegenLimit, RegenLimits, l => l.Enforced.Current.Amperes, l => l.Enforced.Says);
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

    bool IsBeyond(Traction.OperatingPoint asked) => Running.IsKnown && !Running.Value.Allows(asked, Traction.Climb.Charge);

    string Currency => Quote.IsKnown ? Quote.Value.Parts.Currency : "";

    static string? LowerBound(IReadOnlyList<string> missing) => missing.Count == 0 ? null
        : $"a lower bound: {string.Join(", ", missing)} not known";
}
