using Boardwright.Parts;

namespace Boardwright.Fits;

/// <summary>Pack and controllers in a box, by their outlines: end to end with the controllers next to each other where the box is wide
/// enough, or side by side.</summary>
/// <param name="EndToEnd">Length that pack and controllers take one behind the other.</param>
/// <param name="Beside">Width that they take side by side.</param>
/// <param name="Highest">Height of the higher of the two.</param>
/// <param name="IsDeepEnough">Whether that is no more than the box's depth.</param>
/// <param name="IsLargeEnough">Whether one of the two ways goes in.</param>
/// <source cref="Findings.Sources.Geometry"/>
sealed record BoxRoom(Length EndToEnd, Length Beside, Length Highest, bool IsDeepEnough, bool IsLargeEnough)
{
    /// <summary>Whether everything goes in.</summary>
    public bool Holds => IsDeepEnough && IsLargeEnough;

    /// <summary>Of a pack's size in a box beside a number of controllers; the sizes of box and controller must be known.</summary>
    public static BoxRoom Compute(Box box, Controller controller, int controllers, Length packLength, Length packWidth, Length packHeight)
    {
        ArgumentNullException.ThrowIfNull(box);
        ArgumentNullException.ThrowIfNull(controller);
        var (length, width) = (box.InnerLength.Value, box.InnerWidth.Value);
        var (l, w, h) = (controller.Length.Value, controller.Width.Value, controller.Height.Value);
        var across = Math.Max(1, (int)Math.Floor(width / w));
        var rows = (controllers + across - 1) / across;
        var endToEnd = packLength + l * rows;
        var beside = packWidth + w;
        var highest = packHeight > h ? packHeight : h;
        var fits = (endToEnd <= length && packWidth <= width && w <= width)
            || (beside <= width && packLength <= length && l * controllers <= length);
        return new(endToEnd, beside, highest, highest <= box.InnerDepth.Value, fits);
    }
}
