import { z } from 'zod'
import { findComponent, findPan } from '#lib/menu/find.ts'
import type { Pan } from '#lib/menu/station-document.ts'
import { type Decision, happened, refuse, whenOpen } from '#lib/service/commands/decision.ts'
import { idField } from '#lib/service/commands/fields.ts'
import { noPlace } from '#lib/service/place.ts'
import { backupsHolding, hasBackup, soiledPans } from '#lib/service/soiling.ts'
import type { PanState, RunningState, ServiceState } from '#lib/service/state.ts'
import { mostInPan } from '#lib/stock/capacity.ts'

export const onPan = (
  state: ServiceState,
  command: { readonly pan: string; readonly amount: number },
  atLeast: number,
  decide: (pan: PanState, state: RunningState, place: Pan) => Decision,
): Decision =>
  whenOpen(state, (running) => {
    const place = findPan(running.station, command.pan)
    const pan = running.pans[command.pan]
    if (!place || !pan) return refuse(noPlace({ what: 'pan', id: command.pan }))
    const most = mostInPan(running, place)
    const { amount } = command
    if (!Number.isSafeInteger(amount) || amount < atLeast || amount > most)
      return refuse({ code: 'absurd-amount', pan: command.pan, most })
    return decide(pan, running, place)
  })

export const soilPanSchema = z.strictObject({
  type: z.literal('soilPan'),
  pan: idField,
  /** The component whose scoop went into it. */
  by: idField,
  /** It went into a back-up pan of the same component; no where left away. */
  backup: z.boolean().optional(),
})

/** A foreign scoop in a pan, on the line or behind it. */
export const decideSoilPan = (
  state: ServiceState,
  { pan, by, backup }: z.infer<typeof soilPanSchema>,
): Decision =>
  whenOpen(state, (running) => {
    const component = findPan(running.station, pan)?.component
    if (component === undefined) return refuse(noPlace({ what: 'pan', id: pan }))
    if (!findComponent(running.station, by)) return refuse({ code: 'no-such-component', id: by })
    if (backup !== true)
      return soiledPans(running, pan, by)
        ? happened({ type: 'panSoiled', pan, by })
        : refuse({ code: 'already-so' })
    if (!hasBackup(running, component)) return refuse({ code: 'no-such-backup', component })
    const set = { type: 'backupSet', component, ready: false, soiledBy: by } as const
    const pans = backupsHolding(running, component)
    if (pans.length === 0) return happened(set)
    const clean = pans.filter((one) => !running.backupPans[one]?.soiledBy.includes(by))
    return clean.length === 0
      ? refuse({ code: 'already-so' })
      : happened(...clean.map((one) => ({ ...set, backup: one })))
  })
