import { isOut } from '#lib/rooms/prep/facts/out-of-cold.ts'
import type { PrepEvent, PrepState } from '#lib/service/events/prep-event.ts'

/** What was done of a task that is still called so stays, whatever else is planned anew. */
export const evolvePrep = (
  prep: PrepState | undefined,
  event: PrepEvent & { readonly at: number },
): PrepState => {
  const { at } = event
  if (event.type === 'prepPlanned') {
    const { foods, ownTable } = event
    const { ticked = {}, passed = {} } = prep ?? {}
    return { foods, ownTable, from: at, ticked, passed }
  }
  if (!prep) throw new Error(`${event.type} before its preparation was planned`)
  const { task } = event
  switch (event.type) {
    case 'taskTicked':
      return { ...prep, ticked: { ...prep.ticked, [task]: at } }
    case 'tickTakenBack': {
      const { [task]: _, ...ticked } = prep.ticked
      return { ...prep, ticked }
    }
    case 'taskPassed': {
      const { far, where } = event
      const before = prep.passed[task]
      // Passed from table to table it is out for as long as on the first one.
      const goesOn = before !== undefined && isOut(before.where) && isOut(where)
      const since = goesOn ? { since: before.since ?? before.at } : {}
      return { ...prep, passed: { ...prep.passed, [task]: { far, where, at, ...since } } }
    }
  }
}
