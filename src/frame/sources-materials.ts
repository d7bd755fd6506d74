import type { Source } from "../solver/index.js"

const seen = (title: string, by: string, edition?: string, where?: string): Source => ({
  title,
  by,
  ...(edition === undefined ? {} : { edition }),
  ...(where === undefined ? {} : { where }),
  verified: "seen",
})

/** Publications that figures of materials are taken from. */
export const ABS_FIRST: Source = /* @__PURE__ */ seen("Terluran GP-22 data sheet", "BASF", undefined, "ASTM values")
export const ABS_SECOND: Source = /* @__PURE__ */ seen("Terluran GP-35 product data", "BASF", undefined, "ISO values")
export const ABS_DENSITY: Source = {
  title: "ABS (extrusion), property ranges",
  by: "Granta Design",
  verified: "seen",
}
export const ALUMINIUM_MINIMUM: Source = /* @__PURE__ */ seen(
  "49 CFR 178.46, Specification 3AL seamless aluminum cylinders",
  "US Department of Transportation",
  undefined,
  "table 2",
)
export const ALUMINIUM_TYPICAL: Source = /* @__PURE__ */ seen(
  "Aluminum 6061-T6 material information",
  "Aluminum Association typical values, reproduced by a fabricator",
)
export const CARBON_TUBE: Source = /* @__PURE__ */ seen(
  "Technical material specifications, carbon tubes",
  "Goodwinds",
  undefined,
  "minimum properties",
)
export const CARBON_WOUND: Source = /* @__PURE__ */ seen(
  "Filament winding, carbon fibre types in composite tubes",
  "Performance Composites",
  undefined,
  "standard grade",
)
export const CHIPBOARD_SHEET: Source = /* @__PURE__ */ seen(
  "Particle boards technical data (EN 312 type P2)",
  "Swiss Krono",
  undefined,
  "property table",
)
export const CHIPBOARD_MODULUS: Source = /* @__PURE__ */ seen("Technical specification, particle board (EN 312 values)", "ETC Supply")
export const EN_312: Source = {
  title: "EN 312, Particleboards: specifications",
  by: "CEN",
  edition: "2010",
  where: "table of type P2 (modulus 1800 to 13 mm, 1500 N/mm² to 25 mm)",
  verified: "not-seen",
}
export const EVA_FOAM: Source = /* @__PURE__ */ seen(
  "Creep of EVA foam from running shoe midsoles",
  "N. J. Mills and others",
  "Cellular Polymers",
  "introduction",
)
export const GLASS_ROD: Source = /* @__PURE__ */ seen("Material properties of pultruded products", "Tencom", undefined, "chart")
export const GLASS_ROD_75: Source = /* @__PURE__ */ seen(
  "Technical material specifications, fiberglass rods and profiles",
  "Goodwinds",
  undefined,
  "pultruded composites properties",
)
export const HIPS_FIRST: Source = /* @__PURE__ */ seen(
  "Polystyrene specifications",
  "cutlery supplier",
  "2017",
  "typical properties (ASTM)",
)
export const HIPS_RANGE: Source = /* @__PURE__ */ seen(
  "High impact polystyrene mechanical properties",
  "plastics distributor",
  undefined,
  "ASTM D638, D790 and D648 at 73 °F",
)
export const MDF_SHEET: Source = /* @__PURE__ */ seen(
  "MDF E1 technical data sheet (classification to EN 622-5)",
  "M. Kaindl",
  "2020",
  "property table",
)
export const OSB_MEASURED: Source = /* @__PURE__ */ seen(
  "Performance of imported OSB by application",
  "J. Korean Wood Sci. Technol. 51(4)",
  "2023",
  "table 3",
)
export const OSB_DESIGN: Source = /* @__PURE__ */ seen(
  "OSB technical information (EN 300 minima, EN 12369-1 characteristic values)",
  "board maker",
  undefined,
  "OSB/2 and OSB/3",
)
export const PC_GRADE: Source = /* @__PURE__ */ seen("Makrolon 2407 data sheet", "Covestro", undefined, "ISO values")
export const PC_SHEET: Source = /* @__PURE__ */ seen("Polycarbonate technical data", "plastics distributor", undefined, "ASTM values")
export const PC_STOCK: Source = /* @__PURE__ */ seen("Polycarbonate (PC) material table", "KERN", undefined, "material 2301")
export const PETG_FILAMENT: Source = /* @__PURE__ */ seen(
  "Effect of additive manufacturing parameters on PLA, ABS and PETG strength",
  "Processes 13(9) 2733",
  "2025",
  "section 2.1",
)
export const PETG_FIRST: Source = /* @__PURE__ */ seen("PETG sheet data", "Nudec", undefined, "property table (ISO 527/178)")
export const PETG_SECOND: Source = /* @__PURE__ */ seen("PETG sheets clear", "Polydex Plastic", undefined, "property list (ASTM)")
export const PLA_GRADE: Source = /* @__PURE__ */ seen(
  "Ingeo 3D850 technical data sheet",
  "NatureWorks",
  undefined,
  "printed part values (ASTM D638)",
)
export const PLA_RANGE: Source = /* @__PURE__ */ seen("PLA material page", "additive.tools", undefined, "property table")
export const PLYWOOD_BIRCH: Source = {
  title: "Handbook of Finnish Plywood",
  by: "Finnish Forest Industries Federation",
  edition: "2007",
  where: "table 3-1, birch, sanded",
  verified: "not-seen",
}
export const PLYWOOD_TESTS: Source = /* @__PURE__ */ seen(
  "Plywood mechanical properties",
  "J. Korean Wood Sci. Technol. 53(4)",
  "2025",
  "table 3 (means of tests)",
)
export const ACRYLIC_FIRST: Source = /* @__PURE__ */ seen(
  "Physical properties for extruded acrylic sheet",
  "plastics distributor",
  undefined,
  "property table, 0.250 in",
)
export const ACRYLIC_SECOND: Source = /* @__PURE__ */ seen("Acrylic data sheet", "CCT Precision Machining", "2017", "property table")
export const PVC_FIRST: Source = /* @__PURE__ */ seen("PVC pipe specifications, physical properties", "GF Harvel")
export const PVC_SECOND: Source = /* @__PURE__ */ seen(
  "Mechanical properties of PVC pipe",
  "plastics distributor",
  undefined,
  "property table",
)
export const PVC_CREEP: Source = {
  title: "ATV-DVWK-A 127, Static calculation of drains and sewers",
  by: "DWA",
  edition: "2000",
  where: "table 3 (1750 of 3600 N/mm² after 50 years); the line over log time is assumed",
  verified: "not-seen",
}
export const ASTM_D1784: Source = {
  title: "ASTM D1784, Rigid poly(vinyl chloride) compounds",
  by: "ASTM",
  edition: "2011",
  where: "cell limits of class 12454",
  verified: "not-seen",
}
export const SOFTWOOD_GRADES: Source = {
  title: "EN 338, Structural timber: strength classes",
  by: "CEN",
  edition: "2016",
  where: "table 1, C16 and C24",
  verified: "not-seen",
}
export const WOOD_HANDBOOK: Source = /* @__PURE__ */ seen(
  "Wood Handbook, chapter 12 (FPL-GTR-190)",
  "USDA Forest Products Laboratory",
  "2010",
  "table 12-3",
)
/** What no document is named for, said in its place. */
const practice = (title: string): Source => ({ title, verified: "practice" })
export const NO_CREEP: Source = /* @__PURE__ */ practice("common practice, no source: does not creep measurably at these temperatures")
export const ASSUMED_CREEP: Source = /* @__PURE__ */ practice(
  "common practice, no source: half the stiffness left after 1000 h, assumed for want of a published figure",
)
export const HALF_OF_FIBRE: Source = /* @__PURE__ */ practice(
  "common practice, no source: half of the figures along pultruded fibre, for the cross plies",
)
