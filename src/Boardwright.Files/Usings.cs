global using Boardwright.Units;
