import type { Source } from "../solver/index.js"

/** American wire gauge by its geometric series. */
export const AWG: Source = {
  title: "ASTM B258, Standard specification for standard nominal diameters and cross-sectional areas of AWG sizes of solid round wires",
  by: "ASTM International",
  edition: "2018",
  where: "clause 5 (0.0050 in at 36 AWG, 0.4600 in at 4/0, ratio 92 over 39 steps)",
  verified: "not-seen",
}

export const LAY: Source = {
  title: "ASTM B8, Concentric-lay-stranded copper conductors",
  by: "ASTM International",
  edition: "2011",
  where: "clause 8 (2 %)",
  verified: "not-seen",
}

export const COPPER: Source = {
  title: "IEC 60028, International standard of resistance for copper",
  by: "IEC",
  edition: "1925",
  where: "clauses 1 and 2 (1/58 Ω·mm²/m, 0.00393/K at 20 °C, 8.89 g/cm³)",
  verified: "seen",
}

export const ALUMINIUM: Source = {
  title: "IEC 60889, Hard-drawn aluminium wire for overhead line conductors",
  by: "IEC",
  edition: "1987",
  where: "clause 3 (28.264 nΩ·m, 0.00403/K at 20 °C, 2.703 g/cm³)",
  verified: "not-seen",
}

export const CLASSES: Source = {
  title: "IEC 60228, Conductors of insulated cables",
  by: "IEC",
  edition: "2004",
  where: "tables 2 and 3 (class 2 stranded, class 5 flexible; maximum resistance at 20 °C)",
  verified: "seen",
}

/** Heat capacity and β of the metals; the limits of a short fault. */
export const ADIABATIC: Source = {
  title: "IEC 60364-5-54, Earthing arrangements and protective conductors",
  by: "IEC",
  edition: "2011",
  where: "Annex A, table A.54.1 (heat capacity, β; K = 226 copper, 148 aluminium)",
  verified: "seen",
}

export const SHORT_FAULT: Source = {
  title: "IEC 60364-4-43, Protection against overcurrent",
  by: "IEC",
  edition: "2008",
  where: "clause 434.5.2 and table 43A (no heat lost, up to 5 s; 160 °C for PVC)",
  verified: "not-seen",
}

export const PVC: Source = {
  title: "IEC 60227-1, Polyvinyl chloride insulated cables of rated voltages up to 450/750 V",
  by: "IEC",
  edition: "2007",
  where: "70 °C for general PVC insulation",
  verified: "not-seen",
}

export const BURNS: Source = {
  title: "ISO 13732-1, Ergonomics of the thermal environment: contact with hot surfaces",
  by: "ISO",
  edition: "2006",
  where: "burn threshold 43 °C for contact of 8 h and longer, any material",
  verified: "not-seen",
}

export const SKIN: Source = {
  title: "ISO 7730, Ergonomics of the thermal environment: predicted mean vote",
  by: "ISO",
  edition: "2005",
  where: "equation 1 (skin temperature of a person at rest, 35.7 °C less 0.028 K per W/m² of heat made)",
  verified: "not-seen",
}

export const FUMES: Source = {
  title: "Pocket Guide to Chemical Hazards, hydrogen chloride",
  by: "NIOSH",
  edition: "2007",
  where: "ceiling 5 ppm; irritates eyes, nose and throat",
  verified: "seen",
}

export const ALUMINIUM_ENDS: Source = {
  title: "Publication 516, Repairing aluminum wiring",
  by: "US Consumer Product Safety Commission",
  edition: "2011",
  verified: "not-seen",
}

export const TOUCH: Source = {
  title: "IEC 60598-1, Luminaires: general requirements and tests",
  by: "IEC",
  edition: "2008",
  where: "clause 8.2.3 (bare parts: 60 V ripple-free direct current in the dry, 30 V elsewhere)",
  verified: "seen",
}

export const BLADE: Source = {
  title: "ISO 8820-3, Road vehicles, Fuse-links with tabs (blade type)",
  by: "ISO",
  edition: "2015",
  where: "time-current limits, types C and F (110 % for 100 h; 135 % for 0.75 s to 600 s; 200 % for 0.15 s to 5 s)",
  verified: "not-seen",
}

export const FUSEOLOGY: Source = {
  title: "Fuse characteristics, terms and consideration factors (Fuseology)",
  by: "Littelfuse",
  edition: "2017",
  where: "page 12 (75 % rerating at 25 °C; pulse energy, charts 1 and 2)",
  verified: "seen",
}

export const LARGE_BLADE: Source = {
  title: "MAXI blade fuses, series 299, datasheet",
  by: "Littelfuse",
  where: "time-current limits (135 % for 60 s to 1800 s; 200 % for 2 s to 50 s)",
  verified: "seen",
}

export const PREECE: Source = {
  title: "On the heating effects of electric currents, no. II",
  by: "W. H. Preece",
  edition: "Proc. R. Soc. 43, 1887, 280; constants as in tables of fuse equations",
  where: "A per inch^1.5: copper 10244, aluminium 7585, tin 1642",
  verified: "seen",
}

export const FUSE_PLACE: Source = {
  title: "E-11, AC and DC electrical systems on boats",
  by: "American Boat and Yacht Council",
  where: "clause 11.10 (overcurrent protection within 7 in of the source), by way of suppliers' summaries",
  verified: "seen",
}

