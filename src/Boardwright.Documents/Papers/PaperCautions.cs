namespace Boardwright.Documents.Papers;

/// <summary>What papers say wherever someone could be hurt.</summary>
static class PaperCautions
{
    public const string Pack = "A lithium pack cannot be switched off: a short burns at once, and a crushed, overcharged or overheated cell burns later. Cover every contact that is not being worked on, take rings off, work on one connection at a time, and have the pack looked at by someone qualified before its first charge.";

    public const string Wiring = "The pack's plus and minus are live from the first cell on. Fuse first, pack last; cover every open end; have fuse, pre-charge and polarity checked by someone qualified before power.";

    public const string Charger = "A charger is on the mains. Use one that bears its maker's approval for this place, charge where a fire could be seen and cannot spread, and never unwatched.";

    public const string Wheels = "Motors start without a sound. Keep the wheels in the air and hands, hair and cloth away from belts, gears and wheels whenever the pack is connected.";

    public const string Brakes = "Brakes fade and can fail, the electric one with its pack, a plug or the remote's link. Try them walking, then slowly, and be able to stop with a foot or a slide.";

    public const string Law = "Where, how fast and with what equipment it may be ridden is for local law to say, and insurance with it; both change. Ask the authority of the place before the first ride.";
}
