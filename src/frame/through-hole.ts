import type { SiOf } from "../solver/index.js"
import { pipes } from "./data-pipes.js"
import { type Section, type ShapeInput, shapeSection } from "./section.js"

/** A member with a cross hole, SI. */
export interface HoledMember {
  /** What of the member the pin bears on: both walls, or the bar through. */
  readonly thickness: number
  /** Width of the member where the hole goes in. */
  readonly width: number
  /** Depth along the bending. */
  readonly depth: number
  /** Width across it. */
  readonly across: number
  readonly fibre: number
  readonly netArea: number
  readonly netSecondMoment: number
  readonly ring: Section["tube"]
}

/**
 * A tube or bar with a hole of the given diameter right through it: two pieces of wall d × w are taken out, on the outermost
 * fibre or on the neutral axis; from a bar one strip.
 */
export function throughHole(shape: SiOf<ShapeInput>, diameter: number, place: "outer-fibre" | "neutral-axis"): HoledMember {
  const section = shapeSection(shape)
  const [area, fibre] = [section.area as number, section.fibre as number]
  const outside = shape.pipe === null ? shape.outsideDiameter : pipes[shape.pipe].outsideDiameter
  const wall = shape.pipe === null ? shape.wall : pipes[shape.pipe].wall
  const depth = outside ?? (shape.height as number)
  const across = outside ?? (shape.width as number)
  // a hole through the outer fibres runs along the depth, one on the neutral axis across it
  const [run, width] = place === "outer-fibre" ? [depth, across] : [across, depth]
  const thickness = wall === null ? run : 2 * wall
  const lost =
    place === "neutral-axis"
      ? (thickness * diameter ** 3) / 12
      : wall === null
        ? (diameter * depth ** 3) / 12
        : 2 * (diameter * wall * ((depth - wall) / 2) ** 2 + (diameter * wall ** 3) / 12)
  return {
    thickness,
    width,
    depth,
    across,
    fibre,
    netArea: area - diameter * thickness,
    netSecondMoment: section.secondMoment - lost,
    ring: section.tube,
  }
}