export const CIRCULAR_MILS: Source = {
  title: "Handbook of Electronic Tables and Formulas",
  where: "copper wire table, column of 700 circular mils per ampere (bundled or confined wire)",
  verified: "seen",
}

export const CONNECTORS: Source = {
  title: "IEC 60512-5-2, Connectors for electronic equipment: current-temperature derating",
  by: "IEC",
  edition: "2002",
  verified: "not-seen",
}

export const LITHIUM_CHARGE: Source = {
  title: "IEC 62133-2, Secondary cells: portable sealed lithium cells",
  by: "IEC",
  edition: "2017",
  where: "charging within stated limits",
  verified: "not-seen",
}

export const CONVECTION: Source = {
  title: "Correlating equations for laminar and turbulent free convection from a horizontal cylinder",
  by: "S. W. Churchill, H. H. S. Chu",
  edition: "Int. J. Heat Mass Transfer 18, 1975",
  where: "page 1049",
  verified: "not-seen",
}

export const HEAT_TRANSFER: Source = {
  title: "Fundamentals of Heat and Mass Transfer",
  by: "F. P. Incropera et al.",
  edition: "6th, 2007",
  where: "tables 4.1 (cylinder midway between planes, half of it) and A.4 (air)",
  verified: "not-seen",
}

export const VISCOSITY: Source = {
  title: "Viscous Fluid Flow",
  by: "F. M. White",
  where: "table 1-2 (Sutherland's formula)",
  verified: "not-seen",
}

export const KIRCHHOFF: Source = { title: "Kirchhoff's laws", by: "G. Kirchhoff", edition: "1845", verified: "practice" }

export const TELLEGEN: Source = {
  title: "A general network theorem, with applications",
  by: "B. D. H. Tellegen",
  edition: "Philips Research Reports 7, 1952",
  verified: "not-seen",
}

export const LOOPS: Source = {
  title: "Computer-Aided Analysis of Electronic Circuits",
  by: "L. O. Chua, P.-M. Lin",
  edition: "1975",
  where: "chapter 4 (loop analysis by tree and links)",
  verified: "not-seen",
}

export const DISTRIBUTOR: Source = {
  title: "Principles of Power System",
  by: "V. K. Mehta, R. Mehta",
  where: "chapter 13, D.C. distribution (uniformly loaded distributor)",
  verified: "not-seen",
}

export const RAILROADS: Source = {
  title: "Power Distribution for Electric Railroads",
  by: "L. Bell",
  edition: "1897",
  where: "Fig. 6 and text",
  verified: "seen",
}

/** Electrical equipment of machines: stops, unexpected start, broken wires. */
export const MACHINE_WIRING: Source = {
  title: "IEC 60204-1, Safety of machinery: electrical equipment of machines, part 1: general requirements",
  by: "IEC",
  edition: "2016",
  where: "clauses 9.2 to 9.4 (stop categories, control functions in the event of failure)",
  verified: "not-seen",
  read: "2026-11-29",
}

/** What an emergency stop has to do. */
export const EMERGENCY_STOP: Source = {
  title: "ISO 13850, Safety of machinery: emergency stop function: principles for design",
  by: "ISO",
  edition: "2015",
  where: "stop categories 0 and 1, latching, unlatching does not start",
  verified: "not-seen",
  read: "2026-11-29",
}

/** What contactors of each category are tried with, as a maker's manual prints the standard's table. */
export const CONTACT_CATEGORIES: Source = {
  title: "Contactors, system manual: utilization categories for DC voltages, after IEC 60947-4-1",
  where: "table 3-2 (DC-1, DC-3, DC-5: switching capacity, time constant)",
  verified: "not-seen",
}

/** Ratings of control switches by what they switch: DC-12 resistive, DC-13 magnets. */
export const CONTROL_CONTACTS: Source = {
  title: "IEC 60947-5-1, Low-voltage switchgear and controlgear: control circuit devices and switching elements",
  by: "IEC",
  edition: "2016",
  where: "table 4 (DC-12: 1 ms to 95 %; DC-13: 6 ms for each watt, at most 300 ms)",
  verified: "not-seen",
}

/** What sheets of resettable fuses print. */
export const PTC_SHEETS: Source = {
  title: "Datasheets of radial and chip polymer resettable fuses, electrical characteristics at 23 °C",
  where: "trip at twice the hold current (1.75 to 3 times), time to trip at five times; resistance new and one hour after a trip",
  verified: "seen",
}

export const PTC_DERATING: Source = {
  title: "Datasheets of polymer resettable fuses, thermal derating (1206 chip; 99 V radial; 30 V radial and high-current as quoted)",
  where: "hold current by air temperature",
  verified: "seen",
}

export const PTC_LIMITS: Source = {
  title: "Comparison of polymer resettable fuses with one-time fuses",
  where: "they break 40 A at up to 60 V, and go on leaking up to some hundred mA while tripped",
  verified: "seen",
}

export const THERMAL_RELAY: Source = {
  title: "IEC 60255-149, Measuring relays and protection equipment, functional requirements for thermal electrical relays",
  by: "IEC",
  edition: "2013",
  where: "time to operate from cold: tau·ln(I²/(I² − I_θ²))",
  verified: "not-seen",
}
