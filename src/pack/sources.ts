import type { Source } from "../solver/index.js"

/** Passenger rules by air: energy limits, spares, devices. */
export const AIR_PASSENGERS: Source = {
  title: "Dangerous Goods Regulations, provisions for dangerous goods carried by passengers or crew",
  by: "IATA",
  edition: "67th, 2026",
  where: "section 2.3, table 2.3.A",
  verified: "seen",
  read: "2026-11-28",
}

/** What changed for power banks. */
export const POWER_BANKS_BY_AIR: Source = {
  title: "Technical Instructions for the Safe Transport of Dangerous Goods by Air (Doc 9284), Addendum No. 1",
  by: "ICAO",
  edition: "2025-2026, in force from 27 March 2026",
  where: "dangerous goods carried by passengers and crew: power banks",
  verified: "seen",
  read: "2026-11-28",
}

/** Small sealed lead batteries, and dry cells, carried by passengers. */
export const OTHER_BATTERIES_BY_AIR: Source = {
  title: "49 CFR 175.10, passenger guidance on batteries",
  by: "US FAA",
  where: "batteries, wet, nonspillable: 12 V, 100 Wh, two spares; batteries, dry (alkaline, nickel): no limit of number, terminals covered",
  verified: "seen",
  read: "2026-11-29",
}

/** Lithium-ion cells and batteries sent by themselves. */
export const AIR_CARGO: Source = {
  title: "Dangerous Goods Regulations, packing instruction 965 (UN 3480)",
  by: "IATA",
  where: "sections IA and IB; the net mass of 10 kg is section IB's",
  verified: "seen",
  read: "2026-11-28",
}

/** Lithium-metal cells and batteries sent by themselves. */
export const LITHIUM_METAL_CARGO: Source = {
  title: "Dangerous Goods Regulations, packing instruction 968 (UN 3090)",
  by: "IATA",
  where: "cargo aircraft only",
  verified: "not-seen",
  read: "2026-11-29",
}

/** Lead batteries sent as goods. */
export const LEAD_CARGO: Source = {
  title: "Dangerous Goods Regulations, list of dangerous goods, UN 2800",
  by: "IATA",
  edition: "66th, 2025",
  where:
    "class 8, packing instruction 872; special provision A67: not restricted where it does not leak at 55 °C and is marked non-spillable",
  verified: "seen",
  read: "2026-11-29",
}

/** Nickel-metal hydride batteries sent as goods. */
export const NICKEL_CARGO: Source = {
  title: "Notices on the carriage of nickel-metal hydride batteries (UN 3496)",
  by: "IATA special provision A199; IMDG code, special provisions 117 and 963",
  where: "by air not restricted with terminals covered; by sea class 9 with papers from 100 kg, not in equipment, no button cells",
  verified: "seen",
  read: "2026-11-29",
}

export const UN_38_3: Source = {
  title: "Manual of Tests and Criteria",
  by: "United Nations",
  where: "section 38.3",
  verified: "not-seen",
}

export const LITHIUM_SAFETY: Source = {
  title: "IEC 62133-2, Safety requirements for portable sealed secondary lithium cells, and for batteries made from them",
  by: "IEC",
  edition: "2017",
  where: "clauses 5 and 7; and the cell makers' own limits",
  verified: "not-seen",
}

export const NICKEL_SAFETY: Source = {
  title: "IEC 62133-1, Safety requirements for portable sealed secondary nickel cells, and for batteries made from them",
  by: "IEC",
  edition: "2017",
  verified: "not-seen",
}

export const LEAD_SAFETY: Source = {
  title: "Garage safety: lead-acid batteries, charging and handling",
  by: "Canadian Centre for Occupational Health and Safety",
  where: "hydrogen from about 4 % in air is explosive; sulfuric acid",
  verified: "seen",
}

/** Voltages at which bare parts need no insulation. */
export const TOUCH_VOLTAGE: Source = {
  title: "IEC 60364-4-41, Protection against electric shock",
  by: "IEC",
  edition: "2005",
  where: "clause 414.4.5, as quoted of BS 7671: 60 V direct current where dry, 30 V in all other cases",
  verified: "seen",
}

/** Pack sheets with bands of temperature for charge and discharge. */
export const PACK_SHEETS: Source = {
  title: "Specifications of a 14.8 V 2600 mAh 18650 pack and of a 26650 LFP pack, cell tables",
  edition: "2020",
  where: "items 3.6 and 3.8",
  verified: "seen",
}

/** Upper ends of use and charge that makers print. */
export const CELL_SHEETS: Source = {
  title: "Cell specifications: 18650, 26650 LFP 3300 mAh, 10440 LFP",
  where: "operating temperature: discharge -20 to 60 °C, charge 0 to 45 °C",
  verified: "seen",
}

/** Temperature limits of all chemistries side by side. */
export const TEMPERATURE_LIMITS: Source = {
  title: "BU-410, Charging at high and low temperatures",
  by: "Battery University (Cadex)",
  where: "table 1",
  verified: "seen",
}

