using System.Diagnostics;
using System.Globalization;
using Boardwright.Documents.Charts;
using Boardwright.Documents.Drawings;
using Boardwright.PageBench;
using Boardwright.Units;
using Microsoft.Playwright;

// Drives the real page in a browser without a window. Times are taken in the page, from the press of a key or button to the frame in which
// its consequences were painted.
const string Watch = """
    globalThis.bench = {
      // When the frame was painted that shows what has been changed by now.
      painted: () => new Promise(done => requestAnimationFrame(() => setTimeout(() => done(performance.now())))),
      // From a press until no more of what it changes is drawn: figures, findings, drawing, and the page's own count of edits.
      async edit(press) {
        const main = document.querySelector("main"), start = performance.now();
        const before = main.dataset.edits;
        let figures = 0, drawing = 0, intervals = 0;
        const isSampled = () => [...document.querySelectorAll(".told-side .fine-print")].some(p => p.textContent.startsWith("A range holds"));
        let settled;
        const both = new Promise(done => settled = done);
        const watch = new MutationObserver(changes => {
          for (const { target } of changes) {
            const at = target.nodeType === 1 ? target : target.parentElement;
            if (!drawing && at?.closest(".drawn figure")) drawing = performance.now();
            if (!figures && at?.closest(".ledger")) figures = performance.now();
          }
          if (figures && drawing && main.dataset.edits !== before) settled();
        });
        watch.observe(document.body, { subtree: true, childList: true, characterData: true, attributes: true });
        press();
        await both;
        const shown = await bench.painted() - start;
        while (!isSampled()) await new Promise(done => setTimeout(done, 5));
        intervals = await bench.painted() - start;
        watch.disconnect();
        return [shown, intervals];
      },
      async paint(svg) {
        const figure = document.querySelector(".strip figure"), start = performance.now();
        figure.innerHTML = svg;
        return await bench.painted() - start;
      },
      async chart(press) {
        const figure = document.querySelector(".strip figure"), start = performance.now();
        const drawn = new Promise(done => new MutationObserver((_, watch) => { watch.disconnect(); done(); }).observe(figure, { attributes: true, attributeFilter: ["data-drawn"] }));
        press();
        await drawn;
        return await bench.painted() - start;
      },
    };
    """;

var program = args is [var named] ? named : Workbench.Publish();
using var playwright = await Playwright.CreateAsync();
await using var browser = await playwright.Chromium.LaunchAsync(new()
{
    ExecutablePath = Environment.GetEnvironmentVariable("CHROMIUM_PATH") ?? "/usr/bin/chromium",
    Args = ["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
});
await FirstPageAsync();
await EditsAsync();
await ChartsAsync();

async Task FirstPageAsync()
{
    var first = new Timed("start of the program to its first page, browser open", 1500);
    double bytes = 0;
    for (var i = 0; i < 20; i++)
    {
        await using var context = await browser.NewContextAsync(new() { ViewportSize = new() { Width = 1400, Height = 1000 } });
        var page = await context.NewPageAsync();
        var session = await context.NewCDPSessionAsync(page);
        await session.SendAsync("Network.enable");
        // The browser itself sets a new tab up for a second or two, on a core of its own.
        await Task.Delay(TimeSpan.FromSeconds(3));
        bytes = 0;
        session.Event("Network.loadingFinished").OnEvent += (_, args) => bytes += args!.Value.GetProperty("encodedDataLength").GetDouble();
        session.Event("Network.webSocketFrameReceived").OnEvent += (_, args) => bytes += args!.Value.GetProperty("response").GetProperty("payloadData").GetString()!.Length * 3.0 / 4;
        var clock = Stopwatch.StartNew();
        await using var workbench = await Workbench.StartAsync(program);
        await page.GotoAsync(workbench.Address);
        // Looked for at each frame: a locator looks again only every half second in the end.
        await page.WaitForFunctionAsync("() => document.querySelector('[data-ready=yes]')");
        first.Add(clock.Elapsed.TotalMilliseconds);
        await page.GetByText("A range holds").First.WaitForAsync();
    }

    first.Print(Console.Out);
    Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"first load, page and what it draws with intervals: {bytes / 1024:0} KiB   target 300 KiB  {(bytes <= 300 * 1024 ? "reached" : "MISSED")}"));
}

