import { z } from 'zod'
import { isKeptApart } from '#lib/service/build-choice.ts'
import { clockDoubtOf } from '#lib/service/clock-doubt.ts'
import { isStale, standsInTheWay } from '#lib/service/commands/check-needs.ts'
import {
  type Circumstances,
  type Decision,
  happened,
  refuse,
  withBuild,
} from '#lib/service/commands/decision.ts'
import { buildFields } from '#lib/service/commands/fields.ts'
import { withHolds } from '#lib/service/commands/with-holds.ts'
import type { BuildRemade, HoldReason } from '#lib/service/event.ts'
import {
  couldBeOffSale,
  isOffSale,
  offSaleBecause,
  pastIfStarted,
  untilOf,
} from '#lib/service/food-of-build.ts'
import { setBackBy, throwOutKey } from '#lib/service/held-stock.ts'
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

const whyHeld = (state: RunningState, build: Build, known: Circumstances): HoldReason => {
  if (build.told) return 'need'
  return isStale(state, known) || state.labelChanges.length > 0 ? 'label' : 'contact'
}

/** Made food past its time: only who initials that it was thrown out has it made again. */
const mustGo = (state: RunningState, build: Build, name: string, now: number): boolean =>
  (build.until?.throwOutAt ?? Number.POSITIVE_INFINITY) <= now + setBackBy(state) ||
  state.toThrowOut[throwOutKey('build', name)] !== undefined

/** Made again, it waits; and it is held where it wouldn't be accepted as things are now. */
export const madeAgain = (
  state: RunningState,
  build: Build,
  event: BuildRemade,
  name: string,
  circumstances: Circumstances,
): Decision => {
  const { choice } = build
  if (choice.needs.length === 0 && choice.asked !== 'not-sure') return happened(event)
  const fits =
    choice.asked !== 'not-sure' &&
    !isStale(state, circumstances) &&
    standsInTheWay(state, choice, circumstances.checker, name)?.size === 0
  if (fits) return happened(event)
  const { ticket, letter } = event
  const reason = whyHeld(state, build, circumstances)
  return happened(event, { type: 'buildHeld', ticket, letter, reason })
}

export const decideStart = (
  state: ServiceState,
  command: z.infer<typeof startSchema>,
  { now }: Circumstances,
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
    return happened({ type: 'buildStarted', ticket: command.ticket, letter: command.letter })
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
    const withdrawal = withdraw(running, build.takes, build.choice)
    const { ticket, letter } = command
    const finished = {
      type: 'buildFinished',
      ticket,
      letter,
      ...withdrawal,
      until: untilOf(running, withdrawal, now, build.boundTo),
    } as const
    return happened(...withHolds(running, [finished], { now, checker }))
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
    const event = { type: 'buildRemade', ...at, from: 'made' } as const
    return madeAgain(running, build, event, name, circumstances)
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
    const event = { type: 'buildRemade', ...at, from: build.state } as const
    return madeAgain(running, build, event, name, circumstances)
  })

export const decideHandOver = (
  state: ServiceState,
  command: z.infer<typeof handOverSchema>,
  { now }: Circumstances,
): Decision =>
  withBuild(state, command, ({ state: running, build, name }) => {
    if (build.state !== 'made') return wrong(build, name)
    if (build.hold) return isHeld(build.hold, name)
    if (mustGo(running, build, name, now)) return refuse({ code: 'past-throw-out', id: name })
    return happened({ type: 'buildHandedOver', ticket: command.ticket, letter: command.letter })
  })
