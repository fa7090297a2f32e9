namespace Boardwright.Findings;

/// <summary>Every work that an equation, a figure or a limit is taken from.</summary>
public static class Sources
{
    /// <summary>A fact of the trade that nobody has published.</summary>
    public static Source CommonPractice { get; } = new("common practice, no source");

    /// <summary>What the builder wrote into the board file.</summary>
    public static Source Brief { get; } = new("the board file's own brief and limits");

    /// <summary>What the parts' makers state.</summary>
    public static Source MakersSheet { get; } = new("the parts' own figures on the shelf");

    /// <summary>Plain geometry.</summary>
    public static Source Geometry { get; } = new("plain geometry of the stated dimensions");

    /// <summary>Plain circuit theory.</summary>
    public static Source CircuitTheory { get; } = new("Ohm's and Kirchhoff's laws on the stated resistances");

    /// <summary>The standard atmosphere, its viscosity and conductivity.</summary>
    public static Source StandardAtmosphere { get; } = new("ISO 2533:1975 Standard Atmosphere, and NOAA/NASA/USAF, U.S. Standard Atmosphere, 1976, NOAA-S/T 76-1562 (the same below 32 km); constants as printed in the latter's eqs. 18, 33a, 51 and 53");

    /// <summary>Saturation pressure of water vapour.</summary>
    public static Source Magnus { get; } = new("From memory: Magnus' formula with the constants of WMO-No. 8 (611.2 Pa, 17.62, 243.12 °C); reference for the density of moist air: A. Picard, R. S. Davis, M. Gläser and K. Fujii, Metrologia 45 (2008) 149-155");

    /// <summary>Power against rolling, grade and air.</summary>
    public static Source Martin1998 { get; } = new("J. C. Martin, D. L. Milliken, J. E. Cobb, K. L. McFadden and A. R. Coggan, Validation of a mathematical model for road cycling power, J. Appl. Biomech. 14 (1998) 276-291; its form from memory, its bearing term left out");

    /// <summary>The law of force fitted to speed over time.</summary>
    public static Source Thompson { get; } = new("G. D. Thompson, Vehicle road load problem: an approach by non-linear modeling, U.S. Environmental Protection Agency (document 9100WXHY)");

    /// <summary>Newton's laws.</summary>
    public static Source Mechanics { get; } = new("Newton's laws on the stated masses, forces and dimensions");

    /// <summary>Stopping distance as road designers take it.</summary>
    public static Source Aashto { get; } = new("AASHTO, Guide for the Development of Bicycle Facilities (1999), stopping sight distance; 20 mph level quoted in FHWA-HRT-04-103 (2004)");

    /// <summary>Heat from a cylinder across a stream.</summary>
    public static Source ChurchillBernstein { get; } = new("S. W. Churchill and M. Bernstein, A correlating equation for forced convection from gases and liquids to a circular cylinder in crossflow, J. Heat Transfer 99 (1977) 300-306");

    /// <summary>Heat from a horizontal cylinder in still air.</summary>
    public static Source ChurchillChuCylinder { get; } = new("S. W. Churchill and H. H. S. Chu, Correlating equations for laminar and turbulent free convection from a horizontal cylinder, Int. J. Heat Mass Transfer 18 (1975) 1049-1053");

    /// <summary>Heat from a vertical plate in still air.</summary>
    public static Source ChurchillChuPlate { get; } = new("S. W. Churchill and H. H. S. Chu, Correlating equations for laminar and turbulent free convection from a vertical plate, Int. J. Heat Mass Transfer 18 (1975) 1323-1329");

    /// <summary>Heat from plates and by radiation, as the textbooks give it.</summary>
    public static Source Incropera { get; } = new("T. L. Bergman, A. S. Lavine, F. P. Incropera and D. P. DeWitt, Fundamentals of Heat and Mass Transfer, 7th ed. (2011), chs. 1, 7 and 9");

    /// <summary>Heat from horizontal plates in still air.</summary>
    public static Source McAdams { get; } = new("W. H. McAdams, Heat Transmission, 3rd ed. (1954), ch. 7");

    /// <summary>Constants of physics.</summary>
    public static Source Codata2018 { get; } = new("E. Tiesinga, P. J. Mohr, D. B. Newell and B. N. Taylor, CODATA recommended values of the fundamental physical constants: 2018, Rev. Mod. Phys. 93 (2021) 025010");

