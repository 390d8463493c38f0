/** What is known of a build's guest. */

import { strictest } from '#lib/needs/judge.ts'
import type { Build } from '#lib/service/state.ts'
import type { Need } from '#lib/station/codes/codes.ts'

/** Whether a need is among these, at least as strictly. */
export const keeps = (needs: readonly Need[], { code, handling }: Need): boolean =>
  needs.some(
    (one) => one.code === code && (one.handling === handling || one.handling === 'keep-apart'),
  )

/** Needs of what a build goes on as, and those told after it was sent. */
export const knownNeeds = ({ choice, stop, hold }: Build): readonly Need[] =>
  strictest([...(stop?.to?.choice ?? choice).needs, ...(hold?.told?.needs ?? [])])
