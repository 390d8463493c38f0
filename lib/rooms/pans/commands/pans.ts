import { z } from 'zod'
import { ownDocument } from '#lib/rooms/care/facts/mixing.ts'
import { backupsHolding, hasBackup, soiledPans } from '#lib/rooms/care/facts/soiling.ts'
import { mostInPan } from '#lib/rooms/pans/facts/capacity.ts'
import { type Decision, happened, refuse } from '#lib/service/commands/decision.ts'
import { defineCommand } from '#lib/service/commands/define.ts'
import { idField } from '#lib/service/commands/fields.ts'
import type { PanState, RunningState } from '#lib/service/state.ts'
import { findComponent, findPan, pansOf } from '#lib/station/find.ts'
import type { Pan } from '#lib/station/station-document.ts'

export const onPan = (
  state: RunningState,
  command: { readonly pan: string; readonly amount: number },
  atLeast: number,
  decide: (pan: PanState, place: Pan) => Decision,
): Decision => {
  const place = findPan(state.station, command.pan)
  const pan = state.pans[command.pan]
  if (!place || !pan) return refuse({ code: 'unknown', what: 'pan', id: command.pan })
  const most = mostInPan(state, place)
  const { amount } = command
  if (!Number.isSafeInteger(amount) || amount < atLeast || amount > most)
    return refuse({ code: 'absurd-amount', pan: command.pan, most })
  return decide(pan, place)
}

/** A foreign scoop in a pan, on the line or behind it. */
export const soilPan = defineCommand({
  type: 'soilPan',
  who: ['counter', 'assembly'],
  stages: ['open'],
  schema: {
    pan: idField,
    /** The component whose scoop went into it. */
    by: idField,
    /** It went into a back-up pan of the same component; no where left away. */
    backup: z.boolean().optional(),
  },
  decide: (state, { pan, by, backup }) => {
    const component = findPan(state.station, pan)?.component
    if (component === undefined) return refuse({ code: 'unknown', what: 'pan', id: pan })
    if (!findComponent(state.station, by))
      return refuse({ code: 'unknown', what: 'component', id: by })
    if (backup !== true)
      return soiledPans(state, pan, by)
        ? happened({ type: 'panSoiled', pan, by })
        : refuse({ code: 'already-so' })
    if (!hasBackup(state, component))
      return refuse({ code: 'unknown', what: 'protected-backup', id: component })
    const set = { type: 'backupSet', component, ready: false, soiledBy: by } as const
    const pans = backupsHolding(state, component)
    if (pans.length === 0) return happened(set)
    const clean = pans.filter((one) => !state.backupPans[one]?.soiledBy.includes(by))
    return clean.length === 0
      ? refuse({ code: 'already-so' })
      : happened(...clean.map((one) => ({ ...set, backup: one })))
  },
  sample: (state) =>
    pansOf(state.station).flatMap((pan) =>
      ownDocument(state).components.map(({ id }) => ({ pan: pan.id, by: id })),
    ),
  rules: ['N19', 'S81', 'S85', 'S101'],
  example: { pan: 'pan-rice', by: 'slaw' },
  tells: ': the scoop of another component was in it; `"backup": true` where in its back-up pan',
})
