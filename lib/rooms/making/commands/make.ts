import { z } from 'zod'
import type { InTheWay } from '#lib/rooms/care/facts/standing.ts'
import { clockDoubtOf } from '#lib/rooms/food/facts/clock-doubt.ts'
import { offSaleBecause } from '#lib/rooms/food/facts/off-sale.ts'
import {
  behindAsJudged,
  standingIfTaken,
  standingOf,
} from '#lib/rooms/making/facts/build-standing.ts'
import {
  couldBeOffSale,
  isOffSale,
  pastIfStarted,
  untilOf,
} from '#lib/rooms/making/facts/food-of-build.ts'
import { atBuild, pastTickets } from '#lib/rooms/pans/facts/sample-orders.ts'
import { shortBuilds, withdraw } from '#lib/rooms/pans/facts/short.ts'
import { type Decision, happened, refuse, withBuild } from '#lib/service/commands/decision.ts'
import { defineCommand } from '#lib/service/commands/define.ts'
import { buildFields } from '#lib/service/commands/fields.ts'
import { isKeptApart } from '#lib/service/events/build-choice.ts'
import { boundAt, setBackBy } from '#lib/service/held-stock.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import type { Build, Hold, RunningState } from '#lib/service/state.ts'
import { openBuilds } from '#lib/service/tickets.ts'

const wrong = (build: Build, name: string): Decision =>
  refuse({ code: 'wrong-state', build: name, state: build.state })

const isHeld = ({ reason }: Hold, name: string): Decision =>
  refuse({ code: 'build-held', build: name, reason })

/** Made food past its time: only who initials that it was thrown out has it made again. */
export const mustGo = (state: RunningState, build: Build, name: string, now: number): boolean =>
  (build.until?.throwOutAt ?? Number.POSITIVE_INFINITY) <= now + setBackBy(state) ||
  boundAt(state, 'build', name) !== undefined

/** What should have been held is told as what it is: a fault of this program. */
const unfit = (standing: readonly InTheWay[] | null, name: string): Refusal | null =>
  standing?.length === 0 ? null : { code: 'fits-no-more', build: name }

/** Longest name of an assembly screen. */
const MOST_NAME = 20

/** Name of the assembly screen that says it: `left`, `right`, or the device's own. */
const screenField = z.string().min(1).max(MOST_NAME).optional()

const madeElsewhere = (build: Build, name: string): Decision =>
  refuse({ code: 'made-elsewhere', build: name, screen: build.screen ?? null })

/** Where a build is made by one screen, another finishes it only once it took it over. */
const isElsewhere = (build: Build, screen: string | undefined): boolean =>
  screen !== undefined && build.screen !== undefined && screen !== build.screen

export const start = defineCommand({
  type: 'start',
  who: ['assembly'],
  stages: ['open'],
  schema: {
    ...buildFields,
    /** The version of the build that was on the screen. */
    seen: z.int().min(0).optional(),
    /** Whether the handling order was read aloud; no where left away. */
    read: z.boolean().optional(),
    screen: screenField,
    /** It is being made at another screen and goes on at this one; no where left away. */
    takeOver: z.boolean().optional(),
  },
  decide: (state, command, { now, checker }) =>
    withBuild(state, command, ({ build, name }) => {
      const { screen } = command
      const isTaking = build.state === 'making' && screen !== undefined && screen !== build.screen
      if (isTaking && command.takeOver !== true) return madeElsewhere(build, name)
      if (build.state !== 'waiting' && !isTaking) return wrong(build, name)
      if (build.hold) return isHeld(build.hold, name)
      if (command.seen !== undefined && command.seen !== build.version)
        return refuse({ code: 'changed-since', build: name })
      const of = { ticket: command.ticket, letter: command.letter, ...(screen ? { screen } : {}) }
      if (isTaking) {
        if (build.stop) return refuse({ code: 'build-stopped', build: name })
        if (isKeptApart(build.choice) && command.read !== true)
          return refuse({ code: 'handling-not-read', build: name })
        return happened({ type: 'buildStarted', ...of, tookOver: true })
      }
      const component = shortBuilds(state).get(name)
      if (component !== undefined)
        return refuse(
          isOffSale(state, component)
            ? offSaleBecause(component, clockDoubtOf(state, component))
            : { code: 'short', build: name, component },
        )
      const past = pastIfStarted(state, build, now)
      if (past) return refuse({ code: 'past-throw-out-by-then', ...past })
      if (isKeptApart(build.choice) && command.read !== true)
        return refuse({ code: 'handling-not-read', build: name })
      const not = unfit(standingOf(state, build, name, checker), name)
      if (not) return refuse(not)
      const behind = behindAsJudged(state, build.choice, checker)
      return happened({
        type: 'buildStarted',
        ...of,
        ...(behind === undefined ? {} : { behind }),
      })
    }),
  sample: (state) =>
    openBuilds(state).map((queued) => ({
      ...atBuild(queued),
      ...(isKeptApart(queued.build.choice) ? { read: true } : {}),
    })),
  rules: ['S41', 'S42', 'S64', 'S65', 'S102', 'S185', 'S186', 'S187'],
  example: { ticket: 12, letter: 'A', seen: 0, read: true, screen: 'left' },
  tells: ': see below',
})

