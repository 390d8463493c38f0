/** Builds that may not go on: why, and the way that is nearest. */
import type { Chosen } from '#components/job/chosen.ts'
import { foodName } from '#components/job/food-name.ts'
import { aboutPlace } from '#components/pans/about.ts'
import { type Here, NO_PAN, type Told } from '#components/pans/task-ways.ts'
import { needsOf } from '#lib/rooms/care/facts/held.ts'
import { heldBecause } from '#lib/rooms/pans/facts/held-because.ts'
import type { ToDo } from '#lib/rooms/pans/facts/pans-to-do.ts'
import { whereIs } from '#lib/service/held-stock.ts'
import { SHELF } from '#lib/service/shelf.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findBuild, namedBuild } from '#lib/service/tickets.ts'
import type { Need } from '#lib/station/codes/codes.ts'

/** The place that the person in charge decides on, where builds are held for one. */
const resolveFor = (state: RunningState, builds: readonly string[]): Chosen | null => {
  const places = builds.flatMap((name) => {
    const { ticket, letter } = namedBuild(name)
    return findBuild(state, ticket, letter)?.hold?.pans ?? []
  })
  for (const id of places) {
    if (id === SHELF) return { task: 'read-here', of: 'shelf' }
    const what = whereIs(state, id)
    if (what) return { task: 'resolve', what, id }
  }
  return null
}

export const holdTold = (
  { words, state }: Here,
  { builds, reason }: Extract<ToDo, { kind: 'hold' }>,
): Told => {
  const because = builds.flatMap((name) => heldBecause(state, name) ?? [])
  const empty = because.flatMap(({ unready }) => unready)[0]
  const opens: Chosen | null =
    empty !== undefined
      ? { task: 'fill-backup', id: empty }
      : reason === 'off-sale'
        ? resolveFor(state, builds)
        : null
  const [first] = because
  return {
    title: words.first.holdTitle(builds),
    why: [
      empty === undefined
        ? first
          ? words.sayWhyHeld(first.why)
          : words.first.holdWord(reason)
        : words.first.holdUnready(foodName(state, 'backup', empty)),
      words.first.holdThen(empty === undefined ? reason : 'back-up'),
    ],
    button:
      empty !== undefined
        ? words.first.fillBackup
        : opens
          ? words.whatMayBeDone
          : words.first.toCounter,
    short: words.first.hold(builds, reason),
    hang: words.onLine.hang.decide,
    opens,
    about:
      empty !== undefined
        ? aboutPlace(state, 'backup', empty)
        : opens?.task === 'resolve'
          ? aboutPlace(state, opens.what, opens.id)
          : NO_PAN,
  }
}

/** What the guests of builds keep from, each need once. */
export const needsIn = (state: RunningState, builds: readonly string[]): readonly Need[] => [
  ...new Map(
    builds
      .flatMap((name) => {
        const { ticket, letter } = namedBuild(name)
        const build = findBuild(state, ticket, letter)
        return build ? needsOf(build) : []
      })
      .map((need) => [`${need.code} ${need.handling}`, need] as const),
  ).values(),
]
