/** Lives a history, act by act, and tells everything that happened in it. */
import type { Consequence } from '#lib/service/consequence.ts'
import type { AdviceTold } from '#lib/service/events/stock-event.ts'
import type { Act } from '#tests/support/acts.ts'
import { createDrive, type Drive, type Stepped, type Taken } from '#tests/support/drive-history.ts'
import type { Move } from '#tests/support/moves.ts'
import { stationWithShelf } from '#tests/support/spare-station.ts'

export interface Lived {
  readonly act: Act
  readonly steps: readonly (Stepped | Taken)[]
}

const advice = (number: number): AdviceTold => ({
  type: 'adviceTold',
  key: `sold-out/rice/${number}`,
  kind: 'sold-out',
  saves: 100,
  reason: {
    why: 'sold-out',
    component: 'rice',
    items: [],
    behind: 0,
    nextAt: null,
  },
})

const stepsOf = (drive: Drive, act: Act): readonly (Stepped | Taken)[] => {
  switch (act.do) {
    case 'command':
      return [drive.take(act.command, act.by)]
    case 'pass':
      return drive.pass(act.ms)
    case 'jump':
      return drive.jump(act.byMs)
    case 'restart':
      return drive.restart(act.awayMs, act.byMs)
    case 'newDocument':
      drive.newDocument()
      return []
    case 'advise':
      return drive.state().stage === 'open' ? [drive.note(advice(drive.log().length))] : []
  }
}

/** Acts of a history as they are lived: of moves as the service stands then, or the acts themselves. */
export function* living(
  history: readonly (Move | Act)[],
  follows?: readonly Consequence[],
): Generator<Lived & { readonly drive: Drive }> {
  const drive = createDrive(stationWithShelf, follows)
  for (const one of history) {
    const acts = typeof one === 'function' ? one(drive.state()) : [one]
    for (const act of acts) yield { act, steps: stepsOf(drive, act), drive }
  }
}