    /// <summary>Resistivity of copper and how it rises.</summary>
    public static Source Iec60028 { get; } = new("IEC 60028:1925, International standard of resistance for copper: 0.017241 ohm mm2/m and 0.00393 /K at 20 °C");

    /// <summary>Conductors of insulated cables.</summary>
    public static Source Iec60228 { get; } = new("IEC 60228:2004, Conductors of insulated cables");

    /// <summary>Wire gauges.</summary>
    public static Source AstmB258 { get; } = new("ASTM B258, Standard specification for standard nominal diameters and cross-sectional areas of AWG sizes of solid round wires used as electrical conductors");

    /// <summary>Wires in a bundle.</summary>
    public static Source MilW5088 { get; } = new("MIL-W-5088, Wiring, aerospace vehicle, as quoted in the ground power unit manual APS 42L, p. 67");

    /// <summary>Fusing current of a wire that has time.</summary>
    public static Source Preece { get; } = new("W. H. Preece, On the heating effects of electric currents, Proc. R. Soc. Lond. 43 (1887) 280-295, in the form I = 10244 d^1.5");

    /// <summary>Fusing current of a wire that has none.</summary>
    public static Source Onderdonk { get; } = new("I. M. Onderdonk's equation as printed by D. G. Brooks, Fusing currents when traces melt without a trace, Printed Circuit Design (Dec. 1998)");

    /// <summary>Adiabatic short-circuit current.</summary>
    public static Source Iec60949 { get; } = new("IEC 60949:1988, Calculation of thermally permissible short-circuit currents; constant 226 A s^0.5/mm2 and 234.5 K for copper from memory");

    /// <summary>Torque and voltage of a permanent-magnet motor in its rotor's frame.</summary>
    public static Source Pmsm { get; } = new("P. Pillay and R. Krishnan, Modeling, simulation, and analysis of permanent-magnet motor drives, Part I, IEEE Trans. Ind. Appl. 25 (1989) 265-273");

    /// <summary>Ripple current of a converter's supply capacitors.</summary>
    public static Source Kolar2006 { get; } = new("J. W. Kolar and S. D. Round, Analytical calculation of the RMS current stress on the DC-link capacitor of voltage-PWM converter systems, IEE Proc. Electr. Power Appl. 153 (2006) 535-543");

    /// <summary>A magnet motor with brushes, and its brushless equal.</summary>
    public static Source MotorTheory { get; } = new("the two equations of a permanent-magnet motor, V = R I + ω/k and T = I/k, with k the speed constant");

    /// <summary>A motor as winding and case.</summary>
    public static Source TwoNodeMotor { get; } = new("the two-body thermal model that motor makers' sheets imply by their two resistances and two time constants");
    /// <summary>Machine elements.</summary>
    public static Source Shigley { get; } = new(
        "R. G. Budynas and J. K. Nisbett, Shigley's Mechanical Engineering Design, McGraw-Hill, ch. 7 and 17, with its Instructor's Solutions Manual");

    /// <summary>A belt maker's manual.</summary>
    public static Source OptibeltManual { get; } = new(
        "Arntz Optibelt Group, Technical Manual Rubber Timing Belt Drives (year not shown in the copy read), pp. 17-45 and 72-79");

    /// <summary>A belt supplier's handbook.</summary>
    public static Source SdpSiTimingBelts { get; } = new(
        "Stock Drive Products/Sterling Instrument, Handbook of Timing Belts and Pulleys, D265 (2002), p. T15 table 3 and p. T16 table 4");

    /// <summary>What is remembered of tooth profiles.</summary>
    public static Source ProfilesFromMemory { get; } = new(
        "from memory: pitch-line differentials 0.015 in (3M) and 0.027 in (8M), least teeth 10 (3M) and 22 (8M), width multipliers 1.00, 1.89 and 3.38 of 9, 15 and 25 mm belts (5M), from which an edge loss of 2.27 mm follows");

    /// <summary>Equivalent circuits of lithium cells.</summary>
    public static Source Plett { get; } = new(
        "G. L. Plett, Battery Management Systems, vol. 1: Battery Modeling (2015), ch. 2: rest voltage, series resistance and resistor-capacitor pairs; its form from memory");

    /// <summary>The measured cell on which the fit was tried.</summary>
    public static Source Kollmeyer { get; } = new(
        "P. Kollmeyer, C. Vidal, M. Naguib and M. Skells (2020), LG 18650HG2 Li-ion battery data, Mendeley Data V3, doi:10.17632/cp3473x7xv.3, CC BY 4.0");
}
