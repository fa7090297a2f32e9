using Boardwright.Boxes;

namespace Boardwright.Tests.Boxes;

public sealed class BoxLayoutTests
{
    [Theory]
    [InlineData("tern")]
    [InlineData("puffin")]
    [InlineData("curlew")]
    public void Scratch(string name)
    {
        var board = Boards.Read(name);
        BoxLayout.Of(board);
        var clock = System.Diagnostics.Process.GetCurrentProcess().TotalProcessorTime;
        var layout = BoxLayout.Of(board).Value;
        var ms = (System.Diagnostics.Process.GetCurrentProcess().TotalProcessorTime - clock).TotalMilliseconds;
        var text = $"{name} {ms} ms sag {layout.Sag.Millimetres:0.0} room {layout.RoomLength.Millimetres} {layout.RoomWidth.Millimetres} filled {layout.Filled.Percent:0}\n"
            + string.Join("\n", layout.Things.Select(t => $"{t.Name} x {t.X.Millimetres:0.0} y {t.Y.Millimetres:0.0} turn {t.Turn} {t.Wall} {t.Body.Along.Millimetres:0}x{t.Body.Across.Millimetres:0}"))
            + "\nunplaced " + string.Join(",", layout.Unplaced.Select(u => u.Name)) + " faults " + string.Join(";", layout.Faults);
        File.WriteAllText($"/tmp/box-{name}.txt", text + "\n");
    }
}
