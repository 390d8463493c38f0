/** What foreign scoops left in pans, as the log tells it: written from the rules, and not from the fold. */
import type { Recorded } from '#lib/service/events/event.ts'
import type { ServiceState } from '#lib/service/state.ts'

type Marks = Map<string, ReadonlySet<string>>

const NONE: ReadonlySet<string> = new Set()

const linePans = ({ station }: ServiceState) =>
  station?.line.wells.flatMap(({ pans }) => pans) ?? []

const add = (marks: Marks, pan: string, more: Iterable<string>): void => {
  const all = new Set([...(marks.get(pan) ?? NONE), ...more])
  if (all.size > 0) marks.set(pan, all)
}

/** A scoop of `by` was in a pan of `component`, and goes back to where it belongs. */
const goesBack = (marks: Marks, state: ServiceState, component: string, by: string): void => {
  if (component === by) return
  for (const pan of linePans(state)) if (pan.component === by) add(marks, pan.id, [component])
}

/** Writes down what an event brings into pans, or takes away with what was in them. */
export const mark = (marks: Marks, event: Recorded, after: ServiceState): void => {
  switch (event.type) {
    case 'panSoiled': {
      const component = linePans(after).find(({ id }) => id === event.pan)?.component
      add(marks, event.pan, [event.by])
      if (component !== undefined) goesBack(marks, after, component, event.by)
      break
    }
    case 'panLoaded':
    case 'panChanged': {
      const brought = event.from == null ? NONE : (marks.get(event.from) ?? NONE)
      if (event.type === 'panChanged' || event.washed === true) marks.delete(event.pan)
      for (const { pan, by } of event.leaves ?? []) add(marks, pan, [by])
      add(marks, event.pan, brought)
      if (event.from != null) marks.delete(event.from)
      break
    }
    case 'panToppedUp':
      if (event.from === null) break
      add(marks, event.pan, marks.get(event.from) ?? NONE)
      if (after.backupPans[event.from]?.amount === 0) marks.delete(event.from)
      break
    case 'backupSet':
      if (event.soiledBy !== undefined) goesBack(marks, after, event.component, event.soiledBy)
      if (event.backup === undefined) break
      if (event.takenAway !== undefined || event.ready) marks.delete(event.backup)
      if (event.soiledBy !== undefined) add(marks, event.backup, [event.soiledBy])
      break
    default:
  }
}
