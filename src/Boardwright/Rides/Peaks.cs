using System.Runtime.InteropServices;
using static System.Math;

namespace Boardwright.Rides;

/// <summary>The greatest and least of everything on a ride, and for how long it was held back.</summary>
[StructLayout(LayoutKind.Auto)]
struct Peaks
{
    public Peak Winding, Case, Cells, Controller;
    public Peak CellVolts;
    public double Phase, Out, Into;
    public double FadeSeconds, TaperSeconds;
    public HeldSeconds Held;

    public static Peaks At(RideState start) => new()
    {
        Winding = new(start.Winding, 0),
        Case = new(start.Case, 0),
        Cells = new(start.Cells, 0),
        Controller = new(start.Controller, 0),
        CellVolts = new(double.PositiveInfinity, 0),
    };

    public void Take(RideState now, double phase, double amperes, double packVolts, double h, RideHeat heat, Simulation.Pull pull,
        bool isTapering)
    {
        Winding.Raise(now.Winding, now.Metres);
        Case.Raise(now.Case, now.Metres);
        Cells.Raise(now.Cells, now.Metres);
        Controller.Raise(now.Controller, now.Metres);
        Mark(phase, amperes, packVolts, now.Metres);
        FadeSeconds += now.Controller > heat.FadeStart ? h : 0;
        TaperSeconds += isTapering ? h : 0;
        if (pull.HeldBack != RideLimit.Nothing)
            Held[(int)pull.HeldBack] += h;
    }

    public void Mark(double phase, double amperes, double packVolts, double metres)
    {
        if (packVolts < CellVolts.Value)
            CellVolts = new(packVolts, metres);
        Phase = Max(Phase, phase);
        Out = Max(Out, amperes);
        Into = Max(Into, -amperes);
    }

    /// <summary>A value and where it was met.</summary>
    [StructLayout(LayoutKind.Auto)]
    public struct Peak(double value, double metres)
    {
        public double Value = value, Metres = metres;

        public void Raise(double other, double at)
        {
            if (other > Value)
                (Value, Metres) = (other, at);
        }
    }

    /// <summary>Seconds for each member of <see cref="RideLimit"/>.</summary>
    [System.Runtime.CompilerServices.InlineArray(7)]
    public struct HeldSeconds
    {
        double first;
    }
}