/** Printed charging times. */
export const CHARGE_TIMES: Source = {
  title: "Lithium cell datasheets (21700 of 4.0 and 5.0 Ah, 18650 of 2.6 Ah, 26650 LFP, polymer of 1.3 and 6 Ah)",
  where: "charging times at 0.2 to 1.5 times the capacity per hour: 20 min to 2 h over charge over current",
  verified: "seen",
}

export const NICKEL_SHEETS: Source = {
  title: "Nickel metal hydride handbook, individual data sheets",
  edition: "2005",
  where: "standard and rapid charge, 0 to 45 and 0 to 40 °C",
  verified: "seen",
}

export const NICKEL_CARE: Source = {
  title: "Battery rated capacity",
  where: "nickel cells: 0.2 of the capacity per hour, down to 1.0 V",
  verified: "seen",
}

export const NICKEL_RATES: Source = {
  title: "Specification of a nickel-metal hydride cell, performance and test methods",
  where: "capacity: 5 h at 0.2 and at least 54 min at 1 times the capacity per hour, to 1.0 V",
  verified: "seen",
}

export const LEAD_CHARGING: Source = {
  title: "Sealed lead-acid charging and discharging instructions",
  where: "2.40 to 2.45 V a cell in cycles; at most 0.3 of the capacity per hour; 1.1 times the charge drawn",
  verified: "seen",
}

export const LEAD_CHARGE_TIMES: Source = {
  title: "12 V 5 Ah AGM battery data sheet",
  where: "charging table: 16 h from empty, 10 h from half; cycle setting -30 mV/K for six cells, none needed from 15 to 35 °C",
  verified: "seen",
}

/** Hours that sealed lead takes. */
export const LEAD_FULL_TIMES: Source = {
  title: "BU-403, Charging lead acid",
  by: "Battery University (Cadex)",
  where: "as quoted by a charging page: 12 to 16 h for sealed batteries, 8 to 10 h with high currents but without full topping charge",
  verified: "seen",
}

/** What shows that nickel is full, and what ends its charge. */
export const NICKEL_ENDS: Source = {
  title: "Charging pages for nickel-metal hydride cells (a battery seller's, a model car federation's of 2007, BU-408 as quoted)",
  where:
    "5 h at 0.3 of the capacity per hour by timer; at 1, 3 mV a cell, 1 to 2 K a minute, 42 °C or 1.5 h; nothing to measure at 0.1 to 0.3",
  verified: "seen",
}

export const LEAD_RATES: Source = {
  title: "12 V 40 Ah and 12 V 28 Ah sealed lead-acid battery data sheets",
  where: "capacity at the 20 h, 10 h, 5 h and 1 h rate: 60 to 75 % is left at 1 h",
  verified: "seen",
}

export const LEAD_TEMPERATURE: Source = {
  title: "12 V 40 Ah sealed lead-acid battery specification",
  edition: "2008",
  where: "specification table: capacity against temperature",
  verified: "seen",
}

export const LITHIUM_TEMPERATURE: Source = {
  title: "Li-ion cell specification, temperature characteristics",
  where: "item 9, acceptance minima",
  verified: "seen",
}

export const COLD_CAPACITY: Source = {
  title: "2200 mAh cylindrical Li-ion cell test specification",
  where: "items 1 to 3, acceptance minima",
  verified: "seen",
}

export const ALKALINE_RATES: Source = {
  title: "Comparison of AA battery chemistries",
  where: "alkaline: capacity at 0.5 A and at 25 mA",
  verified: "seen",
}

/** Measured discharges set against one curve and one resistance. */
export const MEASURED_RUNS: Source = {
  title: "NMC111 and LFP cell parameterisations for Battery Parameter eXchange, validation data",
  edition: "2022",
  verified: "seen",
}

export const MEASURED_CURVES: Source = {
  title: "Piecewise Linear Approximation of Battery Open-Circuit Voltage Characteristics Using Dynamic Programming, open data set",
  by: "Sunil, Pattipati, Balasingam (IEEE Trans. Instrum. Meas.)",
  edition: "2025",
  verified: "seen",
}

export const BATTERY_MODEL: Source = {
  title: "Accurate Electrical Battery Model Capable of Predicting Runtime and I-V Performance",
  by: "M. Chen, G. A. Rincón-Mora (IEEE Trans. Energy Conversion 21(2))",
  edition: "2006",
  verified: "seen",
}

export const PARALLEL_CELLS: Source = {
  title: "Internal resistance matching for parallel-connected lithium-ion cells and impacts on battery pack cycle life",
  by: "R. Gogoana, M. B. Pinson, M. Z. Bazant, S. E. Sarma (J. Power Sources 252)",
  edition: "2014",
  where: "page 8: a pair at 4.5 times the capacity per hour",
  verified: "not-seen",
}

export const COMMON_VOLTAGE: Source = {
  title: "A useful network theorem",
  by: "J. Millman (Proceedings of the IRE 28)",
  edition: "1940",
  verified: "not-seen",
}

