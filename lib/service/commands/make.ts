import { z } from 'zod'
import { isKeptApart } from '#lib/service/build-choice.ts'
import { type Decision, happened, refuse, withBuild } from '#lib/service/commands/decision.ts'
import { buildFields } from '#lib/service/commands/fields.ts'
import type { Build, ServiceState } from '#lib/service/state.ts'
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

export const decideStart = (state: ServiceState, command: z.infer<typeof startSchema>): Decision =>
  withBuild(state, command, ({ state: running, build, name }) => {
    if (build.state !== 'waiting') return wrong(build, name)
    if (command.seen !== undefined && command.seen !== build.version)
      return refuse({ code: 'changed-since', build: name })
    const component = shortBuilds(running).get(name)
    if (component !== undefined) return refuse({ code: 'short', build: name, component })
    if (isKeptApart(build.choice) && command.read !== true)
      return refuse({ code: 'handling-not-read', build: name })
    return happened({ type: 'buildStarted', ticket: command.ticket, letter: command.letter })
  })

export const decideFinish = (
  state: ServiceState,
  command: z.infer<typeof finishSchema>,
): Decision =>
  withBuild(state, command, ({ state: running, build, name }) => {
    if (build.state !== 'making') return wrong(build, name)
    if (build.stop) return refuse({ code: 'build-stopped', build: name })
    return happened({
      type: 'buildFinished',
      ticket: command.ticket,
      letter: command.letter,
      ...withdraw(running, build.takes),
    })
  })

export const decideTakeBack = (
  state: ServiceState,
  command: z.infer<typeof takeBackSchema>,
): Decision =>
  withBuild(state, command, ({ build, name }) => {
    if (build.state !== 'made') return wrong(build, name)
    const at = { ticket: command.ticket, letter: command.letter }
    return command.made
      ? happened({ type: 'buildRemade', ...at, from: 'made' })
      : happened({ type: 'finishTakenBack', ...at })
  })

export const decideRemake = (
  state: ServiceState,
  command: z.infer<typeof remakeSchema>,
): Decision =>
  withBuild(state, command, ({ build, name }) =>
    build.state === 'made' || build.state === 'handed-over'
      ? happened({
          type: 'buildRemade',
          ticket: command.ticket,
          letter: command.letter,
          from: build.state,
        })
      : wrong(build, name),
  )

export const decideHandOver = (
  state: ServiceState,
  command: z.infer<typeof handOverSchema>,
): Decision =>
  withBuild(state, command, ({ build, name }) =>
    build.state === 'made'
      ? happened({ type: 'buildHandedOver', ticket: command.ticket, letter: command.letter })
      : wrong(build, name),
  )
