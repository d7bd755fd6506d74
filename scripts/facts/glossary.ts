// The words of Alula: one thing, one word. docs/glossary.md is written from this table, and from the fields that bear the words.

/** One word and the thing it stands for. */
export interface Word {
  readonly word: string
  readonly meaning: string
  /** What the trade calls it as well. */
  readonly also?: string
  /** How the word stands in the names of fields, where it is not itself one: `max` for `maxForce`. */
  readonly form?: "start" | "end"
}

/** Words by subject, each as it stands in the names of fields. */
export const glossary: Readonly<Record<string, readonly Word[]>> = {
  "Arms and their drives": [
    { word: "fixedPivot", meaning: "pivot of the actuator on the frame: a point", also: "base pin, anchor" },
    { word: "movingPivot", meaning: "pivot of the actuator on the moving arm, by radius and angle from the hinge", also: "clevis end" },
    { word: "masses", meaning: "what an arm carries, each with its mass and its place" },
    { word: "assembly", meaning: "which of the two ways the same links can be put together", also: "branch, configuration" },
    { word: "raisedBy", meaning: "stroke that raises the arm: extending or retracting" },
    { word: "retractedLength", meaning: "distance between the pins with the rod all the way in", also: "closed length" },
    { word: "extension", meaning: "position of the rod, from retracted" },
    { word: "stroke", meaning: "whole way of the rod", also: "travel" },
    { word: "holdingForce", meaning: "force a drive holds without power", also: "static load rating, back-drive force" },
    { word: "requiredHoldingForce", meaning: "force that has to be held for the arm to stay where it is" },
    { word: "pinFriction", meaning: "friction coefficient at a pin; with its pinDiameter it makes a moment", also: "µ" },
    { word: "screwEfficiency", meaning: "share of the torque that a screw turns into force" },
    { word: "frameTilt", meaning: "how far the frame leans in the plane of motion" },
    { word: "swing", meaning: "angle through which an arm goes", also: "range of motion" },
    { word: "swingSpeed", meaning: "angular speed of an arm" },
    { word: "backEmfConstant", meaning: "voltage a motor makes for its speed", also: "Ke" },
    { word: "torqueConstant", meaning: "torque of a motor for its current", also: "Kt" },
    { word: "forceConstant", meaning: "force of an actuator for its current" },
    { word: "windingResistance", meaning: "resistance of a motor's winding", also: "terminal resistance" },
    { word: "noLoadSpeed", meaning: "speed with nothing to move", also: "free speed" },
    { word: "noLoadCurrent", meaning: "current with nothing to move", also: "free current" },
  ],
  "Supply and wires": [
    { word: "sourceVoltage", meaning: "voltage of what feeds a circuit, without load", also: "open-circuit voltage" },
    { word: "terminalVoltage", meaning: "voltage under load" },
    { word: "sourceResistance", meaning: "resistance inside a source", also: "internal resistance" },
    { word: "interconnectResistance", meaning: "resistance of links and contacts between cells" },
    { word: "cellCapacity", meaning: "rated charge of one cell" },
    { word: "cellResistance", meaning: "direct-current resistance of one cell", also: "DCIR" },
    { word: "cellMaxCurrent", meaning: "current one cell may give for long", also: "continuous discharge rating" },
    { word: "stateOfCharge", meaning: "charge left, as a share of a full one", also: "SoC" },
    { word: "currentLimit", meaning: "current at which a supply stops giving more" },
    { word: "ratedCurrent", meaning: "current a part is made for, by its datasheet" },
    { word: "ampacity", meaning: "current a wire bears for good where it lies", also: "current-carrying capacity" },
    { word: "insulationRating", meaning: "temperature an insulation bears for good" },
    { word: "fuseRating", meaning: "current printed on a fuse" },
    { word: "dropLimit", meaning: "most of the voltage that may be lost on the way" },
    { word: "quiescentCurrent", meaning: "current a converter takes for itself", also: "idle current" },
  ],
  "The wearer and the surroundings": [
    { word: "rigMass", meaning: "mass of all that is worn" },
    { word: "trunkLean", meaning: "how far the wearer leans, from upright" },
    { word: "elevation", meaning: "how far an arm is raised" },
    { word: "stepRate", meaning: "steps in a second, both feet counted", also: "cadence" },
    { word: "ambientTemperature", meaning: "temperature of the surroundings", also: "room temperature" },
    { word: "windSpeed", meaning: "mean wind, as a forecast gives it" },
    { word: "forward", meaning: "ahead of the wearer" },
    { word: "left", meaning: "to the wearer's left" },
    { word: "up", meaning: "away from the ground" },
  ],
  "Parts and materials": [
    { word: "outsideDiameter", meaning: "diameter over the outside of a tube", also: "OD" },
    { word: "wall", meaning: "thickness of a tube's wall" },
    { word: "thickness", meaning: "thickness of a sheet or plate" },
    { word: "material", meaning: "what a part is made of" },
    { word: "price", meaning: "cost of a part, in the currency of its list" },
  ],
  "Judging a result": [
    { word: "utilisation", meaning: "demand over capacity: 1 is all of it", form: "end" },
    { word: "safetyFactor", meaning: "capacity over demand: 1 is none to spare", also: "factor of safety" },
    { word: "margin", meaning: "what is left to a limit, in the unit of the quantity itself", form: "end" },
    { word: "share", meaning: "part of a whole", form: "end" },
    { word: "ratio", meaning: "one quantity over another of a different thing", form: "end" },
    { word: "max", meaning: "largest of all", form: "start" },
    { word: "min", meaning: "smallest of all", form: "start" },
    { word: "peak", meaning: "largest over time or over a stroke", form: "start" },
    { word: "duration", meaning: "how long something takes or lasts", form: "end" },
    { word: "time", meaning: "when something happens" },
    { word: "residual", meaning: "what an equation solved by iteration leaves over" },
    { word: "type", meaning: "which of several kinds an entry is; it is read first" },
  ],
}