async Task EditsAsync()
{
    await using var workbench = await Workbench.StartAsync(program, "tern/tern.board.yaml");
    var page = await PageAsync(workbench, "board");
    var (shown, intervals) = (new Timed("an edit to figures, findings and drawing, painted", 100), new Timed("the same edit to its intervals, painted", 500));
    string[] turns = ["wheels, the next", "belt teeth, the next", "mount angle, the next", "wheels, the one before", "belt teeth, the one before"];
    // A builder has made an edit or two by then; code is still being made ready in these.
    for (var i = 0; i < 100; i++)
    {
        var took = await page.EvaluateAsync<double[]>("name => bench.edit(() => document.querySelector(`[aria-label='${name}']`).click())", turns[i % turns.Length]);
        shown.Add(took[0]);
        intervals.Add(took[1]);
    }

    shown.Print(Console.Out);
    intervals.Print(Console.Out);
}

async Task ChartsAsync()
{
    // Four times the cells, ridden until they are empty: some six hours, a row each second.
    await using var workbench = await Workbench.StartAsync(program, "tern/tern.board.yaml", text => text.Replace("parallel: 4", "parallel: 16", StringComparison.Ordinal));
    var page = await PageAsync(workbench, "ride");
    await page.Locator("[data-ride]:not([data-ride='0'])").WaitForAsync();
    await page.GetByText("again and again until the reserve is reached").ClickAsync();
    await page.Locator("[data-rides=no]").WaitForAsync();
    await page.GetByText("A range holds").First.WaitForAsync(new() { Timeout = 120_000 });
    var painted = new Timed("a ride of six hours, all its panels, on another axis", double.NaN);
    string[] axes = ["over time", "over distance"];
    for (var i = 0; i < 40; i++)
        painted.Add(await page.EvaluateAsync<double>("name => bench.chart(() => [...document.querySelectorAll('.strip-tools button')].find(b => b.textContent === name).click())", axes[i % 2]));
    painted.Print(Console.Out);

    var four = new Timed("a chart of four lines of 20 000 points, laid out and painted", 50);
    for (var i = 0; i < 40; i++)
    {
        var chart = FourLines(i);
        var clock = Stopwatch.StartNew();
        var svg = Svg.Write(ChartLayout.Compute(chart, new ChartView(900)).Drawing);
        var laid = clock.Elapsed.TotalMilliseconds;
        four.Add(laid + await page.EvaluateAsync<double>("svg => bench.paint(svg)", svg));
    }

    four.Print(Console.Out);
}

// Rough lines, as of a log: each column of pixels has peaks of its own to keep.
static Chart FourLines(int seed)
{
    const int points = 20_000;
    var random = new Random(seed);
    var x = Enumerable.Range(0, points).Select(i => (double)i).ToArray();
    Line Rough(string name)
    {
        var (y, at) = (new double[points], 0.0);
        for (var i = 0; i < points; i++)
            y[i] = 10 + 5 * Math.Sin(i / 900.0) + (at = 0.98 * at + random.NextDouble() - 0.5);
        return new(name, x, y);
    }

    return new()
    {
        Name = "four",
        Title = "Four lines",
        Across = Axis.For<Duration>("time"),
        Panels = [new LinePanel(Axis.For<Speed>("speed")) { Series = [Rough("one"), Rough("two")] },
            new LinePanel(Axis.For<Current>("current")) { Series = [Rough("three"), Rough("four")] }],
    };
}

async Task<IPage> PageAsync(Workbench workbench, string place)
{
    var context = await browser.NewContextAsync(new() { ViewportSize = new() { Width = 1400, Height = 1000 } });
    await context.AddInitScriptAsync(Watch);
    var page = await context.NewPageAsync();
    await page.GotoAsync(workbench.Address + place);
    await page.Locator("[data-ready=yes]").WaitForAsync();
    return page;
}
