namespace Boardwright.App;

/// <summary>Exit codes, so that scripts can tell the cases apart.</summary>
static class Exit
{
    /// <summary>Done; for a check: nothing stops the board and nothing has to be changed.</summary>
    public const int Holds = 0;
    /// <summary>Something stops the board or has to be changed, or too little is known to say what the board does.</summary>
    public const int Wanting = 1;
    /// <summary>The file or the command could not be read, or a file could not be written.</summary>
    public const int Unread = 2;
    /// <summary>The program itself failed.</summary>
    public const int Fault = 3;
}
