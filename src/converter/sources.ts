import type { Source } from "../solver/index.js"

export const USB_2: Source = {
  title: "Universal Serial Bus Specification, Revision 2.0",
  by: "USB-IF",
  edition: "2000",
  where: "section 7.2: loads and port voltages",
  verified: "seen",
}

export const USB_2_CABLES: Source = {
  ...USB_2,
  where: "section 6.6, table 6-6: maximum conductor resistance by gauge; 0.125 V on each conductor",
  verified: "not-seen",
}

export const USB_3: Source = {
  title: "Universal Serial Bus 3.0 Specification",
  by: "USB-IF",
  edition: "2008",
  where: "section 11.4",
  verified: "seen",
}

export const USB_CHARGING: Source = {
  title: "IEC 62680-1-1, Battery Charging Specification 1.2",
  by: "USB-IF",
  edition: "2010",
  where: "table 5-2",
  verified: "seen",
}

export const USB_TYPE_C: Source = {
  title: "IEC 62680-1-3, USB Type-C cable and connector specification",
  by: "IEC",
  edition: "2022",
  where: "section 4.4.1 (voltage lost in the cable); advertisement by Rp",
  verified: "seen",
}

export const USB_SUPPLIES: Source = {
  title:
    "IEC 63002, Identification and communication interoperability method for external power supplies used with portable computing devices",
  by: "IEC",
  edition: "2016 (superseded by the third edition, 2025)",
  where: "clause 4.4",
  verified: "seen",
}

export const USB_POWER_DELIVERY: Source = {
  title: "Universal Serial Bus Power Delivery Specification, Revision 3.1",
  by: "USB-IF",
  edition: "2021",
  where: "power rules; voltages within 5 %",
  verified: "seen",
}

export const BOOST_DATASHEET: Source = {
  title: "LMR62014 datasheet SNVS735B",
  by: "Texas Instruments",
  edition: "2013",
  where: "page 12",
  verified: "seen",
}

export const BOOST_CALCULATION: Source = {
  title: "Basic Calculation of a Boost Converter's Power Stage, SLVA372",
  by: "Texas Instruments",
  where: "equations 1 to 5",
  verified: "not-seen",
}

export const BUCK_DATASHEET: Source = {
  title: "TPS54331 datasheet SLVS839C",
  by: "Texas Instruments",
  edition: "2010",
  where: "equations 8 to 10",
  verified: "seen",
}

export const RESTING_CURRENT: Source = {
  title: "TPS54061 datasheet SLVSBB7C",
  by: "Texas Instruments",
  edition: "2014",
  where: "page 24, equations 30 to 33",
  verified: "seen",
}

export const BUCK_CALCULATION: Source = {
  title: "Basic Calculation of a Buck Converter's Power Stage, SLVA477",
  by: "Texas Instruments",
  where: "equations 1 to 5",
  verified: "not-seen",
}

export const POWER_ELECTRONICS: Source = {
  title: "Fundamentals of Power Electronics",
  by: "R. W. Erickson, D. Maksimović",
  edition: "2nd, 2001",
  where: "chapters 2 and 3: topologies, losses",
  verified: "not-seen",
}

export const CONSTANT_POWER: Source = {
  title: "DC power grids with constant-power loads, Part I: a full characterization of power flow feasibility",
  by: "M. Jeeninga, C. De Persis, A. van der Schaft",
  edition: "2020",
  where: "single-source case",
  verified: "seen",
}

export const CONSTANT_POWER_EFFECTS: Source = {
  title: "Constant power loads and their effects in DC distributed power systems: a review",
  by: "S. Singh and others",
  edition: "2017",
  verified: "not-seen",
}

export const INPUT_FILTERS: Source = {
  title: "Input filter considerations in design and application of switching regulators",
  by: "R. D. Middlebrook (IEEE IAS)",
  edition: "1976",
  verified: "not-seen",
}

export const HOT_SURFACES: Source = {
  title: "ISO 13732-1, Human responses to contact with hot surfaces",
  by: "ISO",
  edition: "2006",
  where: "burn thresholds",
  verified: "not-seen",
}

/** Voltages at which bare parts need no insulation. */
export const TOUCH_VOLTAGE: Source = {
  title: "IEC 60364-4-41, Protection against electric shock",
  by: "IEC",
  edition: "2005",
  where: "clause 414.4.5, as quoted of BS 7671: 60 V direct current where dry, 30 V in all other cases",
  verified: "seen",
}

export const MACHINES: Source = {
  title: "Electric Machinery",
  by: "A. E. Fitzgerald, C. Kingsley, S. D. Umans",
  edition: "6th, 2003",
  where: "chapter 7: direct-current machines",
  verified: "not-seen",
}

/** Conduction, switching and dead-time losses of a bridge. */
export const DRIVER_LOSSES: Source = {
  title: "Calculating Motor Driver Power Dissipation, SLVA504",
  by: "Texas Instruments",
  where: "worked example",
  verified: "seen",
}

/** How much the resistance of transistor switches grows with heat. */
export const SWITCH_WARMTH: Source = {
  title: "DRV8833 datasheet SLVSAR1C",
  by: "Texas Instruments",
  edition: "2013",
  where: "equation 2; 40 % more at 125 °C",
  verified: "not-seen",
}

/** Electrical equipment of machines: stop categories, unexpected start. */
export const IEC_60204: Source = {
  title: "IEC 60204-1, Safety of machinery: electrical equipment of machines, part 1: general requirements",
  by: "IEC",
  edition: "2016",
  where: "clauses 5.4 and 9.2 (unexpected start-up, stop categories)",
  verified: "not-seen",
  read: "2026-11-29",
}
