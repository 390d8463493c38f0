import { findItem } from '#lib/menu/find.ts'
import { type BuildChoice, usualChoice } from '#lib/service/build-choice.ts'
import type { Command } from '#lib/service/decide.ts'
import { demoStation, loadsOf } from '#server/demo-station.ts'

export const OPEN: Command = { type: 'open', station: demoStation.id, kind: 'real' }

/** Every pan of the demo station, loaded as usual. */
export const LOADS: readonly Command[] = loadsOf(demoStation)

/** An item of the demo station as a guest without needs usually takes it. */
export const usual = (item = 'garden-chicken'): BuildChoice => {
  const found = findItem(demoStation, item)
  if (!found) throw new Error(`the demo station has no ${item}`)
  return usualChoice(found)
}

export const order = (item?: string, name?: string): Command => ({
  type: 'send',
  builds: [usual(item)],
  paid: false,
  readBack: true,
  ...(name === undefined ? {} : { name }),
})
