// What a build sheet tells, as data: page, Markdown and other tools read the same. Numbers are SI.

/** A part to buy, from the document. */
export interface SheetPart {
  readonly name: string
  readonly count: number
  /** Mass of one, kg. */
  readonly mass: number
  /** Price of one; null where the document states none. */
  readonly price: number | null
}

/** Something to buy by what it has to be able to do. */
export interface SheetNeed {
  readonly what: string
  readonly count: number
  /** What it must be, in words with their units. */
  readonly must: string
  readonly for: string
}

/** A piece to cut. */
export interface SheetCut {
  readonly what: string
  readonly count: number
  /** Length of one, m. */
  readonly length: number
  readonly of: string
  /** How its length is measured. */
  readonly measured: string
}

/** A hole, in the plane of its plate: x outward, y upward, from the first hole. */
export interface SheetHole {
  readonly name: string
  readonly x: number
  readonly y: number
  /** Diameter of its pin, m; null where the document states none. */
  readonly pin: number | null
}

/** A plate or arm to drill by a template. */
export interface SheetPlate {
  readonly name: string
  readonly count: number
  /** How many of them are mirror images. */
  readonly mirrored: number
  readonly holes: readonly SheetHole[]
}

/** A part to bend by a template. */
export interface SheetBend {
  readonly name: string
  readonly outsideDiameter: number
  readonly radius: number
  readonly angle: number
  /** What it is bent to, so that it springs back to the angle. */
  readonly jigAngle: number
  readonly jigRadius: number
  readonly springback: number
  readonly heatedLength: number
  /** Length to cut; null where the legs are not given. */
  readonly cutLength: number | null
  readonly material: string
}

/** One wire. */
export interface SheetWire {
  readonly mark: string
  readonly polarity: "+" | "−" | "signal"
  readonly from: string
  readonly to: string
  /** Wire size; leads of the part itself where the document states none. */
  readonly wire: string
  /** Length one way, m; null where the document states none. */
  readonly length: number | null
}

/** A bus with its wires. */
export interface SheetCircuit {
  readonly bus: string
  /** Fuse rating, A; null where the document states none. */
  readonly fuse: number | null
  /** Fuse of a bus before it that its wire hangs on too, with no converter between; null where there is none. */
  readonly fuseBefore: { readonly bus: string; readonly rating: number } | null
  readonly wires: readonly SheetWire[]
}

/** What a meter should show. */
export interface SheetReading {
  readonly where: string
  readonly quantity: "voltage" | "current"
  /** SI; null where the supply gives up there. */
  readonly value: number | null
}

/** One step of the first power-up. */
export interface SheetStep {
  readonly title: string
  readonly act: string
  readonly readings: readonly SheetReading[]
  /** When to switch off. */
  readonly stop: string
}

/** A build sheet. */
export interface SheetContent {
  readonly name: string
  readonly note: string
  /** The answer of its assessment in a sentence, and the safety checks that fall short. */
  readonly summary: string
  readonly hazards: readonly string[]
  readonly cautions: readonly { readonly message: string; readonly source: string }[]
  readonly parts: readonly SheetPart[]
  /** Sum of the prices stated. */
  readonly price: number
  readonly needs: readonly SheetNeed[]
  readonly cuts: readonly SheetCut[]
  readonly plates: readonly SheetPlate[]
  readonly bends: readonly SheetBend[]
  readonly circuits: readonly SheetCircuit[]
  readonly firstPower: readonly SheetStep[]
}
