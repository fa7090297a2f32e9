using Boardwright.Packs;
using Boardwright.Parts;
using Boardwright.Prices;

namespace Boardwright.Tests.Prices;

public sealed class PurchaseLineTests
{
    [Fact]
    public void The_parts_are_worth_what_the_quote_says()
    {
        foreach (var name in Boards.Names)
        {
            var board = Boards.Read(name);
            var list = PurchaseLine.Compute(board).Value;

            Assert.Equal(Quote.Compute(board).Value.Parts.Amount, list.Where(l => l.Worth is not null).Sum(l => l.Worth!.Value.Amount));
        }
    }

    [Fact]
    public void What_the_shelf_lacks_is_bought()
    {
        var line = PurchaseLine.Compute(Boards.Tern.With(("motor.stock", "1"))).Value.Single(l => l.Place.Key == "motor");

        Assert.Equal((2, 1, 1), (line.Place.Count, line.FromStock, line.ToBuy));
        Assert.Equal(line.Place.Part.Price.Value, line.ToPay);
    }

    [Fact]
    public void Two_places_share_what_lies_on_the_shelf()
    {
        var truck = Boards.Tern.Parts.FrontTruck with { Stock = 1 };
        var board = Boards.Tern with { Parts = Boards.Tern.Parts with { FrontTruck = truck, RearTruck = truck } };
        var trucks = PurchaseLine.Compute(board).Value.Where(l => l.Place.Key.EndsWith("_truck", StringComparison.Ordinal)).ToList();

        Assert.Equal(1, trucks.Sum(t => t.FromStock));
        Assert.Equal(1, trucks.Sum(t => t.ToBuy));
    }

    // Tern by hand: 48 cells of 5.0 Ah and 3.6 V are 18 Wh each, 864 Wh together; 48 · 70 g + 350 g + 92 g = 3.802 kg where the cell weighs
    // 70 g.
    [Fact]
    public void A_shipment_adds_up_its_cells()
    {
        var shipment = Shipment.Compute(Boards.Tern).Value;

        Assert.Equal(48, shipment.Cells);
        Assert.Equal(18, shipment.CellEnergy.WattHours, 1e-9);
        Assert.Equal(864, shipment.Energy.WattHours, 1e-9);
        Assert.Equal(43.2, shipment.Nominal.Volts, 1e-9);
        Assert.Equal(48 * Boards.Tern.Parts.Cell.Mass.Value.Kilograms + 0.35 + 0.092, shipment.Mass!.Value.Kilograms, 1e-9);
        Assert.Equal(12 * shipment.CellRestAtLimit!.Value.Volts, shipment.RestAtLimit!.Value.Volts, 1e-9);
    }
}
