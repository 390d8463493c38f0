import { type BuildChoice, usualChoice } from '#lib/service/events/build-choice.ts'
import { openingCommands } from '#lib/spine/opening-commands.ts'
import type { Command } from '#lib/spine/registry.ts'
import { findItem } from '#lib/station/find.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { demoStation } from '#server/demo-station.ts'

export const OPEN: Command = { type: 'open', station: demoStation.id, kind: 'real' }

const { sanitizer: _, ...safety } = demoStation.safety

/** The demo station as if all of it were dry: its pans are loaded without batches, and nothing is read. */
export const railStation: StationDocument = {
  ...demoStation,
  safety,
  components: demoStation.components.map((one) => ({
    ...one,
    held: 'dry',
    food: { ...one.food, kind: 'ready' },
  })),
}

/** Every pan of it, loaded as usual. */
export const LOADS: readonly Command[] = openingCommands(railStation, 0, { backups: [] })

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
