import { z } from 'zod'
import { foodFor } from '#lib/rooms/food/facts/invented-readings.ts'
import { broughtWithLoad, carriedAlong } from '#lib/rooms/food/facts/probe-trail.ts'
import { restOf } from '#lib/rooms/food/facts/rest-of-pan.ts'
import { incoming, incomingFields } from '#lib/rooms/pans/commands/incoming.ts'
import { notIn } from '#lib/rooms/pans/commands/read-out.ts'
import { type Decision, happened, refuse } from '#lib/service/commands/decision.ts'
import { defineCommand } from '#lib/service/commands/define.ts'
import { HOT_READING } from '#lib/service/commands/example-parts.ts'
import { idField } from '#lib/service/commands/fields.ts'
import type { BackupPan } from '#lib/service/food-state.ts'
import { isKeptBack } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'
import { componentOf } from '#lib/station/find.ts'

const { from: _from, ...fields } = incomingFields

const putAway = (
  state: RunningState,
  component: string,
  backup: string,
  pan: BackupPan,
  now: number,
): Decision => {
  if (pan.amount <= 0)
    return state.backups[component] === undefined
      ? refuse({ code: 'already-so' })
      : happened({ type: 'backupSet', component, ready: false })
  if (isKeptBack(state, 'backup', backup)) return refuse({ code: 'throw-out-first', count: 1 })
  const rest = restOf(state, backup, pan, now)
  const away = {
    type: 'backupSet',
    component,
    ready: false,
    backup,
    takenAway: pan.amount,
    ...(rest ? { rest } : {}),
  } as const
  return happened(away)
}

/**
 * A back-up pan stands ready with what is put into it, under the rules of loading; or it is put away:
 * then what isn't made yet goes without.
 */
export const setBackup = defineCommand({
  type: 'setBackup',
  who: [],
  stages: ['open'],
  schema: {
    component: idField,
    /** Which back-up pan; the component's protected one where left away. */
    backup: idField.optional(),
    ready: z.boolean(),
    ...fields,
  },
  decide: (state, { component, backup: named, ready, ...told }, { now }) => {
    const place = state.station.backups.find(
      (one) =>
        one.component === component && (named === undefined ? one.protected : one.id === named),
    )
    const pan = place && state.backupPans[place.id]
    if (!place || !pan) return refuse({ code: 'unknown', what: 'protected-backup', id: component })
    if (!ready) return putAway(state, component, place.id, pan, now)
    if (pan.amount > 0) return refuse({ code: 'already-so' })
    const into = {
      id: place.id,
      component: componentOf(state.station, component),
      guarded: place.protected,
      holds: 0,
      heldBy: null,
      isWhole: true,
    }
    const food = incoming(state, told, into, now)
    if ('refusal' in food) return notIn(food)
    const { amount, batch, reading, bought } = food.found
    if (place.protected && batch !== null && state.batches[batch]?.stoodOpen === true)
      return refuse({ code: 'stood-open', component })
    // On time alone nothing is read as it is put in: what goes along is an older reading.
    const used = food.found.food.heldBy === 'time' ? null : reading
    return happened({
      type: 'backupSet',
      component,
      ready: true,
      backup: place.id,
      amount,
      batch,
      reading,
      food: food.found.food,
      ...(bought ? { bought } : {}),
      ...carriedAlong(state, place.id, batch),
      ...broughtWithLoad(state, place.id, used),
    })
  },
  sample: (state) =>
    state.station.backups.flatMap(({ id: backup, component }) => {
      const portion = state.portions[component]?.amount ?? 0
      return [
        { component, backup, ready: true, ...foodFor(state, backup, 6 * portion) },
        { component, backup, ready: false },
      ]
    }),
  rules: ['B8', 'S82', 'B33'],
  example: {
    component: 'rice',
    ready: true,
    amount: 2_400_000,
    batch: 'b1',
    reading: HOT_READING,
    initials: 'KT',
  },
  tells:
    ': its protected back-up pan, or the one of id `backup`, stands ready with this; `"ready": false` puts it away',
})