export const RATE_LAW: Source = {
  title: "Über die Abhängigkeit der Kapazität von der Entladestromstärke bei Bleiakkumulatoren",
  by: "W. Peukert (Elektrotechnische Zeitschrift)",
  edition: "1897",
  verified: "not-seen",
}

export const LEAD_EXPONENTS: Source = {
  title: "12 V 5 Ah AGM and 12 V 40 Ah sealed lead-acid battery data sheets",
  where: "capacity against rate",
  verified: "seen",
}

export const TERMINAL_VOLTAGE: Source = {
  title: "College Physics 2e",
  by: "OpenStax",
  edition: "2022",
  where: "section 21.2",
  verified: "seen",
}

export const RATED_FIGURES: Source = {
  title: "IEC 61960-3, Secondary lithium cells and batteries for portable applications",
  by: "IEC",
  edition: "2017",
  where: "clause 3: rated capacity, nominal voltage",
  verified: "not-seen",
}

export const COLD_RESISTANCE: Source = {
  title: "Arrhenius law with rounded activation energies of 15 to 25 kJ/mol",
  verified: "practice",
}

/** Resistance from two loads. */
export const TWO_LOADS: Source = {
  title: "IEC 61960-3, Secondary lithium cells and batteries for portable applications",
  by: "IEC",
  edition: "2017",
  where:
    "direct-current method, as quoted by makers of test gear: a fifth of the capacity per hour for 10 s, then the capacity per hour for 1 s; (U1 - U2)/(I2 - I1)",
  verified: "seen",
}

export const MEASUREMENT_UNCERTAINTY: Source = {
  title: "JCGM 100, Guide to the expression of uncertainty in measurement",
  by: "Joint Committee for Guides in Metrology",
  edition: "2008",
  where: "clauses 4.3.7 (rectangular), 5.1.2 (combined) and 6.2.1 (expanded, factor 2)",
  verified: "not-seen",
}

export const END_OF_LIFE: Source = {
  title: "IEEE 1188, Recommended practice for maintenance, testing, and replacement of valve-regulated lead-acid batteries",
  by: "IEEE",
  edition: "2005",
  where: "replace where less than 80 % of the rated capacity is left; cell makers count their cycles to the same share",
  verified: "not-seen",
}

export const WORN_RESISTANCE: Source = {
  title: "Twice the resistance of new cells is taken as the end of a pack's life",
  verified: "practice",
}

/** Currents allowed for seconds. */
export const PULSE_SHEETS: Source = {
  title: "LFP 26650 3300 mAh cell specification, 12 V 5 Ah AGM battery data sheet",
  where: "discharge limits: 19.8 A for 10 s beside 9.9 A continuous; 75 A for 5 s",
  verified: "seen",
}

/** Self-discharge by kind of cell, and with temperature. */
export const STANDING_LOSSES: Source = {
  title: "BU-802b, What does elevated self-discharge do, and encyclopaedic tables of self-discharge",
  by: "Battery University (Cadex) and others",
  where: "2 to 3 % a month of lithium-ion, 5 % of polymer; the loss doubles with every 10 °C; discard a battery that loses 30 % in 24 h",
  verified: "seen",
}

export const LEAD_STANDING: Source = {
  title: "12 V sealed lead-acid battery data sheets of 4, 5 and 28 Ah",
  where: "self-discharge: 91, 82 and 64 % are left after 3, 6 and 12 months at 25 °C; 80 and 60 % after 6 and 12 at 20 °C",
  verified: "seen",
}

export const FLOODED_STANDING: Source = {
  title: "A maker's page on lead-acid discharge, and an encyclopaedic table of self-discharge",
  where: "4 % a week at 80 °F; 4 to 6 % a month",
  verified: "seen",
}

export const NICKEL_STANDING: Source = {
  title: "User's manual of a nickel-metal hydride battery pack; BU-802b",
  where: "10 to 20 % in the first 24 h, then 10 to 15 % a month; three times as much at 40 as at 20 °C",
  verified: "seen",
}

export const LOW_NICKEL_STANDING: Source = {
  title: "Makers' claims for nickel-metal hydride cells with low self-discharge",
  where: "70 to 85 % left after a year at 20 °C",
  verified: "not-seen",
}

export const ALKALINE_STANDING: Source = {
  title: "Answers on the self-discharge of alkaline cells",
  where: "at most 2, 5 and 25 % a year at 70, 85 and 100 °F; 3 % a year on another page",
  verified: "seen",
}

/** What lithium loses for good as it stands. */
export const LITHIUM_STORAGE: Source = {
  title: "Tables of the recoverable capacity of lithium-ion after a year of storage, after Battery University (Cadex)",
  where:
    "full: 94, 80 and 65 % at 0, 25 and 40 °C, 60 % after 3 months at 60 °C; 40 % charged: 98, 96, 85 and 75 %; by the square root of time",
  verified: "seen",
}

export const LEAD_STORAGE: Source = {
  title: "BU-403, Charging lead acid",
  by: "Battery University (Cadex)",
  where: "as quoted by a charging page: a topping charge every 6 months, to stay above 2.05 V a cell",
  verified: "seen",
}
