/** Every pan of a station changed for a full one, out of batches that were cooked for it. */

import { batchCommands, loadFields } from '#lib/spine/opening-commands.ts'
import type { Command } from '#lib/spine/registry.ts'
import { componentOf, pansOf } from '#lib/station/find.ts'
import { portionOf } from '#lib/station/portion.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** A pan that is loaded or changed with so much, out of a batch that was cooked for it. */
export const cookedFor = (
  station: StationDocument,
  type: 'load' | 'changePan',
  pan: { readonly id: string; readonly component: string },
  amount: number,
  { round, now }: { readonly round: string; readonly now: number },
): readonly Command[] => {
  const component = componentOf(station, pan.component)
  const batch = `r-${round}-${pan.id}`.slice(0, 40)
  return [
    ...batchCommands(station, component, amount, { now, batch }),
    {
      type,
      pan: pan.id,
      amount,
      notFirst: true,
      ...loadFields(station, component, { now, batch }),
    },
  ]
}

/** `round` tells the batches of one refill from those of another; `now` in epoch milliseconds. */
export const changeOf = (
  station: StationDocument,
  pan: { readonly id: string; readonly component: string; readonly usualPortions: number },
  round: string,
  now: number,
): readonly Command[] => {
  const portion = portionOf(componentOf(station, pan.component))
  return cookedFor(station, 'changePan', pan, pan.usualPortions * portion.amount, { round, now })
}

export const refillOf = (
  station: StationDocument,
  round: string,
  now: number,
): readonly Command[] => pansOf(station).flatMap((pan) => changeOf(station, pan, round, now))
