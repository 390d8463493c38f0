import { z } from 'zod'
import { findComponent, findItem } from '#lib/menu/find.ts'
import { type Decision, happened, refuse, whenOpen } from '#lib/service/commands/decision.ts'
import { idField } from '#lib/service/commands/fields.ts'
import type { ServiceState } from '#lib/service/state.ts'

const what = z.enum(['component', 'item'])

export const stopSellingSchema = z.strictObject({
  type: z.literal('stopSelling'),
  what,
  id: idField,
})
export const resumeSellingSchema = z.strictObject({
  type: z.literal('resumeSelling'),
  what,
  id: idField,
})

type Command = z.infer<typeof stopSellingSchema> | z.infer<typeof resumeSellingSchema>

export const decideSelling = (state: ServiceState, command: Command): Decision =>
  whenOpen(state, (running) => {
    const { what: kind, id } = command
    const find = kind === 'item' ? findItem : findComponent
    if (!find(running.station, id))
      return refuse({ code: kind === 'item' ? 'no-such-item' : 'no-such-component', id })
    const isStopped = running.notSelling[kind][id] !== undefined
    const stop = command.type === 'stopSelling'
    if (isStopped === stop) return refuse({ code: 'already-so' })
    return happened({ type: stop ? 'sellingStopped' : 'sellingResumed', what: kind, id })
  })
