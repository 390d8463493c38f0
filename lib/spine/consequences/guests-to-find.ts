/** Guests who have food that is found not to fit them. */

import { isCovered } from '#lib/needs/covered.ts'
import { strictest } from '#lib/needs/judge.ts'
import { knownNeeds } from '#lib/rooms/care/facts/known-needs.ts'
import type { InTheWay } from '#lib/rooms/care/facts/standing.ts'
import { standingOf } from '#lib/rooms/making/facts/build-standing.ts'
import type { Consequence, Happened } from '#lib/service/consequence.ts'
import type { BuildChoice } from '#lib/service/events/build-choice.ts'
import type { BuildHeld } from '#lib/service/events/event.ts'
import type { HandedOverFound } from '#lib/service/events/handed-over-event.ts'
import { everyTicket } from '#lib/service/every-ticket.ts'
import type { HeldStock } from '#lib/service/food-state.ts'
import { keyOf } from '#lib/service/held-stock.ts'
import type { Build, HadBefore, RunningState } from '#lib/service/state.ts'
import { buildName } from '#lib/service/tickets.ts'
import { holdReason } from '#lib/spine/consequences/need-holds.ts'

const isSoiledElse = (
  then: Readonly<Record<string, HeldStock>>,
  now: Readonly<Record<string, HeldStock>>,
): boolean =>
  Object.entries(now).some(
    ([id, { soiledBy }]) => soiledBy.join() !== (then[id]?.soiledBy.join() ?? ''),
  )

/** Food that was handed over is the same whatever is done on the line, but for what is told of it. */
const isNews = ({ before, after }: Happened): boolean =>
  before.station !== after.station ||
  isSoiledElse(before.pans, after.pans) ||
  isSoiledElse(before.backupPans, after.backupPans)

/** What stands in the way of food that a guest has, and didn't before; null where nothing new does. */
const newInTheWay = (
  { before, after, known }: Happened,
  food: Build,
  name: string,
): readonly InTheWay[] | 'not-known' | null => {
  const standing = (at: RunningState) => standingOf(at, food, name, known.checker)
  const now = standing(after)
  if (now === null) return 'not-known'
  const then = standing(before)
  // What is declared worse since is told anew.
  const isNew =
    then === null ? now.length > 0 : now.some((one) => !then.some((was) => isCovered(one, was)))
  return isNew ? now : null
}

/** A choice with all that is known of its guest by now: what was told later was so before. */
const knowing = (choice: BuildChoice, build: Build): BuildChoice => ({
  ...choice,
  needs: strictest([...choice.needs, ...build.choice.needs, ...knownNeeds(build)]),
})

/** What a guest had of a build before it was made again, as a build that was handed over. */
const hadOf = (build: Build, had: HadBefore): Build => {
  const { begunIn: _, madeIn: __, behind: ___, madeAt: ____, ...rest } = build
  const choice = knowing(had.choice ?? build.choice, build)
  return { ...rest, ...had, choice, state: 'handed-over', stop: null }
}

const ofHad = (happened: Happened, number: number, build: Build): readonly HandedOverFound[] => {
  const name = buildName(number, build.letter)
  const found = (build.had ?? []).flatMap((had) => {
    const standing = newInTheWay(happened, hadOf(build, had), name)
    return standing === null ? [] : [{ had, standing: standing === 'not-known' ? null : standing }]
  })
  // What is on its list stays there until that is answered.
  const entry = happened.after.toTell[keyOf('build', name)]
  const listed = entry?.builds ?? []
  const more = found.filter(({ had }) => listed.every(({ at }) => at !== had.since))
  const isOfLabel = found.some(
    ({ standing }) => holdReason(happened, build, standing) !== 'contact',
  )
  // What it holds by its label is worse than what may have touched it.
  const isWorse = entry?.because === 'contact' && isOfLabel
  if (more.length === 0 && !isWorse) return []
  return [
    {
      type: 'handedOverFound',
      what: 'build',
      id: name,
      because: isOfLabel || entry?.because === 'label' ? 'label' : 'contact',
      since: Math.min(...[...listed.map(({ at }) => at), ...more.map(({ had }) => had.since)]),
      builds: [...listed, ...more.map(({ had }) => ({ build: name, at: had.since }))],
    },
  ]
}

/**
 * Builds of the whole service that were handed over and in whose way something stands that didn't
 * before; what was made again since is on a list of its own, whatever became of the build. What was
 * answered isn't asked again.
 */
export const guestsToFind: Consequence = {
  name: 'guests-to-find',
  reads: ['station', 'pans', 'backupPans'],
  follow: (happened) => {
    if (!isNews(happened)) return []
    return everyTicket(happened.after).flatMap(({ number, builds }) =>
      builds.flatMap((build): (BuildHeld | HandedOverFound)[] => {
        const { state, letter, hold, stop } = build
        const had = ofHad(happened, number, build)
        if (state !== 'handed-over' || hold || stop) return [...had]
        const standing = newInTheWay(happened, build, buildName(number, letter))
        if (standing === null) return [...had]
        const reason = holdReason(happened, build, standing === 'not-known' ? null : standing)
        return [{ type: 'buildHeld', ticket: number, letter, reason }, ...had]
      }),
    )
  },
}
