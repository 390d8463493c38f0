import { z } from 'zod'
import { componentOf } from '#lib/menu/find.ts'
import {
  type Circumstances,
  type Decision,
  happened,
  refuse,
  whenOpen,
} from '#lib/service/commands/decision.ts'
import { idField } from '#lib/service/commands/fields.ts'
import { incoming, incomingFields } from '#lib/service/commands/incoming.ts'
import type { BackupPan } from '#lib/service/food-state.ts'
import { isKeptBack } from '#lib/service/held-stock.ts'
import { restOf } from '#lib/service/rest-of-pan.ts'
import type { RunningState, ServiceState } from '#lib/service/state.ts'

const { from: _from, ...fields } = incomingFields

export const setBackupSchema = z.strictObject({
  type: z.literal('setBackup'),
  component: idField,
  /** Which back-up pan; the component's protected one where left away. */
  backup: idField.optional(),
  ready: z.boolean(),
  ...fields,
})

type SetBackup = z.infer<typeof setBackupSchema>

const putAway = (
  state: RunningState,
  { component }: SetBackup,
  backup: string,
  pan: BackupPan,
  circumstances: Circumstances,
): Decision => {
  if (pan.amount <= 0)
    return state.backups[component] === undefined
      ? refuse({ code: 'already-so' })
      : happened({ type: 'backupSet', component, ready: false })
  if (isKeptBack(state, 'backup', backup)) return refuse({ code: 'throw-out-first', count: 1 })
  const rest = restOf(state, backup, pan, circumstances.now)
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
export const decideSetBackup = (
  state: ServiceState,
  command: SetBackup,
  circumstances: Circumstances,
): Decision =>
  whenOpen(state, (running) => {
    const { type: _type, component, backup: named, ready, ...told } = command
    const place = running.station.backups.find(
      (one) =>
        one.component === component && (named === undefined ? one.protected : one.id === named),
    )
    const pan = place && running.backupPans[place.id]
    if (!place || !pan) return refuse({ code: 'no-such-backup', component })
    if (!ready) return putAway(running, command, place.id, pan, circumstances)
    if (pan.amount > 0) return refuse({ code: 'already-so' })
    const into = {
      id: place.id,
      component: componentOf(running.station, component),
      guarded: place.protected,
      holds: 0,
      heldBy: null,
      isWhole: true,
    }
    const food = incoming(running, told, into, circumstances.now)
    if ('refusal' in food) return refuse(food.refusal)
    const { amount, batch, reading, bought } = food.found
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
    })
  })
