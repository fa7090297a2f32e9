using Boardwright.Files.Routes;
using Boardwright.Road;
using Route = Boardwright.Road.Route;

namespace Boardwright.App.Workbench.RidePages;

/// <summary>A road that a board can be ridden on.</summary>
/// <param name="Id">Tells it from others on the page.</param>
/// <param name="Title">Its name.</param>
/// <param name="Says">What it is like, in a few words.</param>
/// <param name="Route">The road; <c>null</c> for a level one without end.</param>
sealed record RideRoad(string Id, string Title, string Says, Route? Route)
{
    /// <summary>What the reader of the file noticed.</summary>
    public IReadOnlyList<RouteNote> Notes { get; init; } = [];

    /// <summary>Roads that every builder can try: our own invention, no place on a map.</summary>
    public static IReadOnlyList<RideRoad> MadeUp { get; } =
    [
        new("cruise", "Level, to the reserve", "at the cruise speed, without a stop", null),
        new("harbour", "Harbour round", "level quays, two bridges, four crossings", Harbour()),
        new("hill", "The hill", "a climb that steepens to 9 %, and down again", Hill()),
        new("errands", "Stop and go", "twenty crossings in under five kilometres", Errands()),
    ];

    /// <summary>A road out of a file.</summary>
    public static RideRoad From(string id, string file, RouteReading reading) =>
        new(id, reading.Route!.Name, file, reading.Route) { Notes = reading.Notes };

    /// <summary>The outline of the road as a path over a field of 100 by 24, so that it is known at a glance; empty for a level
    /// road.</summary>
    public string Outline()
    {
        if (Route is not { } route)
            return "";
        const int Steps = 60;
        var heights = Enumerable.Range(0, Steps + 1).Select(i => route.ElevationAt(route.Distance * i / Steps).Metres).ToArray();
        var (low, high) = (heights.Min(), heights.Max());
        // Never taller than it is: a road with a metre of height must not look like a mountain.
        var scale = 20 / Math.Max(high - low, 40);
        return "M0 24" + string.Concat(heights.Select((h, i) => FormattableString.Invariant($"L{100.0 * i / Steps:0.#} {22 - (h - low) * scale:0.#}"))) + "L100 24z";
    }

    static Route Harbour() => Route.Create(
        "harbour round",
        Piece(900, 0), Piece(60, 5), Piece(80, 0), Piece(60, -5), Piece(700, 0, wait: 20), Piece(1200, 0.3),
        Piece(350, 0, most: 12, wait: 15),
        Piece(1500, -0.3), Piece(90, 4), Piece(120, 0, wait: 10), Piece(90, -4), Piece(1100, 0, wait: 25), Piece(750, 0));

    static Route Hill() => Route.Create(
        "the hill",
        Piece(800, 0), Piece(600, 3), Piece(500, 6), Piece(300, 9), Piece(250, 4), Piece(200, 0, wait: 30), Piece(250, -4),
        Piece(300, -9, most: 20), Piece(500, -6, most: 22), Piece(600, -3), Piece(800, 0));

    static Route Errands() => Route.Create(
        "stop and go",
        [.. Enumerable.Range(0, 20).Select(i => Piece(200 + 40 * (i % 3), 0.5 * (i % 4 - 1.5), wait: 8 + 4 * (i % 4)))]);

    static RouteStretch Piece(double metres, double percent, double? most = null, double wait = 0) =>
        new(Length.FromMetres(metres), Fraction.FromPercent(percent), most is { } speed ? Speed.FromKilometresPerHour(speed) : null,
        Duration.FromSeconds(wait));
}
