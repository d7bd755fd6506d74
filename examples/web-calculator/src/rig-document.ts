// Reads a creature's document; one of the first edition is brought to the second.
import { rigWith } from "alula/rig"

const kit = rigWith()
export const readRigDocument = (text: string): object => kit.read(text)
