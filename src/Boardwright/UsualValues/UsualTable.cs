using System.Text.RegularExpressions;
using Boardwright.Parts;
using static System.Math;

namespace Boardwright.UsualValues;

/// <summary>Every usual value, and a board that has them.</summary>
public static partial class UsualTable
{
    /// <summary>Every row.</summary>
    public static IReadOnlyList<UsualValue> All { get; } = [.. RoadValues.All, .. MotorValues.All, .. ElectricValues.All, .. BuildValues.All];

    /// <summary>A board with a usual value wherever its maker states none and one can be taken. Each follows from what is stated alone, so
    /// that no estimate rests on an estimate. A board that has them already stays as it is.</summary>
    /// <param name="stated">The board, its entries named.</param>
    public static Board Complete(Board stated)
    {
        var filled = stated;
        foreach (var row in All)
            filled = row.AddTo(stated, filled);
        return filled;
    }

    /// <summary>The usual values on a board, in the order of the file.</summary>
    public static IReadOnlyList<TakenValue> ListTaken(Board completed)
    {
        List<TakenValue> taken = [];
        Collect(completed);
        return taken;

        void Collect(Sheet sheet)
        {
            foreach (var entry in Entry.ListEntries(sheet.GetType()))
            {
                switch (entry.Read(sheet))
                {
                    case Sheet inner:
                        Collect(inner);
                        break;
                    case IEnumerable<Sheet> list:
                        foreach (var item in list)
                            Collect(item);
                        break;
                    case IKnown { IsKnown: true, From: Origin.Usual } known when Find(known.Key) is { } row:
                        taken.Add(new(known.Key, ValueText.Format(entry, known), Exp(Relative(known)), row));
                        break;
                }
            }
        }
    }

    /// <summary>The row for an entry.</summary>
    /// <returns>The row, or <c>null</c> where no usual value is ever taken for it.</returns>
    public static UsualValue? Find(string key)
    {
        ArgumentNullException.ThrowIfNull(key);
        var plain = Numbers().Replace(key, "");
        return All.FirstOrDefault(row => row.Key == plain);
    }

    static double Relative(IKnown known) =>
        known.Spread is not { } spread ? 0
        : known.Content is not IQuantity quantity ? spread
        : quantity.Si == 0 ? 0 : spread / Abs(quantity.Si);

    [GeneratedRegex(@"\[\d+\]", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Numbers();
}
