// The evening that all starter rigs are made for: one wearer, one parade, one pack. Invented, like the troupe that walks it.
import type { CellSource, Rig } from "../rig/index.js"

/** The pack that all starters carry. */
export const pack: CellSource = {
  type: "cells",
  name: "pack",
  chemistry: "nmc",
  series: 3,
  parallel: 1,
  cellCapacity: "3 Ah",
  cellResistance: "40 mohm",
  cellCurrent: "8 A",
  extraResistance: "30 mohm",
}

/** Note on the pack. */
export const packNote =
  "Typical of one string of cylindrical cells: copy capacity, resistance and maximum current from the cell's datasheet; resistance grows with age, so measure it."

/** Wearer, day and surroundings. */
export const evening = {
  day: { hours: "3 h", moves: 40, reserve: "20 %", coldest: "10 degC" },
  wearer: { bodyMass: "70 kg", stature: "1.72 m" },
  straps: { centreOffset: "90 mm", strapWidth: "70 mm", beltShare: "40 %" },
  schedule: {
    plan: [
      { name: "walk to the square", activity: "walking", duration: "25 min", walkingSpeed: "0.8 m/s" },
      { name: "on stage", activity: "stage", duration: "12 min" },
      { name: "rest, rig off", activity: "off", duration: "40 min" },
      { name: "walk back", activity: "walking", duration: "25 min", walkingSpeed: "0.8 m/s" },
    ],
  },
  heat: { wetBulbTemperature: "11 degC", globeTemperature: "14 degC", ambientTemperature: "13 degC", clothing: "cloth-coverall" },
  stance: { stagger: "350 mm" },
  reach: { forward: "220 mm", outward: "200 mm", up: "1.05 m" },
} as const satisfies Partial<Rig>

/** Notes on the evening. */
export const eveningNotes: Readonly<Record<string, string>> = {
  day: "Invented: hours, moves and temperature of one evening. A fifth of the charge kept in reserve is common practice.",
  wearer: "Invented: put in who wears it. For several, the lightest and the shortest decide.",
  straps: "Invented harness. Measure the straps, and how far behind the back the rig's weight is.",
  schedule: "Invented evening. Write your own, rests included: it decides how heavy the rig may be.",
  heat: "Invented weather. Take wet bulb and globe temperatures from a meter on the spot; the forecast's air temperature is not enough.",
  stance: "Typical of somebody standing with one foot ahead. Measure it in costume.",
  reach: "Invented place of the stop switch. Measure it on the wearer, rig on: it must be in reach of either hand.",
}

/** Notes that hold for whatever creature. */
export const notesOf = (own: Readonly<Record<string, string>>): Readonly<Record<string, string>> => ({
  "power.sources[0]": packNote,
  "power.buses[0]":
    "Typical run from pack to motor: measure its length along the way it is laid. Fuse by common practice: above the running current, below what the wire bears.",
  ...eveningNotes,
  wind: "Invented: span and chord of what the wind meets; the wind of a day on which you would still go out.",
  venue: "Invented sizes of the wearer with the rig folded; doors are those of published access rules.",
  parts: "Invented masses, prices and places: weigh each part, and measure where it is on the body.",
  budget: "Invented limits of a small troupe.",
  programme: "Invented cues of one scene.",
  ...own,
})
