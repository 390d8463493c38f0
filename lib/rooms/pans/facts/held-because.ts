/** Why a build may not go on, with the back-up pans that would help it. */

import { judgeComponent } from '#lib/needs/judge.ts'
import { needsOf, type WhyHeld, whyHeld } from '#lib/rooms/care/facts/held.ts'
import { kitchenOf } from '#lib/rooms/care/facts/kitchen-of.ts'
import { backupsOf } from '#lib/rooms/pans/facts/behind.ts'
import { takenComponents } from '#lib/service/events/build-choice.ts'
import type { Build, RunningState } from '#lib/service/state.ts'
import { findBuild, namedBuild } from '#lib/service/tickets.ts'

export interface HeldBecause {
  readonly why: WhyHeld
  /** Ids of protected back-up pans that aren't ready, of what its guest can't have off the line. */
  readonly unready: readonly string[]
}

const unreadyFor = (state: RunningState, build: Build): readonly string[] => {
  try {
    const kitchen = kitchenOf(state)
    const touched = takenComponents(build.choice).filter(
      (id) =>
        backupsOf(state, id).length === 0 &&
        judgeComponent(kitchen, id, needsOf(build)).findings.some(
          ({ why }) => why !== 'not-listed',
        ),
    )
    return state.station.backups
      .filter((one) => one.protected && touched.includes(one.component))
      .map(({ id }) => id)
  } catch {
    // Needs that can't be checked are told where they are; no back-up pan clears them.
    return []
  }
}

/** Of a build by its name; null where it isn't held. */
export const heldBecause = (state: RunningState, name: string): HeldBecause | null => {
  const { ticket, letter } = namedBuild(name)
  const build = findBuild(state, ticket, letter)
  if (!build?.hold) return null
  return {
    why: whyHeld(state, build, build.hold),
    unready: build.hold.reason === 'contact' ? unreadyFor(state, build) : [],
  }
}
