import type { Rule } from "./plant.ts"
import { argument, comparison, constant, sign, term, twin } from "./rules-arithmetic.ts"
import { field, finding, refusal, severity } from "./rules-words.ts"

/** Every rule. */
export const rules: readonly Rule[] = [sign, comparison, term, constant, argument, twin, field, severity, finding, refusal]
