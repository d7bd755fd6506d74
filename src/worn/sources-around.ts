import type { Source } from "../solver/index.js"

const READ = "2026-11-28"

/** Moments, geometry and energies worked out from first principles. */
export const mechanics: Source = { title: "moments and geometry of rigid bodies", verified: "practice" }

export const whiteSource: Source = {
  title: "Fluid Mechanics",
  by: "F. M. White",
  edition: "7th edition, 2011",
  where: "table 7.3, rectangular plate normal to the stream",
  verified: "not-seen",
}
export const cengelSource: Source = {
  title: "Fluid Mechanics: Fundamentals and Applications",
  by: "Y. A. Çengel, J. M. Cimbala",
  edition: "2006",
  where: "table 11-2, rectangular plate",
  verified: "not-seen",
}
export const dragSource: Source = {
  title: "Aeronautical Engineer's Data Book",
  by: "C. Matthews",
  edition: "2002",
  where: "figure 5.13(b), p. 95",
  verified: "seen",
}
export const gustSource: Source = {
  title: "Guidelines for converting between various wind averaging periods in tropical cyclone conditions, WMO/TD-No. 1555",
  by: "B. A. Harper, J. D. Kepert, J. D. Ginger",
  edition: "2010",
  where: "table 1.1, in-land, 3 s gust in a 10 min mean: 1.66",
  verified: "not-seen",
}
export const beaufortSource: Source = {
  title: "Beaufort scale of wind force, WMO code 1100",
  by: "World Meteorological Organization",
  where: "limits in m/s, ten-minute mean at 10 m over open ground",
  verified: "seen",
}
export const pedestrianWindSource: Source = {
  title: "Acceptable wind speeds in towns, Building Science 8, 259–267",
  by: "A. D. Penwarden",
  edition: "1973",
  where: "abstract: discomfort from 5 m/s, definitely unpleasant from 10, dangerous from 20",
  verified: "seen",
}
export const melbourneSource: Source = {
  title: "Pedestrian wind criteria",
  by: "City of Melbourne, after W. H. Melbourne",
  edition: "2021",
  where: "safety: 3 s gust of 20 m/s",
  verified: "seen",
}
/** The lower of the two published gusts that unbalance people on foot. */
export const gustSafetySource: Source = {
  title: "Study on acceptable criteria for assessing strong wind at ground level, J. Wind Eng. Ind. Aerodyn. 24, 1–18",
  by: "S. Murakami, Y. Iwasa, Y. Morikawa",
  edition: "1986",
  where: "daily largest gusts of 10, 15 and 20 m/s",
  verified: "not-seen",
}
export const huntSource: Source = {
  title: "The effects of wind on people: new criteria based on wind tunnel experiments, Building and Environment 11, 15–28",
  by: "J. C. R. Hunt, E. C. Poulton, J. C. Mumford",
  edition: "1976",
  where: "abstract: nobody was tested above 12.5 m/s",
  verified: "seen",
}

export const functionalBaseSource: Source = {
  title: "Functional base of support decreases with age, Journal of Gerontology 49(6), M258–M263",
  by: "M. B. King, J. O. Judge, L. Wolfson",
  edition: "1994",
  where: "about 60 % of the foot's length in young adults, less with age",
  verified: "not-seen",
}
export const pendulumSource: Source = {
  title: "The condition for dynamic stability, Journal of Biomechanics 38, 1–8",
  by: "A. L. Hof, M. G. J. Gazendam, W. E. Sinke",
  edition: "2005",
  where: "abstract: centre of mass plus its speed times √(l/g) within the base",
  verified: "seen",
}
export const proportionsSource: Source = {
  title:
    "Body segment parameters, New York University report 1166-03, as in Winter, Biomechanics and Motor Control of Human Movement, fig. 4.1",
  by: "R. Drillis, R. Contini",
  edition: "1966",
  where: "segment lengths as fractions of stature",
  verified: "not-seen",
}
export const bodyCentreSource: Source = {
  title: "Biomechanics and Exercise Physiology",
  by: "A. T. Johnson",
  edition: "1991",
  where: "section 2.2.1, after Davidovits 1975: centre of mass at 0.56 of stature",
  verified: "seen",
}
export const standingDragSource: Source = {
  title: "Fluid-Dynamic Drag",
  by: "S. F. Hoerner",
  edition: "1965",
  where: "chapter 3: standing person, about 9 ft² of drag area",
  verified: "not-seen",
}
export const swaySource: Source = {
  title:
    "The effect of military load carriage on postural sway, forward trunk lean, and pelvic girdle motion, Int. J. Exercise Science 10, 25–36",
  by: "E. M. Strube and others",
  edition: "2017",
  where: "abstract: 20 cadets, packs of 16.0 and 20.5 kg",
  verified: "seen",
}

