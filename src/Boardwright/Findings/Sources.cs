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

    /// <summary>Low-discrepancy sampling.</summary>
    public static Source QuasiMonteCarlo { get; } = new("A. B. Owen, Scrambled net variance for integrals of smooth functions, Ann. Statist. 25 (1997) 1541-1562; direction numbers of S. Joe and F. Y. Kuo, SIAM J. Sci. Comput. 30 (2008) 2635-2654");

    /// <summary>A belt supplier on ratings, mesh and width.</summary>
    public static Source SdpSiTechnicalSection { get; } = new(
        "Stock Drive Products/Sterling Instrument, Technical Section on timing belts, secs 9.1, 9.3 and 13.3 (second hand: read as quoted in a robotics project's design notes)");

    /// <summary>A belt supplier on pulleys that are out of line.</summary>
    public static Source SdpSiAlignment { get; } = new(
        "Stock Drive Products/Sterling Instrument, Handbook of Timing Belts, D260, p. T-51: at most 1/4 degree, angular and parallel together");

    /// <summary>A belt supplier on tensioning.</summary>
    public static Source SdpSiTension { get; } = new(
        "Stock Drive Products/Sterling Instrument, catalogue D790, pp. T-1 and T-3, eqs 1-3 to 1-5");

    /// <summary>What is remembered of tension rules.</summary>
    public static Source TensionFactorsFromMemory { get; } = new(
        "from memory: SDP/SI-Gates installation tension 0.812 DQ/d (power) and 1.05 DQ/d (registration) with m, Y and least tension for 5 mm curvilinear belts");

    /// <summary>A belt supplier on service factors.</summary>
    public static Source SdpSiServiceFactor { get; } = new(
        "Stock Drive Products/Sterling Instrument, drive selection, pp. T-61 and T-146 (service factor of 1.5 to 2.0 for drives of small pitch), on the working tension of the Handbook of Timing Belts and Pulleys, D265 (2002), p. T15 table 3");

    /// <summary>A belt maker on teeth in mesh.</summary>
    public static Source TsubakiMeshing { get; } = new(
        "Tsubakimoto Chain, Synchronous belt correction factors, tables T1-T6");

    /// <summary>A handbook on synchronous belts.</summary>
    public static Source InventorHandbook { get; } = new(
        "Autodesk, Engineer's Handbook: synchronous belts");

    /// <summary>A maker of polyurethane belts with steel cord.</summary>
    public static Source ElatechCatalogue { get; } = new(
        "Goodyear/Elatech, Polyurethane PT Belt Division catalogue (2012), p. 36, HTD5M");

    /// <summary>A belt maker on the sonic tension meter.</summary>
    public static Source Gates508C { get; } = new(
        "Gates, sonic tension meter manual 508C, p. 10");

    /// <summary>A belt maker's selection procedure.</summary>
    public static Source GatesDriveSelection { get; } = new(
        "Gates, PowerGrip GT3/HTD drive selection procedure");

    /// <summary>A belt maker's table of installation tensions.</summary>
    public static Source GatesUnittaU550 { get; } = new(
        "Gates Unitta, U-550 sonic tension meter manual, p. 12, sec. 10 (columns were scrambled in the copy read and were put in order)");

    /// <summary>A supplier's formula sheet.</summary>
    public static Source TimingFormulas { get; } = new(
        "Chesterfield supplier, Technical Timing, formula sheet for timing belts");

    /// <summary>Turning and rolling.</summary>
    public static Source Kinematics { get; } = new(
        "plain kinematics of turning and rolling bodies");

    /// <summary>What is asked of the brakes of small electric vehicles.</summary>
    public static Source SmallVehicleBrakes { get; } = new(
        "German ordinance on small electric vehicles (eKFV, 2019), section 4: two brakes, together at least 3.5 m/s2, each alone at least 44 % of it; that a standing rider is in danger below 1 m/s2 is common practice, no source");

    /// <summary>Weave of a board and its rider.</summary>
    public static Source SkateboardStability { get; } = new(
        "M. Hubbard, Lateral dynamics and stability of the skateboard, J. Appl. Mech. 46 (1979) 931 and Human control of the skateboard, J. Biomech. 13 (1980) 745; B. Varszegi, D. Takacs, G. Stepan and S. J. Hogan, Stabilizing skateboard speed-wobble with reflex delay, J. R. Soc. Interface 13 (2016) 20160345 (abstracts read); the equations are derived anew in their class, ankle stiffness from I. D. Loram, C. N. Maganaris and M. Lakie, J. Physiol. 584 (2007) 661 (abstract); delays and inertia from memory; not compared with rides");

    /// <summary>What magnets bear.</summary>
    public static Source MagnetGrades { get; } = new(
        "letters of sintered magnets by coercivity (none 80 °C, M 100, H 120, SH 150), as makers list them; that a motor of unknown magnets is taken at 80 °C, and unmarked windings at 120 °C, is common practice, no source");

    /// <summary>Resistance of a cell in the first milliseconds.</summary>
    public static Source CellAtOnce { get; } = new(
        "Ohm's law on the stated resistances; that a cell's 1 kHz value is about 1/2.6 of the one after a second is a ratio of 13 cells of an open list of bench tests, good to a factor of 1.35");

    /// <summary>Parallel keys.</summary>
    public static Source Din6885 { get; } = new(
        "DIN 6885-1 (1968), parallel keys, high form, as extracted in two published tables");

    /// <summary>Machine elements.</summary>
    public static Source Mott { get; } = new(
        "R. L. Mott, Machine Elements in Mechanical Design, 4th ed., Pearson, p. 499, eqs 11-1 and 11-2");

    /// <summary>What is remembered of key examples.</summary>
    public static Source KeysFromMemory { get; } = new(
        "from memory: the numbers of Shigley's example 7-6 and of Mott's key example; the arithmetic was done again");

    /// <summary>Holding power of set screws.</summary>
    public static Source SetScrewChart { get; } = new(
        "SPS Technologies, Socket Set Screws, holding power chart (movement of 0.010 in on a hardened shaft)");

    /// <summary>A screw maker's handbook.</summary>
    public static Source Unbrako { get; } = new(
        "SPS Technologies, Unbrako handbook, p. 23, points of set screws");

    /// <summary>Seating torques.</summary>
    public static Source Ruland { get; } = new(
        "Ruland, metric hardware torque chart");

    /// <summary>What is remembered of holding power.</summary>
    public static Source SetScrewsFromMemory { get; } = new(
        "from memory: Shigley, table 7-4, holding power of cup-point set screws of #3 and larger");

    /// <summary>Limits and fits.</summary>
    public static Source Iso286 { get; } = new(
        "ISO 286, limits of size for shafts and holes of 6 to 18 mm, as printed in two published tables");

    /// <summary>What is remembered of limits and fits.</summary>
    public static Source FitsFromMemory { get; } = new(
        "from memory: ISO 286 deviations g6, k6, N9 and P9 of 6 to 10 mm and g6 and k6 of 10 to 18 mm");

    /// <summary>Bearing bores.</summary>
    public static Source Iso492 { get; } = new(
        "ISO 492, class Normal: bore of 2.5 to 10 mm 0/-8 µm, as quoted by NTN");

    /// <summary>Strength of bolts.</summary>
    public static Source Iso898 { get; } = new(
        "EN ISO 898-1, proof loads and least ultimate loads of coarse threads, as tabulated by Optimas and by usefastener.com");

    /// <summary>Tightening torques.</summary>
    public static Source Strocomp { get; } = new(
        "Strobl, Strocomp 433 operating manual, appendix 10-2, tightening torques at a friction coefficient of 0.14");

    /// <summary>Stainless bolts.</summary>
    public static Source StainlessTorque { get; } = new(
        "Optimas and Anzor, preload and torque of stainless A2-70 bolts");

    /// <summary>What is remembered of stainless bolts.</summary>
    public static Source StainlessFromMemory { get; } = new(
        "from memory: ISO 3506, 0.2 % proof stress of A2-70, 450 MPa");

    /// <summary>Torque coefficients.</summary>
    public static Source NutFactors { get; } = new(
        "Shigley and Bowman (1985), torque coefficients K, as quoted in a CAD program's help pages; Bickford gives 0.295 for dry zinc");

    /// <summary>Preload of a joint that is taken apart again.</summary>
    public static Source ShigleyPreload { get; } = new(
        "Shigley, 0.75 of the proof load for reused joints, as quoted by mechconcepts.tech; 0.90 for permanent joints is from memory");

    /// <summary>Stripping of internal threads.</summary>
    public static Source ThreadStripping { get; } = new(
        "chapter 10.1201/9781482273786-99 of a CRC/Taylor & Francis handbook (title not shown), example M10 in aluminium");

    /// <summary>What is remembered of aluminium threads.</summary>
    public static Source StrippingFromMemory { get; } = new(
        "from memory: shear strength of 6061-T6, 207 MPa, and the limits of the M5 thread; the arithmetic was done again");

    /// <summary>Plain washers.</summary>
    public static Source Iso7089 { get; } = new(
        "ISO 7089, plain washers, as tabulated by two suppliers");

    /// <summary>Rolling bearings.</summary>
    public static Source SkfCatalogue { get; } = new(
        "SKF, General Catalogue (Russian ed., c. 2006-08), pp. 302-305, single-row deep groove ball bearings");

    /// <summary>Rolling bearings of another maker.</summary>
    public static Source NtnCatalogue { get; } = new(
        "NTN, deep groove ball bearings, series 67 to 64");

    /// <summary>Axial load on ball bearings.</summary>
    public static Source SkfAxialLoad { get; } = new(
        "SKF, deep groove ball bearings, section Loads (0.25 C0 for small and light bearings; partly from memory)");

    /// <summary>What is remembered of axial factors.</summary>
    public static Source AxialFactorsFromMemory { get; } = new(
        "from memory: ISO 281 factors e and Y of single-row deep groove ball bearings with normal clearance");

    /// <summary>Worked examples of bearing life.</summary>
    public static Source BearingLifeExamples { get; } = new(
        "two published worked examples of the basic rating life (sarthaks 2642436; aionlinecalculator, bearing life)");

    /// <summary>Holes near edges.</summary>
    public static Source En1993 { get; } = new(
        "EN 1993-1-8:2005, table 3.3, least spacing, end and edge distances");

    /// <summary>Squeeze of gaskets.</summary>
    public static Source GasketCompression { get; } = new(
        "Elasto Proxy, gasket compression and hollow seals");

    /// <summary>Squeeze of solid gaskets.</summary>
    public static Source EpdmCompression { get; } = new(
        "Detroit Sealing, compression of solid EPDM");

    /// <summary>Holes that a bolt passes freely.</summary>
    public static Source Iso273 { get; } = new(
        "ISO 273:1979, clearance holes for bolts and screws, medium series, as tabulated by engineeringhardware.com");

    /// <summary>Holes for inserts in wood.</summary>
    public static Source InsertHoles { get; } = new(
        "four-pronged M6 nuts in 8 mm holes: B. Skorupinska, I. Wiaderek and M. Sydor, Drvna industrija 73 (2022) 271-277; other sizes common practice, no source");

    /// <summary>Pressure of a foam gasket.</summary>
    public static Source FoamPressure { get; } = new(
        "from memory: ASTM D1056, grade 2, 35 to 63 kPa at a quarter's compression");

    /// <summary>Bending of a beam over three supports.</summary>
    public static Source BeamTheory { get; } = new(
        "bending of an evenly loaded beam, one end fixed and the other supported: w L^4/(185 E I), as in any handbook of mechanics; moduli common practice, no source");

    /// <summary>How sharply a cable may be bent.</summary>
    public static Source CableBends { get; } = new(
        "DIN VDE 0298-3, flexible cables up to 12 mm thick in a fixed installation: no less than 3 diameters inside, as a cable maker reprints its table (scribd.com/doc/118613583; from memory EN 50565-1 says the same); neither standard was opened");

    /// <summary>Bending of a deck under a rider.</summary>
    public static Source DeckBend { get; } = new(
        "bending of a beam on two supports with a weight in the middle: deflection F L^3/(48 E I), curvature F L/(4 E I), as in any handbook of mechanics");

    /// <summary>Bounds on what goes into a rectangle.</summary>
    public static Source DualFeasible { get; } = new(
        "from memory: S. P. Fekete and J. Schepers, A combinatorial characterization of higher-dimensional orthogonal packing, Mathematics of Operations Research 29 (2004) 353-368; the bounds are sound by the argument beside the code");

    /// <summary>Laying rectangles in corners.</summary>
    public static Source CornerPlacement { get; } = new(
        "from memory: A. Lodi, S. Martello and D. Vigo, Heuristic and metaheuristic approaches for a class of two-dimensional bin packing problems, INFORMS Journal on Computing 11 (1999) 345-357 (touching perimeter); D. E. Joslin and D. P. Clements, Squeaky wheel optimization, Journal of Artificial Intelligence Research 10 (1999) 353-373");

    /// <summary>How far a battery may be charged that flies.</summary>
    public static Source AirCharge { get; } = new(
        "Lion Technology, Lithium battery state of charge limits in 2025 and 2026 (lion.com, 21 October 2024), on the IATA Dangerous Goods Regulations; the rules themselves were not opened");

    /// <summary>How fast a toothed belt may run.</summary>
    public static Source BeltSpeedFromMemory { get; } = new("from memory: cast pulleys are balanced above a rim speed of about 33 m/s (6500 ft/min)");

    /// <summary>Tolerances of pulleys.</summary>
    public static Source YorkPulleys { get; } = new(
        "York Industries, York Engineering, section E2, pulley tolerances of 2, 3 and 5 mm pitch");

    /// <summary>Measured charges and discharges of a lithium-ion cell.</summary>
    public static Source LgHg2Kollmeyer { get; } = new("P. Kollmeyer, C. Vidal, M. Naguib and M. Skells, LG 18650HG2 Li-ion battery data, Mendeley Data (2020), CC BY 4.0; the exponential tail is fitted to its charge at 25 °C");
    /// <summary>The reference day of road testers.</summary>
    public static Source RoadTestDay { get; } = new("SAE J2263, reference condition of 20 °C and 98.21 kPa, and 40 CFR 1066.310, which rounds its air to 1.17 kg/m3");
    /// <summary>Drag of alpine skiers in a wind tunnel.</summary>
    public static Source SkierDrag { get; } = new("Postural changes and aerodynamic forces in alpine skiing, abstract: 11.76 N at 10 m/s and 256.27 N at 30 m/s");
    /// <summary>Stopping distances printed for drivers.</summary>
    public static Source HighwayCode { get; } = new("UK Department for Transport, The Highway Code, rule 126; the split into thinking and braking from memory");
    /// <summary>An open library of heat-transfer correlations that computes textbook examples.</summary>
    public static Source HeatLibrary { get; } = new("C. Bell, ht: heat transfer component of chemical engineering design library, commit f9c60c4 (MIT), values printed in its documentation");
    /// <summary>Table of copper wire.</summary>
    public static Source ElectronicTables { get; } = new("Handbook of Electronic Tables and Formulas, copper wire table");
    /// <summary>Resistivity of nickel.</summary>
    public static Source NickelResistivity { get; } = new("from memory: pure nickel has 6.99e-8 ohm m at 20 °C");

    /// <summary>The haversine on a sphere.</summary>
    public static Source Haversine { get; } = new(
        "R. W. Sinnott, Virtues of the Haversine, Sky and Telescope 68 (2), 1984, p. 159 (from memory: the form that keeps its digits at short distances); radius 6371000 m, the earth's mean radius rounded");

    /// <summary>Smoothing by straight lines fitted locally.</summary>
    public static Source LocalRegression { get; } = new(
        "W. S. Cleveland, Robust Locally Weighted Regression and Smoothing Scatterplots, Journal of the American Statistical Association 74, 1979, pp. 829-836 (from memory: the local straight line; weights here fall linearly, without the robust rounds)");

    /// <summary>How quickly a standing person may be slowed.</summary>
    public static Source StandingBalance { get; } = new(
        "Krasna et al., Frontiers in Bioengineering and Biotechnology 9, 2021, 680883 (abstract: of braking pulses of 1.0 and 2.5 m/s2 on a sled, volunteers stood only 1.0 without a step); speeds, distances and times by uniform acceleration, v2 = u2 + 2as");

    /// <summary>Equivalent circuits of lithium cells.</summary>
    public static Source Plett { get; } = new(
        "G. L. Plett, Battery Management Systems, vol. 1: Battery Modeling (2015), ch. 2: rest voltage, series resistance and resistor-capacitor pairs; its form from memory");

    /// <summary>What a logger wrote down on a ride.</summary>
    public static Source RideRecord { get; } = new("the rider's own log; distances by haversine and by the trapezoidal rule");

    /// <summary>Coast-downs in both directions.</summary>
    public static Source TwoWayCoastDown { get; } = new(
        "G. D. Thompson, Vehicle road load problem: an approach by non-linear modeling, U.S. Environmental Protection Agency (document 9100WXHY): v(t) is fitted, not its slope; 40 CFR 1066.310: eight runs each way, grade in the analysis");

    /// <summary>The terminal behaviour of a pack seen from its own ride.</summary>
    public static Source PackRegression { get; } = new(
        "G. L. Plett, Battery Management Systems, vol. 1: Battery Modeling (2015), ch. 2, its form from memory: V = rest voltage - R0 I - a slow part; fitted by least squares");

    /// <summary>How a motor's speed follows its voltage.</summary>
    public static Source SpeedPerVolt { get; } = new("the definition of KV: rpm at no load per volt at the motor, the rest of the voltage lying across its resistance");
    /// <summary>One body that stores heat and loses it to the air.</summary>
    public static Source LumpedHeat { get; } = new("C dT/dt = P - (T - T_air)/R, one body of even temperature, by the conservation of energy");

    /// <summary>Weighing studies that differ by more than their own errors; here rides.</summary>
    public static Source RandomEffects { get; } = new(
        "R. DerSimonian and N. Laird, Meta-analysis in clinical trials, Controlled Clinical Trials 7 (1986) 177-188; G. Knapp and J. Hartung, Statistics in Medicine 22 (2003) 2693-2710 (Student's range of the mean); W. Viechtbauer, Statistics in Medicine 26 (2007) 37-52 (range of the spread) (from memory)");

    /// <summary>Stepping through differential equations.</summary>
    public static Source Midpoint { get; } = new(
        "E. Hairer, S. P. Nørsett and G. Wanner, Solving Ordinary Differential Equations I (1993), ch. II: implicit midpoint and trapezoidal rules, order 2 (from memory); forces by Newton's laws");

    /// <summary>Equal circles in a circle.</summary>
    public static Source CirclesInCircle { get; } = new("R. L. Graham, B. D. Lubachevsky, K. J. Nurmela and P. R. J. Östergård, Dense packings of congruent circles in a circle, Discrete Math. 181 (1998) 139-154; ratios of up to 12 circles from memory");
    /// <summary>Codes of colours.</summary>
    public static Source Iec60757 { get; } = new("IEC 60757, Code for designation of colours: two letters for each, from memory; which colour means what is common practice");
    /// <summary>Inductance of a pair of wires.</summary>
    public static Source Grover { get; } = new("F. W. Grover, Inductance Calculations (1946), two long parallel wires, from memory");
    /// <summary>A fuse among resistors, capacitors and wires.</summary>
    public static Source FuseAgainstPulses { get; } = new("the fuse maker's melting I2t; that a pulse may use a fifth of it and go on doing so is from memory of fuse makers' guides");
    /// <summary>Motors of a component set for drone sizing.</summary>
    public static Source DroneMotors { get; } = new("23 outrunners of 0.2 kg and more of the component set for drone sizing in symbench-athens-client (Apache-2.0); the law is fitted here");
    /// <summary>Inductances and resistances of windings.</summary>
    public static Source MotorWindings { get; } = new("nominal values of eight motors as quoted in the pypowertrain library (MIT); the law is fitted here");
    /// <summary>Data sheets of servo motors.</summary>
    public static Source ServoSheets { get; } = new("data sheets of six servo motors, one of them an outrunner, as quoted in open repositories; the law is fitted here");
    /// <summary>Open measurements of cells.</summary>
    public static Source CellSets { get; } = new("three open sets of cell measurements: LG HG2 (Kollmeyer, 2020), LG M50 and Sony VTC6; level and shape are fitted here, the form R · Ah ~ (A/Ah)^-0.5 is secondary");
    /// <summary>Specific heat and mass of round cells.</summary>
    public static Source CellHeat { get; } = new("batterydesign.net, specific heat of lithium-ion cells: 800 to 1100 J/(kg K)");
    /// <summary>Specific heats of metals.</summary>
    public static Source MetalsFromMemory { get; } = new("from memory: aluminium 900 J/(kg K), epoxy board 1100 J/(kg K)");
    /// <summary>Rolling of board wheels.</summary>
    public static Source RollingPractice { get; } = new("common practice, no source for the level (0.012 to 0.020); scaled as a soft cylinder on a hard flat (Greenwood, Minshall and Tabor 1961, from memory)");
    /// <summary>Hardness and modulus of rubber.</summary>
    public static Source Gent { get; } = new("A. N. Gent, On the relation between indentation hardness and Young's modulus, Rubber Chem. Technol. 31 (1958) 896-906, from memory");
    /// <summary>Drag area of a standing person who rolls.</summary>
    public static Source StandingDrag { get; } = new("Spring et al., Drag area of a cross-country skier (1988): 0.65 ± 0.05 m2 upright on roller skis by coast-down, up to 30 % more in a loose suit; scaled with the surface of the body, side-on and in other stances as common practice has it");
    /// <summary>Grip of board wheels, and where a rider's weight lies.</summary>
    public static Source GripPractice { get; } = new("common practice, no source, for the grip of urethane and rubber (dry asphalt holds a car's tyre with 0.65, roller-ski wheels five to eight times as well as waxed skis on snow); height of the centre of mass 0.56 of the body's upright from memory, in bent stances from Winter's segment tables");
    /// <summary>Losses of toothed belts.</summary>
    public static Source BeltLoss { get; } = new("JSME annual meeting 2006.4, 179 (loss grows with the tension at rest); Gates, Belt Drive Efficiencies (95 to 98 % for a right drive); the number is common practice");
}