export const finish = defineCommand({
  type: 'finish',
  who: ['assembly'],
  stages: ['open'],
  schema: { ...buildFields, screen: screenField },
  decide: (state, command, { now, checker }) =>
    withBuild(state, command, ({ build, name }) => {
      if (build.state !== 'making') return wrong(build, name)
      if (isElsewhere(build, command.screen)) return madeElsewhere(build, name)
      if (build.hold) return isHeld(build.hold, name)
      if (build.stop) return refuse({ code: 'build-stopped', build: name })
      const offSale = couldBeOffSale(state, build)
      if (offSale !== null) return refuse(offSaleBecause(offSale, clockDoubtOf(state, offSale)))
      const withdrawal = withdraw(state, build.takes, build.choice, build.behind)
      const not = unfit(standingIfTaken(state, build, name, withdrawal.took, checker), name)
      if (not) return refuse(not)
      const { ticket, letter } = command
      return happened({
        type: 'buildFinished',
        ticket,
        letter,
        ...withdrawal,
        until: untilOf(state, withdrawal, now, build.boundTo),
      })
    }),
  sample: (state) => openBuilds(state).map(atBuild),
  rules: ['S43', 'S44', 'S102', 'S188', 'B17'],
  example: { ticket: 12, letter: 'A', screen: 'left' },
})

export const takeBack = defineCommand({
  type: 'takeBack',
  who: ['assembly', 'hand-over'],
  stages: ['open'],
  schema: {
    ...buildFields,
    /** Whether the food was really made: made food never returns to a pan. */
    made: z.boolean(),
  },
  decide: (state, command, { now }) =>
    withBuild(state, command, ({ build, name }) => {
      if (build.state !== 'made') return wrong(build, name)
      if (mustGo(state, build, name, now)) return refuse({ code: 'past-throw-out', id: name })
      const at = { ticket: command.ticket, letter: command.letter }
      // What was made for all that would be let go with its pan, and bound by nothing.
      const isUndoing = !command.made && build.hold?.reason !== 'off-sale'
      if (isUndoing) return happened({ type: 'finishTakenBack', ...at })
      if (build.hold) return isHeld(build.hold, name)
      return happened({ type: 'buildRemade', ...at, from: 'made' })
    }),
  sample: (state) => openBuilds(state).map((queued) => ({ ...atBuild(queued), made: false })),
  rules: ['S45', 'S46', 'S47', 'B18'],
  example: { ticket: 12, letter: 'A', made: false },
  tells: ': a finish; `made` tells whether the food was made',
})

export const remake = defineCommand({
  type: 'remake',
  who: ['assembly', 'hand-over'],
  stages: ['open'],
  schema: buildFields,
  decide: (state, command, { now }) =>
    withBuild(state, command, ({ build, name }) => {
      if (build.state !== 'made' && build.state !== 'handed-over') return wrong(build, name)
      if (build.hold) return isHeld(build.hold, name)
      if (build.state === 'made' && mustGo(state, build, name, now))
        return refuse({ code: 'past-throw-out', id: name })
      const at = { ticket: command.ticket, letter: command.letter }
      return happened({ type: 'buildRemade', ...at, from: build.state })
    }),
  sample: (state) => [
    ...openBuilds(state).map(atBuild),
    ...pastTickets(state).flatMap(({ number, builds }) =>
      builds.map(({ letter }) => ({ ticket: number, letter })),
    ),
  ],
  rules: ['S48', 'S49', 'S51'],
  example: { ticket: 12, letter: 'A' },
})

export const handOver = defineCommand({
  type: 'handOver',
  who: ['hand-over'],
  stages: ['open'],
  schema: buildFields,
  decide: (state, command, { now, checker }) =>
    withBuild(state, command, ({ build, name }) => {
      if (build.state !== 'made') return wrong(build, name)
      if (build.hold) return isHeld(build.hold, name)
      if (mustGo(state, build, name, now)) return refuse({ code: 'past-throw-out', id: name })
      const not = unfit(standingOf(state, build, name, checker), name)
      if (not) return refuse(not)
      return happened({ type: 'buildHandedOver', ticket: command.ticket, letter: command.letter })
    }),
  sample: (state) => openBuilds(state).map(atBuild),
  rules: ['S50', 'S75', 'S102', 'B18'],
  example: { ticket: 12, letter: 'A' },
})