export const wbgtSource: Source = {
  title: "ISO 7243, Ergonomics of the thermal environment: assessment of heat stress using the WBGT index",
  by: "ISO",
  edition: "2017",
  where: "table A.1 and clothing adjustment annex",
  verified: "seen",
  read: READ,
}
export const metabolicClassSource: Source = {
  title: "ISO 8996, Determination of metabolic rate",
  by: "ISO",
  edition: "2021",
  where: "classes, for a standard person of 1.8 m²",
  verified: "not-seen",
}
export const nioshHeatSource: Source = {
  title: "Criteria for a recommended standard: occupational exposure to heat and hot environments, publication 2016-106",
  by: "NIOSH",
  edition: "2016",
  where: "section 8.1 and table 3-2",
  verified: "seen",
  read: READ,
}
/** The one adjustment table at hand that prints the tight suit over other clothes, and the hood. */
export const clothingOverSource: Source = {
  title: "Regulatory standard NR-9, annex III, occupational exposure to heat",
  by: "Ministry of Labour, Brazil",
  edition: "2019",
  where: "clothing table: vapour barrier 10 K, over work clothes 12 K, hood 1 K more",
  verified: "seen",
  read: READ,
}
export const bodySurfaceSource: Source = {
  title: "A formula to estimate the approximate surface area if height and weight be known, Archives of Internal Medicine 17, 863–871",
  by: "D. Du Bois, E. F. Du Bois",
  edition: "1916",
  where: "0.007184·m^0.425·H^0.725, kg and cm",
  verified: "not-seen",
}
export const childHeatSource: Source = {
  title: "Restraints on activities at different levels of heat stress",
  by: "American Academy of Pediatrics",
  where: "table 1, withdrawn in 2011",
  verified: "seen",
}

export const isoTouchSource: Source = {
  title: "ISO 13732-1, Ergonomics of the thermal environment: contact with hot surfaces",
  by: "ISO",
  edition: "2006",
  where: "burn thresholds for short contact, 1 min, 10 min and 8 h",
  verified: "not-seen",
}
export const iecTouchSource: Source = {
  title: "IEC 62368-1, Audio/video, information and communication technology equipment: safety",
  by: "IEC",
  edition: "2018",
  where: "table 38, touch limits TS1",
  verified: "not-seen",
}
/** How the equipment standard's measured value is compared. */
export const touchRoomSource: Source = {
  title: "Messages of three members of the standard's committee on a mailing list of product-safety engineers",
  by: "various",
  edition: "2020",
  where: "limits of IEC 62368-1 table 38 are compared with the value measured at 25 °C",
  verified: "seen",
}
export const ecmaTouchSource: Source = {
  title: "ECMA-287, Safety of electronic equipment",
  by: "Ecma International",
  edition: "2nd edition, 2002",
  where: "touch temperature table, as quoted in an engineering note",
  verified: "seen",
}
export const medicalTouchSource: Source = {
  title: "IEC 60601-1, Medical electrical equipment",
  by: "IEC",
  edition: "2005",
  where: "table 24, applied parts; 41 °C in the second edition of 1988",
  verified: "not-seen",
}
export const burnCurveSource: Source = {
  title: "ASTM C1055, Standard guide for heated system surface conditions that produce contact burn injuries",
  by: "ASTM",
  edition: "2020",
  where: "figure 1, equations of both curves",
  verified: "not-seen",
}
export const lowBurnSource: Source = {
  title: "Studies of thermal injury II: the relative importance of time and surface temperature, American Journal of Pathology 23, 695–720",
  by: "A. R. Moritz, F. C. Henriques",
  edition: "1947",
  where: "six hours at 44 °C, about half for each degree more up to 51 °C",
  verified: "not-seen",
}
export const painSource: Source = {
  title: "Touch temperature limits, engineering note after E. Ungar and K. Stroud",
  by: "NASA Johnson Space Center",
  edition: "2010",
  where: "pain from 42 °C (chest) to 45 °C (foot)",
  verified: "seen",
}
export const coldTouchSource: Source = {
  title: "Temperature limit values for cold touchable surfaces, final report of the ColdSurf project",
  by: "TNO and partners",
  where: "summary: contact temperature of a finger for pain 15 °C, numbness 7 °C, frostbite 0 °C",
  verified: "seen",
}
export const childScaldSource: Source = {
  title: "Burn safety facts and prevention of scald injuries",
  by: "Bothin Burn Center; Burn Foundation",
  where: "children's skin burns faster; no separate seconds are printed",
  verified: "seen",
}

