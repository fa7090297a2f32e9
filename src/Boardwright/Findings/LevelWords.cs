namespace Boardwright.Findings;

/// <summary>The levels in the trade's own words.</summary>
public static class LevelWords
{
    extension(Level level)
    {
        /// <summary>The word for the level in reports and in the result document.</summary>
        public string Word => level switch
        {
            Level.Stop => "stop",
            Level.Fix => "fix",
            Level.Measure => "measure",
            _ => "fine",
        };
    }
}
