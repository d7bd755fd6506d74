import { type Caution, caution } from "../../solver/index.js"
import { LEAD_STORAGE, LITHIUM_SAFETY, LITHIUM_STORAGE, NICKEL_SAFETY, STANDING_LOSSES } from "../sources.js"
import { leadTopping } from "./data.js"
import { timeToLose } from "./kernel.js"
import type { PackStorage, PackStorageCaution, Si } from "./types.js"

/** What happens to cells that stood until they were empty. */
function emptied(si: Si, emptyTime: number): Caution<PackStorageCaution> {
  const values = { emptyTime }
  switch (si.cells) {
    case "lithium":
      return caution(
        "runs-empty",
        "warning",
        "It may be empty after {emptyTime time}. Lithium cells that stood below their minimum voltage can short inside and burn when charged: measure every group first, and take cells under it to a collection point. Put the pack away fuller, disconnected, or charge it between.",
        LITHIUM_SAFETY,
        values,
      )
    case "lead-sealed":
    case "lead-flooded":
      return caution(
        "runs-empty",
        "warning",
        "It may be empty after {emptyTime time}, and a lead battery that stands empty sulphates, freezes in the cold and may never take a charge again: charge it long before.",
        LEAD_STORAGE,
        values,
      )
    default:
      return caution(
        "runs-empty",
        "warning",
        "It may be empty after {emptyTime time}: what still draws then drives the weakest cell backwards, which leaks or bursts. Take the cells out, or charge them between.",
        NICKEL_SAFETY,
        values,
      )
  }
}

export function cautions(si: Si, out: PackStorage): Caution<PackStorageCaution>[] {
  const lead = si.cells === "lead-sealed" || si.cells === "lead-flooded"
  const found: Caution<PackStorageCaution>[] = [
    caution(
      "faulty-cell",
      "note",
      "Age, use and wet contacts raise these figures. A pack that loses far more than the higher one has a faulty cell: do not charge it, and do not wear it.",
      STANDING_LOSSES,
    ),
  ]
  if (si.cells === "lithium")
    found.push(
      caution(
        "battery-fire",
        "warning",
        "Lithium packs can catch fire as they stand: keep them disconnected, terminals covered, cool and dry, on something that does not burn, away from the way out and from where people sleep, and never store a swollen, dented or wet one indoors.",
        LITHIUM_SAFETY,
      ),
    )
  if (out.stateOfCharge.low <= 0) found.push(emptied(si, timeToLose(si, si.startStateOfCharge, "high")))
  if (si.cells !== "alkaline" && si.startStateOfCharge <= si.minStateOfCharge)
    found.push(
      caution(
        "top-up",
        "caution",
        "It is put away with {given.startStateOfCharge ratio %}, no more than the {given.minStateOfCharge ratio %} at which it has to be charged: charge it before.",
        lead ? LEAD_STORAGE : STANDING_LOSSES,
        { "given.startStateOfCharge": si.startStateOfCharge, "given.minStateOfCharge": si.minStateOfCharge },
      ),
    )
  else if (si.cells !== "alkaline" && si.duration > out.topUpInterval)
    found.push(
      lead
        ? caution(
            "top-up",
            "caution",
            "Charge it again every {topUpInterval time}, or sooner where it rests at {cellVoltage voltage} a cell: a lead battery that stands partly empty sulphates for good.",
            LEAD_STORAGE,
            { topUpInterval: out.topUpInterval, cellVoltage: leadTopping.cellVoltage },
          )
        : caution(
            "top-up",
            "caution",
            "After {topUpInterval time} it may be down to {given.minStateOfCharge ratio %}: charge it by then.",
            STANDING_LOSSES,
            { topUpInterval: out.topUpInterval, "given.minStateOfCharge": si.minStateOfCharge },
          ),
    )
  if (out.capacityShare !== null && out.capacityShare < 0.95)
    found.push(
      caution(
        "ages-in-storage",
        "caution",
        "Standing so leaves {capacityShare ratio %} of the capacity, for good. Put lithium away about 40 % full and cool; iron phosphate ages less.",
        LITHIUM_STORAGE,
        { capacityShare: out.capacityShare },
      ),
    )
  return found
}
