import { z } from 'zod'
import { findComponent, findPan } from '#lib/menu/find.ts'
import {
  type Circumstances,
  type Decision,
  happened,
  refuse,
  whenOpen,
} from '#lib/service/commands/decision.ts'
import { amountField, idField } from '#lib/service/commands/fields.ts'
import { openHolds } from '#lib/service/commands/recheck.ts'
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
  decide: (pan: PanState, state: RunningState) => Decision,
): Decision =>
  whenOpen(state, (running) => {
    const place = findPan(running.station, command.pan)
    const pan = running.pans[command.pan]
    if (!place || !pan) return refuse({ code: 'no-such-pan', id: command.pan })
    const most = mostInPan(running, place)
    const { amount } = command
    if (!Number.isSafeInteger(amount) || amount < atLeast || amount > most)
      return refuse({ code: 'absurd-amount', pan: command.pan, most })
    return decide(pan, running)
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
})

/** A foreign scoop in a pan: builds that no longer fit their guests are held at once. */
export const decideSoilPan = (
  state: ServiceState,
  { pan, by }: z.infer<typeof soilPanSchema>,
  { checker }: Circumstances,
): Decision =>
  whenOpen(state, (before) => {
    const place = findPan(before.station, pan)
    const held = before.pans[pan]
    if (!place || !held) return refuse({ code: 'no-such-pan', id: pan })
    if (!findComponent(before.station, by)) return refuse({ code: 'no-such-component', id: by })
    if (place.component === by || held.soiledBy.includes(by)) return refuse({ code: 'already-so' })
    const soiled = { ...held, soiledBy: [...held.soiledBy, by] }
    const after = { ...before, pans: { ...before.pans, [pan]: soiled } }
    return happened(
      { type: 'panSoiled', pan, by },
      ...openHolds({ before, after, reason: 'contact', checker }),
    )
  })

export const setBackupSchema = z.strictObject({
  type: z.literal('setBackup'),
  component: idField,
  ready: z.boolean(),
})

/** A protected back-up pan stands ready, or no longer does. */
export const decideSetBackup = (
  state: ServiceState,
  { component, ready }: z.infer<typeof setBackupSchema>,
  { now, checker }: Circumstances,
): Decision =>
  whenOpen(state, (before) => {
    const has = before.station.backups.some((one) => one.component === component && one.protected)
    if (!has) return refuse({ code: 'no-such-backup', component })
    if ((before.backups[component] !== undefined) === ready) return refuse({ code: 'already-so' })
    const { [component]: _, ...others } = before.backups
    const after = { ...before, backups: ready ? { ...others, [component]: now } : others }
    return happened(
      { type: 'backupSet', component, ready },
      ...openHolds({ before, after, reason: 'contact', checker }),
    )
  })

export const decideChangePan = (
  state: ServiceState,
  command: z.infer<typeof changePanSchema>,
): Decision =>
  onPan(state, command, 1, (pan) =>
    happened({
      type: 'panChanged',
      pan: command.pan,
      takenAway: pan.amount,
      amount: command.amount,
    }),
  )

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
