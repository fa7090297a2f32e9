using Boardwright.Drivetrains;
using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Fits;
using Boardwright.Parts;

namespace Boardwright.Searches;

/// <summary>One part that the shelf does not have, with the figures it would need.</summary>
/// <param name="Slot">Its place.</param>
/// <param name="Says">What it would have to be.</param>
public sealed record MissingPart(Slot Slot, string Says);

/// <summary>A board that does not meet the brief, or whose parts do not go together, and comes nearest to it.</summary>
/// <param name="Board">The board.</param>
/// <param name="Shortfall">Sum of what is missing, each as a part of what is asked and at most 1.</param>
/// <param name="Against">What the examination says against it.</param>
/// <param name="Purchases">Single changes with which it meets the brief, each examined; none where no single one does.</param>
public sealed record NearMiss(FoundBoard Board, double Shortfall, IReadOnlyList<Finding> Against, IReadOnlyList<MissingPart> Purchases)
{
    internal static NearMiss Create(CandidateParts offers, int[] pick)
    {
        var board = FoundBoard.Create(offers, pick);
        var examination = Examination.Examine(board.Board);
        var against = examination.Findings.Where(IsAgainst).ToList();
        return new(board, against.Sum(Short), against, []);
    }

    /// <summary>The same with the changes that would mend it.</summary>
    internal NearMiss WithPurchases(CandidateParts offers)
    {
        var found = new List<MissingPart>();
        foreach (var family in WhatIf.Families(offers, Board.Pick.ToArray(), Against))
        {
            foreach (var (slot, says, changed) in family)
            {
                if (Examination.Examine(changed).Findings.Any(IsAgainst))
                    continue;
                found.Add(new(slot, says));
                break;
            }
        }

        return this with { Purchases = found };
    }

    static bool IsAgainst(Finding f) =>
        (f.Level == Level.Stop && !FoundBoard.ShownRules.Contains(f.Rule, StringComparer.Ordinal))
        || (f.Level == Level.Fix && FoundBoard.BriefRules.Contains(f.Rule, StringComparer.Ordinal));

    static double Short(Finding f) => f.Value is { } value && f.Limit is { } limit && limit.Value != 0
        ? Math.Clamp(Math.Abs(value.Value - limit.Value) / Math.Abs(limit.Value), 1e-9, 1)
        : 1;
}

/// <summary>Boards that differ from another by one part that the shelf does not have, the smallest difference first.</summary>
static class WhatIf
{
    static readonly double[] More = [1.02, 1.05, 1.1, 1.15, 1.2, 1.3, 1.4, 1.5, 1.75, 2];
    static readonly double[] Less = [0.95, 0.9, 0.85, 0.8, 0.7, 0.6, 0.5, 0.4];

