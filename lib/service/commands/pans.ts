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
import { amountField, idField } from '#lib/service/commands/fields.ts'
import { openHolds, unmadeHolds } from '#lib/service/commands/recheck.ts'
import { unmixedBy } from '#lib/service/mixing.ts'
import { soiledPans } from '#lib/service/soiling.ts'
import type { PanState, RunningState, ServiceState } from '#lib/service/state.ts'
import { mostInPan } from '#lib/stock/capacity.ts'

export const loadSchema = z.strictObject({
  type: z.literal('load'),
  pan: idField,
  amount: amountField,
  /** It was emptied and washed: asked of a pan that a foreign scoop went into. */
  washed: z.boolean().optional(),
})
export const changePanSchema = z.strictObject({
  type: z.literal('changePan'),
  pan: idField,
  amount: amountField,
  /** Whether the component's protected back-up pan was put in, if one stood ready; yes where left away. */
  backup: z.boolean().optional(),
})
export const correctSchema = z.strictObject({
  type: z.literal('correct'),
  pan: idField,
  amount: amountField,
})

const onPan = (
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

export const decideLoad = (state: ServiceState, command: z.infer<typeof loadSchema>): Decision =>
  onPan(state, command, 1, (pan) => {
    const { amount, washed } = command
    if (pan.amount > 0) return refuse({ code: 'pan-not-empty', pan: command.pan })
    if (pan.soiledBy.length > 0 && washed !== true)
      return refuse({ code: 'pan-soiled', pan: command.pan })
    const loaded = { type: 'panLoaded', pan: command.pan, amount } as const
    return happened(washed === true ? { ...loaded, washed } : loaded)
  })

export const soilPanSchema = z.strictObject({
  type: z.literal('soilPan'),
  pan: idField,
  /** The component whose scoop went into it. */
  by: idField,
  /** It went into the protected back-up pan of the same component; no where left away. */
  backup: z.boolean().optional(),
})

const hasBackup = ({ backups }: RunningState, component: string): boolean =>
  backups[component] !== undefined

const withoutBackup = (state: RunningState, component: string): RunningState => {
  const { [component]: _, ...backups } = state.backups
  return { ...state, backups }
}

/** A foreign scoop in a pan: builds that no longer fit their guests are held at once, made ones too. */
export const decideSoilPan = (
  state: ServiceState,
  { pan, by, backup }: z.infer<typeof soilPanSchema>,
  { checker }: Circumstances,
): Decision =>
  whenOpen(state, (before) => {
    const component = findPan(before.station, pan)?.component
    if (component === undefined) return refuse({ code: 'no-such-pan', id: pan })
    if (!findComponent(before.station, by)) return refuse({ code: 'no-such-component', id: by })
    const change = { before, reason: 'contact', checker } as const
    if (backup === true) {
      if (!hasBackup(before, component)) return refuse({ code: 'no-such-backup', component })
      return happened(
        { type: 'backupSet', component, ready: false },
        ...openHolds({ ...change, after: withoutBackup(before, component) }),
      )
    }
    const pans = soiledPans(before, pan, by)
    return pans
      ? happened(
          { type: 'panSoiled', pan, by },
          ...openHolds({ ...change, after: { ...before, pans } }),
        )
      : refuse({ code: 'already-so' })
  })

export const setBackupSchema = z.strictObject({
  type: z.literal('setBackup'),
  component: idField,
  ready: z.boolean(),
})

/** A protected back-up pan stands ready, or no longer does: then what isn't made yet goes without. */
export const decideSetBackup = (
  state: ServiceState,
  { component, ready }: z.infer<typeof setBackupSchema>,
  { now, checker }: Circumstances,
): Decision =>
  whenOpen(state, (before) => {
    const has = before.station.backups.some((one) => one.component === component && one.protected)
    if (!has) return refuse({ code: 'no-such-backup', component })
    if (hasBackup(before, component) === ready) return refuse({ code: 'already-so' })
    const set = { type: 'backupSet', component, ready } as const
    const after = ready
      ? { ...before, backups: { ...before.backups, [component]: now } }
      : withoutBackup(before, component)
    return happened(set, ...unmadeHolds({ before, after, reason: 'contact', checker }))
  })

/** Another pan for the one on the line; where it was the back-up, that doesn't stand ready any more. */
export const decideChangePan = (
  state: ServiceState,
  command: z.infer<typeof changePanSchema>,
  { checker }: Circumstances,
): Decision =>
  onPan(state, command, 1, (pan, before, { component }) => {
    const { amount, backup } = command
    const changed = { type: 'panChanged', pan: command.pan, takenAway: pan.amount, amount } as const
    if (backup === false || !hasBackup(before, component)) return happened(changed)
    const pans = { ...before.pans, [command.pan]: { ...pan, amount, soiledBy: [] } }
    const after = { ...withoutBackup(before, component), pans, ...unmixedBy(before, command.pan) }
    return happened(
      changed,
      { type: 'backupSet', component, ready: false },
      ...unmadeHolds({ before, after, reason: 'contact', checker }),
    )
  })

export const decideCorrect = (
  state: ServiceState,
  command: z.infer<typeof correctSchema>,
): Decision =>
  onPan(state, command, 0, (pan) =>
    pan.amount === command.amount
      ? refuse({ code: 'already-so' })
      : happened({
          type: 'countCorrected',
          pan: command.pan,
          from: pan.amount,
          to: command.amount,
        }),
  )
