import { z } from 'zod'
import { isKeptApart } from '#lib/service/build-choice.ts'
import { behindAsJudged, standingIfTaken, standingOf } from '#lib/service/build-standing.ts'
import { clockDoubtOf } from '#lib/service/clock-doubt.ts'
import {
  type Circumstances,
  type Decision,
  happened,
  refuse,
  withBuild,
} from '#lib/service/commands/decision.ts'
import { buildFields } from '#lib/service/commands/fields.ts'
import { couldBeOffSale, isOffSale, pastIfStarted, untilOf } from '#lib/service/food-of-build.ts'
import { boundAt, setBackBy } from '#lib/service/held-stock.ts'
import { offSaleBecause } from '#lib/service/off-sale.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import type { InTheWay } from '#lib/service/standing.ts'
import type { Build, Hold, RunningState, ServiceState } from '#lib/service/state.ts'
import { shortBuilds, withdraw } from '#lib/stock/short.ts'

export const startSchema = z.strictObject({
  type: z.literal('start'),
  ...buildFields,
  /** The version of the build that was on the screen. */
  seen: z.int().min(0).optional(),
  /** Whether the handling order was read aloud; no where left away. */
  read: z.boolean().optional(),
})
export const finishSchema = z.strictObject({ type: z.literal('finish'), ...buildFields })
export const takeBackSchema = z.strictObject({
  type: z.literal('takeBack'),
  ...buildFields,
  /** Whether the food was really made: made food never returns to a pan. */
  made: z.boolean(),
})
export const remakeSchema = z.strictObject({ type: z.literal('remake'), ...buildFields })
export const handOverSchema = z.strictObject({ type: z.literal('handOver'), ...buildFields })

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

export const decideStart = (
  state: ServiceState,
  command: z.infer<typeof startSchema>,
  { now, checker }: Circumstances,
): Decision =>
  withBuild(state, command, ({ state: running, build, name }) => {
    if (build.state !== 'waiting') return wrong(build, name)
    if (build.hold) return isHeld(build.hold, name)
    if (command.seen !== undefined && command.seen !== build.version)
      return refuse({ code: 'changed-since', build: name })
    const component = shortBuilds(running).get(name)
    if (component !== undefined)
      return refuse(
        isOffSale(running, component)
          ? offSaleBecause(component, clockDoubtOf(running, component))
          : { code: 'short', build: name, component },
      )
    const past = pastIfStarted(running, build, now)
    if (past) return refuse({ code: 'past-throw-out-by-then', ...past })
    if (isKeptApart(build.choice) && command.read !== true)
      return refuse({ code: 'handling-not-read', build: name })
    const not = unfit(standingOf(running, build, name, checker), name)
    if (not) return refuse(not)
    const behind = behindAsJudged(running, build.choice, checker)
    return happened({
      type: 'buildStarted',
      ticket: command.ticket,
      letter: command.letter,
      ...(behind === undefined ? {} : { behind }),
    })
  })

export const decideFinish = (
  state: ServiceState,
  command: z.infer<typeof finishSchema>,
  { now, checker }: Circumstances,
): Decision =>
  withBuild(state, command, ({ state: running, build, name }) => {
    if (build.state !== 'making') return wrong(build, name)
    if (build.hold) return isHeld(build.hold, name)
    if (build.stop) return refuse({ code: 'build-stopped', build: name })
    const offSale = couldBeOffSale(running, build)
    if (offSale !== null) return refuse(offSaleBecause(offSale, clockDoubtOf(running, offSale)))
    const withdrawal = withdraw(running, build.takes, build.choice, build.behind)
    const not = unfit(standingIfTaken(running, build, name, withdrawal.took, checker), name)
    if (not) return refuse(not)
    const { ticket, letter } = command
    return happened({
      type: 'buildFinished',
      ticket,
      letter,
      ...withdrawal,
      until: untilOf(running, withdrawal, now, build.boundTo),
    })
  })

export const decideTakeBack = (
  state: ServiceState,
  command: z.infer<typeof takeBackSchema>,
  circumstances: Circumstances,
): Decision =>
  withBuild(state, command, ({ state: running, build, name }) => {
    if (build.state !== 'made') return wrong(build, name)
    if (mustGo(running, build, name, circumstances.now))
      return refuse({ code: 'past-throw-out', id: name })
    const at = { ticket: command.ticket, letter: command.letter }
    // What was made for all that would be let go with its pan, and bound by nothing.
    const isUndoing = !command.made && build.hold?.reason !== 'off-sale'
    if (isUndoing) return happened({ type: 'finishTakenBack', ...at })
    if (build.hold) return isHeld(build.hold, name)
    return happened({ type: 'buildRemade', ...at, from: 'made' })
  })

export const decideRemake = (
  state: ServiceState,
  command: z.infer<typeof remakeSchema>,
  circumstances: Circumstances,
): Decision =>
  withBuild(state, command, ({ state: running, build, name }) => {
    if (build.state !== 'made' && build.state !== 'handed-over') return wrong(build, name)
    if (build.hold) return isHeld(build.hold, name)
    if (build.state === 'made' && mustGo(running, build, name, circumstances.now))
      return refuse({ code: 'past-throw-out', id: name })
    const at = { ticket: command.ticket, letter: command.letter }
    return happened({ type: 'buildRemade', ...at, from: build.state })
  })

export const decideHandOver = (
  state: ServiceState,
  command: z.infer<typeof handOverSchema>,
  { now, checker }: Circumstances,
): Decision =>
  withBuild(state, command, ({ state: running, build, name }) => {
    if (build.state !== 'made') return wrong(build, name)
    if (build.hold) return isHeld(build.hold, name)
    if (mustGo(running, build, name, now)) return refuse({ code: 'past-throw-out', id: name })
    const not = unfit(standingOf(running, build, name, checker), name)
    if (not) return refuse(not)
    return happened({ type: 'buildHandedOver', ticket: command.ticket, letter: command.letter })
  })