    /// <summary>Kinds of change, each with its boards.</summary>
    public static IEnumerable<IEnumerable<(Slot Slot, string Says, Board Board)>> Families(
        CandidateParts offers, int[] pick, IReadOnlyList<Finding> against)
    {
        var bare = offers.Partly(pick);
        var parts = bare.Parts;

        Board? Made(Fitted changed)
        {
            var layout = changed.Pack.Length.IsKnown ? null
                : PackLayout.In(changed.Box, changed.Controller, PartSlot.ControllerCount(changed),
                PackLayout.All(changed.Cell, changed.Pack.Series.Or(0) * changed.Pack.Parallel.Or(0)));
            return layout is null && !changed.Pack.Length.IsKnown ? null : Settings.Applied(bare with { Parts = changed }, layout);
        }

        IEnumerable<(Slot, string, Board)> Each<T>(Slot slot, IEnumerable<T> steps, Func<T, (string Says, Fitted Parts)?> change)
        {
            foreach (var step in steps)
            {
                if (change(step) is var (says, changed) && Made(changed) is { } board)
                    yield return (slot, says, board);
            }
        }

        yield return Each(Slot.Pack, Enumerable.Range(1, 8), more => Parallel(parts, more));
        yield return Each(Slot.MotorPulley, Around(6), by => Pulley(parts, by, ofMotor: true));
        yield return Each(Slot.WheelPulley, Around(12), by => Pulley(parts, by, ofMotor: false));
        yield return Each(Slot.Cell, More, by => parts.Cell.Capacity.IsKnown
            ? (FormattableString.Invariant($"a cell of at least {Up(parts.Cell.Capacity.Value.AmpereHours * by, 10):0.0} Ah ({parts.Cell.Capacity.Value.AmpereHours:0.0} Ah now)"),
            parts with
            {
                Cell = parts.Cell with
                {
                    Capacity = parts.Cell.Capacity.With(
            Charge.FromAmpereHours(Up(parts.Cell.Capacity.Value.AmpereHours * by, 10)))
                }
            })
            : null);
        yield return Each(Slot.Motor, More, by => parts.Motor.PhaseCurrentPeak.IsKnown
            ? (FormattableString.Invariant($"a motor that carries {Math.Ceiling(parts.Motor.PhaseCurrentPeak.Value.Amperes * by):0} A of phase current ({parts.Motor.PhaseCurrentPeak.Value.Amperes:0} A now)"),
            parts with
            {
                Motor = parts.Motor with
                {
                    PhaseCurrentPeak = parts.Motor.PhaseCurrentPeak.With(
            Current.FromAmperes(Math.Ceiling(parts.Motor.PhaseCurrentPeak.Value.Amperes * by)))
                }
            })
            : null);
        yield return Each(Slot.Motor, Less.Concat(More), by => parts.Motor.Kv.IsKnown
            ? (FormattableString.Invariant($"a motor of about {parts.Motor.Kv.Value.RpmPerVolt * by:0} rpm/V ({parts.Motor.Kv.Value.RpmPerVolt:0} rpm/V now)"),
            parts with
            {
                Motor = parts.Motor with
                {
                    Kv = parts.Motor.Kv.With(
            SpeedConstant.FromRpmPerVolt(Math.Round(parts.Motor.Kv.Value.RpmPerVolt * by)))
                }
            })
            : null);
        yield return Each(Slot.Controller, More, by => parts.Controller.PhaseCurrentPeak.IsKnown && parts.Controller.PackCurrent.IsKnown
            ? (FormattableString.Invariant($"a controller that carries {Math.Ceiling(parts.Controller.PhaseCurrentPeak.Value.Amperes * by):0} A of phase current and {Math.Ceiling(parts.Controller.PackCurrent.Value.Amperes * by):0} A from the pack ({parts.Controller.PhaseCurrentPeak.Value.Amperes:0} A and {parts.Controller.PackCurrent.Value.Amperes:0} A now)"),
            parts with
            {
                Controller =
            parts.Controller with
            {
                PhaseCurrentPeak = parts.Controller.PhaseCurrentPeak.With(
            Current.FromAmperes(Math.Ceiling(parts.Controller.PhaseCurrentPeak.Value.Amperes * by))),
                PackCurrent = parts.Controller.PackCurrent.With(
                Current.FromAmperes(Math.Ceiling(parts.Controller.PackCurrent.Value.Amperes * by)))
            }
            })
            : null);
        yield return Each(Slot.Protection, More, by => parts.Pack.Protection.DischargeCurrent.IsKnown
            ? (FormattableString.Invariant($"a protection that carries {Math.Ceiling(parts.Pack.Protection.DischargeCurrent.Value.Amperes * by):0} A ({parts.Pack.Protection.DischargeCurrent.Value.Amperes:0} A now)"),
            parts with
            {
                Pack = parts.Pack with
                {
                    Protection =
            parts.Pack.Protection with
            {
                DischargeCurrent = parts.Pack.Protection.DischargeCurrent.With(
            Current.FromAmperes(Math.Ceiling(parts.Pack.Protection.DischargeCurrent.Value.Amperes * by)))
            }
                }
            })
            : null);
        foreach (var family in Cheaper(bare, against))
            yield return family;
    }

    static (string, Fitted)? Parallel(Fitted parts, int more)
    {
        var (pack, box) = (parts.Pack, parts.Box);
        if (!pack.Parallel.IsKnown || pack.Length.IsKnown)
            return null;
        var many = pack.Parallel.Value + more;
        var changed = parts with { Pack = pack with { Parallel = pack.Parallel.With(many) } };
        var says = FormattableString.Invariant($"{many} cells in parallel instead of {pack.Parallel.Value}");
        var ways = PackLayout.All(parts.Cell, pack.Series.Or(0) * many);
        var controllers = PartSlot.ControllerCount(parts);
        if (PackLayout.In(box, parts.Controller, controllers, ways) is not null)
            return (says, changed);
        // The shortest longer box that takes them.
        Length? needed = null;
        foreach (var way in ways)
        {
            var room = BoxRoom.Compute(
                box, parts.Controller, controllers, Length.FromMillimetres(way.Length), Length.FromMillimetres(way.Width),
                Length.FromMillimetres(way.Height));
            if (room.IsDeepEnough && Length.FromMillimetres(way.Width) <= box.InnerWidth.Value
                && (needed is not { } least || room.EndToEnd < least))
                needed = room.EndToEnd;
        }

        if (needed is not { } length)
            return null;
        var millimetres = Math.Ceiling(length.Millimetres - 1e-9);
        return (FormattableString.Invariant($"{says}, in a box {millimetres - box.InnerLength.Value.Millimetres:0} mm longer inside ({millimetres:0} mm)"),
            changed with { Box = box with { InnerLength = box.InnerLength.With(Length.FromMillimetres(millimetres)) } });
    }

