import type { Rule } from "./plant.js"
import { argument, comparison, constant, sign, term, twin } from "./rules-arithmetic.js"
import { chosen, field, finding, refusal, severity } from "./rules-words.js"

/** Every rule. */
export const rules: readonly Rule[] = [sign, comparison, term, constant, argument, twin, field, severity, finding, chosen, refusal]
