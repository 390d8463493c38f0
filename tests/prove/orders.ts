import { usualChoice } from '#lib/service/events/build-choice.ts'
import type { Command } from '#lib/spine/registry.ts'
import { demoStation } from '#server/demo-station.ts'

/** The service that a new data folder starts with. */
export const DEMO_SERVICE = 's-demo'

/** The items of the demo station in turn, every other order with something left out. */
export const orderNumber = (index: number): Command => {
  const item = demoStation.items[index % demoStation.items.length]
  if (!item) throw new Error('the demo station has no items')
  const choice = usualChoice(item)
  const without = { placement: 'no' as const, portions: 0, because: 'asked' as const }
  const parts = index % 2 === 0 ? choice.parts : { ...choice.parts, slaw: without }
  return { type: 'send', builds: [{ ...choice, parts }], paid: index % 3 === 0, readBack: true }
}
