// Descriptions of a document, put together from those of the members it may name.
import type { AnyField, AnyFields, AnyGroup, Either } from "../../solver/index.js"
import { sectionFields } from "../document/sections.js"
import type { AnyDriveMember } from "../drives/drive.js"
import type { AnyMechanismMember } from "../mechanisms/mechanism.js"
import { powerFields } from "../supply/document.js"
import type { AnyTransmissionMember } from "../transmissions/transmission.js"
import { dutyField, fixedThingsField } from "./motion-sections.js"

const sections = sectionFields as unknown as AnyFields
const worn = ["wearer", "parts", "formed", "straps", "schedule", "heat", "wind", "stance", "venue", "reach", "contact", "budget"]
const wornFields: AnyFields = Object.fromEntries(worn.map((key) => [key, sections[key] as AnyField]))

/** The members that a document may name, by type. */
export interface Members {
  readonly drives: Readonly<Record<string, AnyDriveMember>>
  readonly transmissions: Readonly<Record<string, AnyTransmissionMember>>
  readonly mechanisms: Readonly<Record<string, AnyMechanismMember>>
}

function variant(label: string, members: Readonly<Record<string, AnyGroup>>, common: AnyFields): AnyField {
  const of = Object.fromEntries(
    Object.entries(members).map(([type, member]) => [
      type,
      { label: member.label, fields: { ...common, ...member.fields }, ...(member.either ? { either: member.either } : {}) },
    ]),
  )
  return { kind: "variant", label, of }
}

const name = (label: string): AnyField => ({ kind: "text", label, min: 1, max: 100 })

/** A mechanism is named of the motion that carries. */
const mounted: readonly Either[] = [{ given: "onMechanism", needs: ["on"] }]

/** Descriptions of a document that may name these members. */
export function rigFields({ drives, transmissions, mechanisms }: Members): AnyFields {
  const element = variant("element of a transmission", transmissions, {})
  const chain = (label: string): AnyField => ({ kind: "list", label, of: element, min: 0, max: 12, default: [] })
  const mount: AnyField = {
    kind: "group",
    label: "where it sits and which way it faces",
    default: {},
    fields: {
      forward: { kind: "length", symbol: "f_m", label: "ahead of the hips", min: -2, max: 2, default: 0 },
      left: { kind: "length", symbol: "l_m", label: "left of the middle", min: -3, max: 3, default: 0 },
      height: { kind: "length", symbol: "h_m", label: "above the ground", min: 0, max: 4, default: 1.3 },
      heading: {
        kind: "angle",
        symbol: "psi_m",
        label: "outward axis, from ahead to the left",
        min: "-360 deg",
        max: "360 deg",
        default: "90 deg",
      },
      tilt: { kind: "angle", symbol: "tau_m", label: "lean of its upward axis", min: "-180 deg", max: "180 deg", default: 0 },
    },
  }
  const moved = variant("mechanism", mechanisms, {
    name: name("name of the mechanism"),
    count: { kind: "number", symbol: "n_m", label: "like ones", whole: true, min: 1, max: 100, default: 1 },
    mirrored: { kind: "flag", label: "half of them mirrored", default: false },
    reversed: { kind: "flag", label: "forward travel makes its coordinate smaller", default: false },
    mount,
    transmission: chain("its own elements of the transmission"),
    pinch: fixedThingsField,
  })
  const drive = variant("drive", drives, {
    count: { kind: "number", symbol: "n_d", label: "like drives", whole: true, min: 1, max: 50, default: 1 },
  })
  const motion: AnyFields = {
    name: name("name of the motion"),
    drive,
    transmission: chain("transmission, from the drive on"),
    mechanisms: { kind: "list", label: "mechanisms", of: moved, min: 1, max: 60 },
    bus: { ...name("bus that the drive connects to"), default: null },
    on: { ...name("motion that carries it"), default: null },
    onMechanism: { ...name("mechanism of that motion that it sits on"), default: null },
    duty: dutyField,
    spar: sections.spar as AnyField,
    pin: sections.pin as AnyField,
    wanted: {
      kind: "group",
      label: "what is wanted",
      default: {},
      fields: {
        duration: { kind: "time", symbol: "t_w", label: "time out", min: "1 ms", max: "1 h", default: null },
        backDuration: { kind: "time", symbol: "t_b", label: "time back", min: "1 ms", max: "1 h", default: null },
        swing: { kind: "angle", symbol: "theta_w", label: "swing", min: "0.01 deg", max: "36000 deg", default: null },
        span: { kind: "length", symbol: "s_w", label: "length out", min: "1 mm", max: "100 m", default: null },
        holds: { kind: "flag", label: "must hold without power", default: false },
      },
    },
  }
  return {
    ...wornFields,
    version: { kind: "number", symbol: "n_doc", label: "document version", whole: true, min: 2, max: 2 },
    name: name("name of the rig"),
    note: { kind: "text", label: "note", min: 0, max: 5000, default: "" },
    motions: { kind: "list", label: "motions", of: { kind: "group", label: "motion", fields: motion, either: mounted }, min: 1, max: 40 },
    power: { kind: "group", label: "power", fields: powerFields as unknown as AnyFields, default: null },
    day: {
      kind: "group",
      label: "the day out",
      default: {},
      fields: {
        reserve: { kind: "ratio", symbol: "z_r", label: "charge kept in reserve", min: 0, max: 0.9, default: 0.2 },
        coldest: { kind: "temperature", symbol: "T_min", label: "coldest temperature of the cells", min: -20, max: 60, default: null },
        hours: { kind: "time", symbol: "t_day", label: "time on one charge", min: "1 min", max: "48 h", default: null },
        moves: {
          kind: "number",
          symbol: "n_moves",
          label: "times that each motion goes out and back",
          whole: true,
          min: 0,
          max: 10000,
          default: null,
        },
        flies: { kind: "flag", label: "must go by air", default: false },
      },
    },
    programme: {
      kind: "list",
      label: "what moves when",
      min: 0,
      max: 200,
      default: [],
      of: {
        kind: "group",
        label: "step",
        fields: {
          at: { kind: "time", symbol: "t_p", label: "when it begins", min: 0, max: "24 h" },
          motion: name("motion that moves"),
          to: { kind: "ratio", symbol: "s_p", label: "where to, as a share of its drive's travel", min: 0, max: 1 },
        },
      },
    },
    posture: {
      kind: "group",
      label: "how the wearer leans",
      default: {},
      fields: {
        leanForward: { kind: "angle", symbol: "alpha_f", label: "lean forward", min: "-60 deg", max: "60 deg", default: 0 },
        leanLeft: { kind: "angle", symbol: "alpha_l", label: "lean to the left", min: "-60 deg", max: "60 deg", default: 0 },
      },
    },
  }
}
