import { z } from 'zod'
import { type Decision, happened, refuse } from '#lib/service/commands/decision.ts'
import { defineCommand, type Told } from '#lib/service/commands/define.ts'
import { idField } from '#lib/service/commands/fields.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findComponent, findItem } from '#lib/station/find.ts'

const fields = { what: z.enum(['component', 'item']), id: idField }

const selling = (
  state: RunningState,
  { what, id }: Told<typeof fields>,
  stop: boolean,
): Decision => {
  const find = what === 'item' ? findItem : findComponent
  if (!find(state.station, id)) return refuse({ code: 'unknown', what, id })
  const isStopped = state.notSelling[what][id] !== undefined
  if (isStopped === stop) return refuse({ code: 'already-so' })
  return happened({ type: stop ? 'sellingStopped' : 'sellingResumed', what, id })
}

const everything = ({ station }: RunningState) => [
  ...station.components.map(({ id }) => ({ what: 'component', id }) as const),
  ...station.items.map(({ id }) => ({ what: 'item', id }) as const),
]

export const stopSelling = defineCommand({
  type: 'stopSelling',
  who: [],
  stages: ['open'],
  schema: fields,
  decide: (state, command) => selling(state, command, true),
  sample: everything,
  rules: ['S52', 'S53', 'S54'],
  example: { what: 'component', id: 'slaw' },
  tells: ' (`what`: `component` or `item`)',
})

export const resumeSelling = defineCommand({
  type: 'resumeSelling',
  who: [],
  stages: ['open'],
  schema: fields,
  decide: (state, command) => selling(state, command, false),
  sample: everything,
  rules: ['S54'],
  example: { what: 'component', id: 'slaw' },
})