export const contactSource: Source = {
  title: "ISO/TS 15066, Robots and robotic devices: collaborative robots",
  by: "ISO",
  edition: "2016, since carried into ISO 10218-2:2025",
  where: "tables A.2 (force, pressure), A.3 (body model), A.4 (energy)",
  verified: "not-seen",
}
export const doorForceSource: Source = {
  title: "EN 12453, Industrial, commercial and garage doors and gates: safety in use of power operated doors",
  by: "CEN",
  edition: "2017+A1:2021",
  where: "force limitation table",
  verified: "not-seen",
}
export const foamSource: Source = {
  title: "Cellular Solids: Structure and Properties",
  by: "L. J. Gibson, M. F. Ashby",
  edition: "2nd edition, 1997",
  where: "chapter 5: foams stiffen sharply near 60 to 80 % compression",
  verified: "not-seen",
}
export const approachSource: Source = {
  title: "ISO 13855, Positioning of safeguards with respect to the approach of the human body",
  by: "ISO",
  edition: "2024",
  where: "walking speed 1600 mm/s",
  verified: "seen",
}

export const crushGapSource: Source = {
  title: "ISO 13854, Safety of machinery: minimum gaps to avoid crushing of parts of the human body",
  by: "ISO",
  edition: "2017",
  where: "table 1 (formerly EN 349)",
  verified: "seen",
}
/** Slots through which a part of the body gets into a gap at all. */
export const openingSource: Source = {
  title: "ISO 13857, Safety of machinery: safety distances to prevent hazard zones being reached",
  by: "ISO",
  edition: "2019",
  where: "tables 4 and 7, slots",
  verified: "not-seen",
}
export const entrapmentSource: Source = {
  title: "EN 1176-1, Playground equipment and surfacing: general safety requirements",
  by: "CEN",
  edition: "2017",
  where: "entrapment of head and neck: probes of 89 mm and more",
  verified: "not-seen",
}
export const machinerySource: Source = {
  title: "ISO 12100, Safety of machinery: general principles for design",
  by: "ISO",
  edition: "2010",
  where: "6.2.2.1",
  verified: "not-seen",
}

export const adaSource: Source = {
  title: "ADA Standards for Accessible Design",
  by: "U.S. Department of Justice",
  edition: "2010",
  where: "304, 305, 307, 308, 403, 404, 407, 408",
  verified: "seen",
  read: READ,
}
export const partMSource: Source = {
  title: "Approved Document M, Access to and use of buildings",
  by: "HM Government",
  edition: "2015",
  where: "volume 2, table 2; volume 1, door and corridor widths; lifts",
  verified: "seen",
  read: READ,
}
export const partKSource: Source = {
  title: "Approved Documents K and M, stairs",
  by: "HM Government",
  edition: "2013",
  where: "access stairs of buildings other than dwellings",
  verified: "not-seen",
}
export const ibcSource: Source = {
  title: "International Building Code",
  by: "ICC",
  edition: "2018–2021",
  where: "1010 and 1020 doors and corridors, 1011.2 stairs",
  verified: "not-seen",
}
export const ircSource: Source = {
  title: "International Residential Code",
  by: "ICC",
  edition: "2018",
  where: "R311.7.1–R311.7.5 stairs",
  verified: "seen",
  read: READ,
}
export const liftSource: Source = {
  title: "EN 81-70, Accessibility to lifts, and EN 81-20, Safety rules for lifts",
  by: "CEN",
  edition: "2018 and 2014",
  where: "EN 81-70 table 3, EN 81-20 table 6; car entrance at least 2 m high",
  verified: "not-seen",
}
export const vehicleSource: Source = {
  title: "Accessibility Guidelines for Transportation Vehicles",
  by: "U.S. Access Board",
  edition: "2016",
  where: "T502.2.2",
  verified: "seen",
  read: READ,
}
export const aisleSource: Source = {
  title: "14 CFR 25.815, Width of aisle",
  by: "FAA",
  edition: "2024",
  where: "table",
  verified: "seen",
  read: READ,
}
export const roadSource: Source = {
  title: "23 CFR 658.15, width limitation",
  by: "FHWA",
  edition: "2010",
  where: "102 in; clearance heights are the states' own, usually 13 ft 6 in",
  verified: "not-seen",
}
export const baggageSource: Source = {
  title: "Passenger baggage guidance",
  by: "IATA and carriers",
  edition: "2023",
  where: "cabin 56 × 45 × 25 cm; checked 62 in or 158 cm in all, 23 kg",
  verified: "not-seen",
}
export const containerSource: Source = {
  title: "How many pallets fit in a container",
  by: "a freight carrier's page",
  where: "inside of a 20 ft container, approximate; its door is smaller, about 2.34 × 2.28 m",
  verified: "seen",
}
