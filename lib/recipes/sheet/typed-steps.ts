/** The method of a card: short sentences in their order, as they are typed, one a line. */

export const MOST_STEPS = 30
/** Letters of one: what a hand reads at a glance. Common practice, no source. */
export const MOST_STEP = 160

/** Lines that say something, without the number or the dash that somebody typed before them. */
export const typedSteps = (typed: string): readonly string[] =>
  typed
    .split('\n')
    .map((line) => line.replace(/^\s*(\d{1,2}[.)]|[-•])\s+/, '').trim())
    .filter((line) => line !== '')

export type StepsProblem =
  | { readonly code: 'too-many'; readonly most: number }
  /** Which, from 1. */
  | { readonly code: 'too-long'; readonly nth: number; readonly most: number }

export const stepsProblem = (steps: readonly string[]): StepsProblem | null => {
  if (steps.length > MOST_STEPS) return { code: 'too-many', most: MOST_STEPS }
  const long = steps.findIndex((one) => one.length > MOST_STEP)
  return long < 0 ? null : { code: 'too-long', nth: long + 1, most: MOST_STEP }
}
