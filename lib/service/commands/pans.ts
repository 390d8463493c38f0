import { z } from 'zod'
import { findComponent, findPan } from '#lib/menu/find.ts'
import type { Pan } from '#lib/menu/station-document.ts'
import {
  type Circumstances,
  type Decision,
  happened,
  refuse,
  whenOpen,
} from '#lib/service/commands/decision.ts'
import { idField } from '#lib/service/commands/fields.ts'
import { openHolds } from '#lib/service/commands/recheck.ts'
import { afterAll } from '#lib/service/commands/with-holds.ts'
import { hasBackup, protectedOf, soiledPans } from '#lib/service/soiling.ts'
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
    if (!place || !pan) return refuse({ code: 'no-such-pan', id: command.pan })
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
  /** It went into the protected back-up pan of the same component; no where left away. */
  backup: z.boolean().optional(),
})

/** A foreign scoop in a pan: builds that no longer fit their guests are held at once, made ones too. */
export const decideSoilPan = (
  state: ServiceState,
  { pan, by, backup }: z.infer<typeof soilPanSchema>,
  { now, checker }: Circumstances,
): Decision =>
  whenOpen(state, (before) => {
    const component = findPan(before.station, pan)?.component
    if (component === undefined) return refuse({ code: 'no-such-pan', id: pan })
    if (!findComponent(before.station, by)) return refuse({ code: 'no-such-component', id: by })
    const change = { before, reason: 'contact', checker } as const
    if (backup === true) {
      if (!hasBackup(before, component)) return refuse({ code: 'no-such-backup', component })
      const set = { type: 'backupSet', component, ready: false, soiledBy: by } as const
      const pans = protectedOf(before, component)
      const soiled = pans.length === 0 ? [set] : pans.map((backup) => ({ ...set, backup }))
      const after = afterAll(before, soiled, now)
      // What was made with it while it stood ready is held, also where it is off sale by now.
      const stood = { ...before, backups: { ...before.backups, [component]: now } }
      return happened(...soiled, ...openHolds({ ...change, before: stood, after }))
    }
    const pans = soiledPans(before, pan, by)
    return pans
      ? happened(
          { type: 'panSoiled', pan, by },
          ...openHolds({ ...change, after: { ...before, pans } }),
        )
      : refuse({ code: 'already-so' })
  })
