global using Boardwright.Units;
global using static System.FormattableString;
