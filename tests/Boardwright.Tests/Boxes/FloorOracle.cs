using Boardwright.Boxes;
using Google.OrTools.Sat;

namespace Boardwright.Tests.Boxes;

/// <summary>What a general solver says of a floor.</summary>
enum Verdict
{
    /// <summary>It found a way.</summary>
    Fits,

    /// <summary>It proved that there is none.</summary>
    DoesNotFit,

    /// <summary>It found neither in the time.</summary>
    Unknown,
}

/// <summary>The same task put to a general constraint solver, with the same rules: outlines do not overlap and keep their distances, rooms
/// overlap no outline, everything lies inside.</summary>
static class FloorOracle
{
    /// <summary>Asks.</summary>
    public static (Verdict Verdict, IReadOnlyList<FloorPlace?> Places) Ask(FloorPlan plan, double seconds)
    {
        var model = new CpModel();
        var outlines = new List<(int Piece, IntervalVar X, IntervalVar Y)>();
        var rooms = new List<(int Piece, int Room, IntervalVar X, IntervalVar Y)>();
        var chosen = new List<BoolVar[]>();
        var corners = new List<(IntVar X, IntVar Y)>();
        foreach (var (i, piece) in plan.Pieces.Index())
        {
            var (x, y) = (model.NewIntVar(-plan.Along, plan.Along, $"x{i}"), model.NewIntVar(-plan.Across, plan.Across, $"y{i}"));
            BoolVar[] forms = [.. piece.Forms.Select((_, f) => model.NewBoolVar($"f{i}_{f}"))];
            model.AddExactlyOne(forms);
            foreach (var (f, form) in piece.Forms.Index())
            {
                if (!form.IsPossible)
                {
                    model.Add(forms[f] == 0);
                    continue;
                }

                model.AddLinearConstraint(x, form.X.Least, form.X.Greatest).OnlyEnforceIf(forms[f]);
                model.AddLinearConstraint(y, form.Y.Least, form.Y.Greatest).OnlyEnforceIf(forms[f]);
                outlines.Add((i, model.NewOptionalFixedSizeIntervalVar(x, form.Along, forms[f], $"ox{i}_{f}"),
                    model.NewOptionalFixedSizeIntervalVar(y, form.Across, forms[f], $"oy{i}_{f}")));
                foreach (var (r, room) in form.Rooms.Index())
                    rooms.Add((i, r, model.NewOptionalFixedSizeIntervalVar(x + room.X, room.Along, forms[f], $"rx{i}_{f}"),
                    model.NewOptionalFixedSizeIntervalVar(y + room.Y, room.Across, forms[f], $"ry{i}_{f}")));
            }

            chosen.Add(forms);
            corners.Add((x, y));
        }

        var apart = model.AddNoOverlap2D();
        foreach (var (_, x, y) in outlines)
            apart.AddRectangle(x, y);
        foreach (var own in rooms.GroupBy(room => (room.Piece, room.Room)))
        {
            var clear = model.AddNoOverlap2D();
            foreach (var room in own)
                clear.AddRectangle(room.X, room.Y);
            foreach (var other in outlines.Where(outline => outline.Piece != own.Key.Piece))
                clear.AddRectangle(other.X, other.Y);
        }

        // Two that keep a distance: one of them is made larger by it, for this pair alone.
        for (var i = 0; i < plan.Pieces.Count; i++)
        {
            for (var j = 0; j < i; j++)
            {
                if (plan.GapBetween(i, j) is not (> 0 and var gap))
                    continue;
                var far = model.AddNoOverlap2D();
                foreach (var (f, form) in plan.Pieces[i].Forms.Index().Where(pair => pair.Item.IsPossible))
                    far.AddRectangle(model.NewOptionalFixedSizeIntervalVar(corners[i].X - gap, form.Along + 2 * gap, chosen[i][f], ""),
                    model.NewOptionalFixedSizeIntervalVar(corners[i].Y - gap, form.Across + 2 * gap, chosen[i][f], ""));
                foreach (var outline in outlines.Where(outline => outline.Piece == j))
                    far.AddRectangle(outline.X, outline.Y);
            }
        }

        var solver = new CpSolver { StringParameters = FormattableString.Invariant($"max_time_in_seconds:{seconds},num_workers:2,random_seed:1") };
        var status = solver.Solve(model);
        if (status is not (CpSolverStatus.Feasible or CpSolverStatus.Optimal))
            return (status == CpSolverStatus.Infeasible ? Verdict.DoesNotFit : Verdict.Unknown, []);
        return (Verdict.Fits, [.. chosen.Select(
            (forms, i) => (FloorPlace?)new FloorPlace(
            Array.FindIndex(forms, solver.BooleanValue), (int)solver.Value(corners[i].X), (int)solver.Value(corners[i].Y)))]);
    }
}
