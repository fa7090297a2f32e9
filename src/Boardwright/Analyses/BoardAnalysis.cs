using Boardwright.Boxes;
using Boardwright.Drivetrains;
using Boardwright.Findings;
using Boardwright.Fits;
using Boardwright.Heat;
using Boardwright.Motors;
using Boardwright.Packs;
using Boardwright.Parts;
using Boardwright.Prices;
using Boardwright.Road;
using Boardwright.Traction;
using Boardwright.UsualValues;
using Boardwright.Wiring;
using static System.Math;

namespace Boardwright.Analyses;

/// <summary>Every question about a board, answered once, in order.</summary>
/// <remarks>Rules, figures and documents read the answers here and never compute them again.</remarks>
public class BoardAnalysis
{
    readonly Lazy<BoardShape> shape;
    readonly Lazy<Harness> harness;
    readonly Lazy<Answer<BoltPattern>> bolts;
    readonly Lazy<Answer<BoxLayout>> layout;
    readonly Lazy<IReadOnlyList<TakenValue>> usual;
    readonly Lazy<Answer<AxialStackUp>> axialStack;
    readonly Lazy<Answer<AxleStackUp>> axleStack;

    internal BoardAnalysis(Board board)
    {
        Stated = board;
        board = Board = UsualTable.Complete(board);
        var parts = board.Parts;
        var run = SteadyRunningOfBoard.Compute(board);
        (Masses, RollingMass, Gearing, EffectiveMass) = (run.Masses, run.RollingMass, run.Gearing, run.EffectiveMass);
        BeltTeeth = IsBelt ? BeltDrive.TeethOf(board) : Answer<BeltTeeth>.Beside;
        Belt = IsBelt ? BeltDrive.Compute(board) : Answer<BeltDrive>.Beside;
        MotorConstants = MotorModel.ConstantsOf(board);
        Window = PackModel.WindowOf(board);
        Energy = PackModel.EnergyOf(board);
        (Motor, Pack, PackWiring, Air) = (run.Motor, run.Pack, run.Wiring, run.Air);
        Charge = parts.Charger.IsChosen ? ChargeTime.Compute(board, Pack) : Answer<ChargeTime>.Beside;
        (PhaseLimits, BrakePhaseLimits, PackLimits, RegenLimits) = (run.PhaseLimits, run.BrakePhaseLimits, run.PackLimits, run.RegenLimits);
        (Wheels, Drive, Load, Demand, Running, Moving) = (run.Wheels, run.Drive, run.Load, run.Demand, run.Running, run.Moving);
        Speeds = TopSpeeds.Compute(Running);
        (SpeedAtReserve, StartForce) = (TopSpeeds.AtReserveOf(board, Running), TopSpeeds.StartForceOf(Moving));
        UnloadedSpeed = SteadyRunningAnalysis.UnloadedOf(board, Drive, Pack, PackWiring);
        (Climb, SteepestClimb) = (Traction.Climb.Compute(board, Demand), Traction.Climb.SteepestOf(board, Running));
        (Cruise, RangePace) = (CruiseOfBoard.Compute(board, Demand), Traction.RangePace.Compute(board, Running));
        (Brakes, Descent) = (Traction.Brakes.Compute(board, run.Braked), Traction.Descent.Compute(board, run.Braked));
        DescentHeld = Traction.Descent.HeldGradeOf(board, run.Braked);
        BrakeNote = Traction.Brakes.NoteOf(board, Brakes, Descent, RegenLimits);
        ClimbHeat = Heat.ClimbHeat.Compute(board, Motor, Air, Traction.Climb.MotorDutyOf(Climb, Wheels));
        BeltLoad = IsBelt ? Traction.BeltLoad.Compute(board, Belt, MotorConstants, PhaseLimits, BrakePhaseLimits) : Answer<BeltLoad>.Beside;
        Wires = WireHeat.Compute(board, Air, PackLimits, Climb);
        Fault = Wiring.ShortCircuit.Compute(board, Pack, PackWiring, Window);
        Precharge = Wiring.Precharge.Compute(board, Window);
        Quote = Prices.Quote.Compute(board);
        Cost = Prices.Quote.CostOf(board, Quote);
        Price = Prices.Quote.PriceOf(board, Cost);
        (Centre, MountAngle) = (Fits.MotorPlace.CentreOf(board, Belt), Fits.MotorPlace.MountAngleOf(board));
        MotorPlace = Fits.MotorPlace.Compute(board, Centre, MountAngle);
        (LoadOnDeck, WheelRadius) = (Answer<Mass>.Ask("", board.Brief.LoadOnDeck), Answer<Length>.Ask("", parts.Wheels.Radius));
        (Wheelbase, DeckBend) = (RoadClearance.WheelbaseOf(board), RoadClearance.DeckBendOf(board, LoadOnDeck));
        (MotorAboveRoad, BoxAboveRoad) =
            (RoadClearance.UnderMotorOf(MotorPlace, WheelRadius), RoadClearance.UnderBoxOf(board, WheelRadius, DeckBend));
        Breakover = RoadClearance.BreakoverOf(BoxAboveRoad, Wheelbase);
        WheelPulleyOverBelt = BeltDrive.OverWheelPulleyOf(board);
        BeltSpeedAtTop = TopSpeeds.BeltSpeedOf(Belt, UnloadedSpeed, Wheels);
        shape = new(() => BoardShape.Compute(board, Belt));
        layout = new(() => BoxLayout.Compute(board, DeckBend, Wheelbase, Bolts));
        harness = new(() => Laid(Traction.Climb.WireDutyOf(Climb, PackLimits, PhaseLimits), ifProposed: false));
        bolts = new(() => BoltPattern.Compute(board));
        usual = new(() => UsualTable.ListTaken(board));
        (axialStack, axleStack) = (new(() => AxialStackUp.Compute(board)), new(() => AxleStackUp.Compute(board)));
    }