    static (string, Fitted)? Pulley(Fitted parts, int by, bool ofMotor)
    {
        var (small, large) = (parts.MotorPulley, parts.WheelPulley);
        if (!small.Teeth.IsKnown || !large.Teeth.IsKnown || ToothProfile.Parse(small.Profile.Or("")) is not { } profile
            || !parts.Mount.CentreMin.IsKnown || !parts.Mount.CentreMax.IsKnown)
            return null;
        var (motor, wheel) = (small.Teeth.Value + (ofMotor ? by : 0), large.Teeth.Value + (ofMotor ? 0 : by));
        if (motor < profile.LeastTeeth || wheel <= motor)
            return null;
        var (least, most) = (parts.Mount.CentreMin.Value, parts.Mount.CentreMax.Value);
        var belt = Enumerable.Range(wheel, 120)
            .Select(teeth => (Teeth: teeth, Path: BeltPath.Fitting(teeth, new(motor, profile), new(wheel, profile))))
            .Where(b => b.Path is { } p && p.CentreDistance >= least && p.CentreDistance + BeltTension.TakeUp(p.CentreDistance) <= most
            && p.Gap.Si > 0)
            .OrderBy(b => Math.Abs((b.Path!.CentreDistance - (least + most) / 2).Si)).Select(b => b.Teeth).FirstOrDefault();
        if (belt == 0)
            return null;
        var fitted = parts with
        {
            MotorPulley = small with { Teeth = small.Teeth.With(motor) },
            WheelPulley = large with
            {
                Teeth = large.Teeth.With(wheel),
                FlangeDiameter = ofMotor ? large.FlangeDiameter : Known<Length>.Unknown(large.FlangeDiameter.Key)
            },
            Belt = parts.Belt with { Teeth = new Known<int>(belt, key: "belt.teeth"), Length = Known<Length>.Unknown("belt.length") },
        };
        var which = ofMotor ? FormattableString.Invariant($"a motor pulley of {motor} teeth instead of {small.Teeth.Value}") : FormattableString.Invariant($"a wheel pulley of {wheel} teeth instead of {large.Teeth.Value}");
        return (FormattableString.Invariant($"{which}, with a belt of {belt} teeth"), fitted);
    }

    /// <summary>A part that costs less by all that the board costs too much, for each part dear enough for that.</summary>
    static IEnumerable<IEnumerable<(Slot, string, Board)>> Cheaper(Board board, IReadOnlyList<Finding> against)
    {
        if (against.FirstOrDefault(f => f.Rule == "price.budget") is not { Value: { } price, Limit: { } budget }
            || PartSlot.All(board) is not { IsKnown: true } places)
            yield break;
        var factor = board.Money is
        {
            LabourHours.IsKnown: true, LabourRate.IsKnown: true, Overhead.IsKnown: true,
            Margin.IsKnown: true
        } money
            ? (1 + (decimal)money.Overhead.Value.Value) * (1 + (decimal)money.Margin.Value.Value) : 1;
        var excess = (decimal)(price.Value - budget.Value) / factor;
        foreach (var place in places.Value.Where(p => p.Part.IsChosen && p.Part.Price.IsKnown && SlotKeys.SlotOf(p.Key) is not null)
            .OrderByDescending(p => p.Part.Price.Value.Amount * p.Count))
        {
            var now = place.Part.Price.Value;
            var most = Math.Floor((now.Amount - excess / place.Count) * 100) / 100;
            // Nobody sells the same part for less than a third.
            if (most * 3 < now.Amount)
                continue;
            var cheap = place.Part.Price.With(now with { Amount = most });
            var changed = Settings.Applied(
                board with { Parts = Replace(board.Parts, place.Key, cheap) },
                CandidateParts.LayoutOf(board.Parts,
                PackLayout.All(board.Parts.Cell, board.Parts.Pack.Series.Or(0) * board.Parts.Pack.Parallel.Or(0))));
            yield return [(SlotKeys.SlotOf(place.Key)!.Value, $"a {place.Key.Replace('_', ' ')} like {place.Part.Title} for at most {now with { Amount = most }} ({now} now)", changed)];
        }
    }

    static Fitted Replace(Fitted parts, string key, Known<Money> price)
    {
        if (key == "pack.protection")
            return parts with { Pack = parts.Pack with { Protection = parts.Pack.Protection with { Price = price } } };
        var entry = Entry.ListEntries(typeof(Fitted)).First(e => e.Key == key);
        var part = (Part)entry.Read(parts);
        var priced = part.With([(Entry.ListEntries(part.GetType()).First(e => e.Key == "price"), price)]);
        return (Fitted)parts.With([(entry, priced)]);
    }

    static IEnumerable<int> Around(int most) => Enumerable.Range(1, most).SelectMany(static i => new[] { -i, i });

    static double Up(double value, int steps) => Math.Ceiling(value * steps - 1e-9) / steps;
}