    /// <summary>The board as its maker states it.</summary>
    public Board Stated { get; }
    /// <summary>The board, with usual values for what its maker does not state.</summary>
    public Board Board { get; }
    /// <summary>The usual values that were taken.</summary>
    public IReadOnlyList<TakenValue> Usual => usual.Value;
    /// <summary>Whether belts turn the wheels.</summary>
    public bool IsBelt => Board.Parts.Drive.IsBelt;
    /// <summary>Whether gears turn the wheels.</summary>
    public bool IsGear => Board.Parts.Drive.IsGear;
    /// <summary>Whether the motors sit in the wheels.</summary>
    public bool IsHub => Board.Parts.Drive.IsHub;
    /// <summary>Mass of the board.</summary>
    public Answer<Masses> Masses { get; }
    /// <summary>Mass of board, rider and gear.</summary>
    public Answer<RollingMass> RollingMass { get; }
    /// <summary>Mass with what turns.</summary>
    public Answer<RollingMass> EffectiveMass { get; }
    /// <summary>Ratio and losses between motor and wheel.</summary>
    public Answer<GearRatio> Gearing { get; }
    /// <summary>Teeth of the belt.</summary>
    public Answer<BeltTeeth> BeltTeeth { get; }
    /// <summary>The belt on its pulleys.</summary>
    public Answer<BeltDrive> Belt { get; }
    /// <summary>Pull, tension and rating of the belt.</summary>
    public Answer<BeltLoad> BeltLoad { get; }
    /// <summary>KV and pole pairs.</summary>
    public Answer<MotorConstantsOfBoard> MotorConstants { get; }
    /// <summary>The whole motor.</summary>
    public Answer<MotorModel> Motor { get; }
    /// <summary>Voltage of the pack, full and empty.</summary>
    public Answer<VoltageWindow> Window { get; }
    /// <summary>Cells and energy of the pack.</summary>
    public Answer<PackEnergy> Energy { get; }
    /// <summary>The pack.</summary>
    public Answer<PackModel> Pack { get; }
    /// <summary>The charge.</summary>
    public Answer<ChargeTime> Charge { get; }
    /// <summary>What the board holds the phase current to when driving.</summary>
    public Answer<CurrentLimits> PhaseLimits { get; }
    /// <summary>What it holds it to when braking.</summary>
    public Answer<CurrentLimits> BrakePhaseLimits { get; }
    /// <summary>What it holds the current out of the pack to.</summary>
    public Answer<CurrentLimits> PackLimits { get; }
    /// <summary>What it holds the current into the pack to.</summary>
    public Answer<CurrentLimits> RegenLimits { get; }
    /// <summary>Wires between pack and controllers.</summary>
    public Answer<PackWiring> PackWiring { get; }
    /// <summary>Air of the brief.</summary>
    public Answer<Air> Air { get; }
    /// <summary>Motors, gears and wheels.</summary>
    public Answer<WheelDrive> Wheels { get; }
    /// <summary>The electric drive as the board holds it when driving.</summary>
    public Answer<Propulsion> Drive { get; }
    /// <summary>Air, rolling and mass.</summary>
    public Answer<LoadOfBoard> Load { get; }
    /// <summary>What a speed asks of the board, whatever limits it.</summary>
    public Answer<SteadyRunning> Demand { get; }
    /// <summary>The board at steady speeds within its limits.</summary>
    public Answer<SteadyRunning> Running { get; }
    /// <summary>The board while its speed changes.</summary>
    public Answer<MovingRunning> Moving { get; }
    /// <summary>Top speeds at full and half charge.</summary>
    public Answer<TopSpeeds> Speeds { get; }
    /// <summary>Top speed at the brief's reserve.</summary>
    public Answer<Speed> SpeedAtReserve { get; }
    /// <summary>Speed with the wheels in the air at full charge.</summary>
    public Answer<Speed> UnloadedSpeed { get; }
    /// <summary>Force from rest at full charge.</summary>
    public Answer<Force> StartForce { get; }
    /// <summary>The brief's climb.</summary>
    public Answer<Climb> Climb { get; }
    /// <summary>Steepest grade held at the climbing speed at half charge.</summary>
    public Answer<Fraction> SteepestClimb { get; }
    /// <summary>The brief's cruise.</summary>
    public Answer<CruiseOfBoard> Cruise { get; }
    /// <summary>The pace at which the brief's range is reached.</summary>
    public Answer<RangePace> RangePace { get; }
    /// <summary>The electric brake from cruise speed on the level.</summary>
    public Answer<Brakes> Brakes { get; }
    /// <summary>The electric brake down the brief's climb.</summary>
    public Answer<Descent> Descent { get; }
    /// <summary>Steepest descent held at the climbing speed at full charge.</summary>
    public Answer<Fraction> DescentHeld { get; }
    /// <summary>What the rider must be able to do beside the electric brake.</summary>
    public Answer<string> BrakeNote { get; }
    /// <summary>Motors on the climb.</summary>
    public Answer<ClimbHeat> ClimbHeat { get; }
    /// <summary>Temperatures of the wires.</summary>
    public Answer<WireHeat> Wires { get; }
    /// <summary>A short behind the fuse, and the first moment under power.</summary>
    public Answer<ShortCircuit> Fault { get; }
    /// <summary>The resistor that fills the controllers' capacitors: the stated one, or one that would suit.</summary>
    public Answer<Precharge> Precharge { get; }
    /// <summary>Every run of wire, on the brief's climb for ever and at the current limits; along the layout of the box where the board
    /// file states one.</summary>
    public Harness Harness => harness.Value;
    /// <summary>The bolts of the box.</summary>
    public Answer<BoltPattern> Bolts => bolts.Value;
    /// <summary>What the parts cost.</summary>
    public Answer<Quote> Quote { get; }
    /// <summary>What one board costs to make.</summary>
    public Answer<CostOfOne> Cost { get; }
    /// <summary>Its price.</summary>
    public Answer<CostOfOne> Price { get; }
    /// <summary>Belt drive along the driven axle.</summary>
    public Answer<AxialStackUp> AxialStack => axialStack.Value;
    /// <summary>What the driven axle carries.</summary>
    public Answer<AxleStackUp> AxleStack => axleStack.Value;
    /// <summary>Distance between motor shaft and axle.</summary>
    public Answer<Length> Centre { get; }
    /// <summary>Mount angle that is meant: the chosen one, or the mount's first.</summary>
    public Answer<Angle> MountAngle { get; }
    /// <summary>Where the motors sit.</summary>
    public Answer<MotorPlace> MotorPlace { get; }
    /// <summary>Wheelbase: the deck's first.</summary>
    public Answer<Length> Wheelbase { get; }
    /// <summary>Mass that the deck carries: rider and gear.</summary>
    public Answer<Mass> LoadOnDeck { get; }
    /// <summary>Rolling radius of the wheels.</summary>
    public Answer<Length> WheelRadius { get; }
    /// <summary>How far the deck bends in the middle under its load.</summary>
    public Answer<Length> DeckBend { get; }
    /// <summary>Clearance under the motors.</summary>
    public Answer<Length> MotorAboveRoad { get; }
    /// <summary>Breakover angle over the box.</summary>
    public Answer<Angle> Breakover { get; }
    /// <summary>Clearance under the loaded box.</summary>
    public Answer<Length> BoxAboveRoad { get; }
    /// <summary>Diameter over the belt on the wheel pulley.</summary>
    public Answer<Length> WheelPulleyOverBelt { get; }
    /// <summary>The parts put together, for drawings and clearances.</summary>
    public BoardShape Shape => shape.Value;
    /// <summary>What lies where in the box.</summary>
    public Answer<BoxLayout> Layout => layout.Value;
    /// <summary>Belt speed with the wheels in the air at full charge.</summary>
    public Answer<Speed> BeltSpeedAtTop { get; }
    /// <summary>Every run of wire with lengths along the layout of the box, a proposed one too, and under a ride's currents where there is
    /// one.</summary>
    public Harness HarnessAlong(HarnessDuty? ridden) =>
        Laid(ridden ?? Traction.Climb.WireDutyOf(Climb, PackLimits, PhaseLimits), ifProposed: true);

    // A proposal is for papers and pictures; a board is not judged by it.
    Harness Laid(HarnessDuty duty, bool ifProposed)
    {
        var all = Wiring.Harness.Compute(Board, Air.IsKnown ? Air.Value : null, duty);
        return (ifProposed || Board.Layout.Count > 0) && Layout.IsKnown ? HarnessPath.Along(all, Layout.Value, Shape, Board) : all;
    }
}
