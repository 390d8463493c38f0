import { isOut } from '#lib/rooms/prep/facts/out-of-cold.ts'
import type { PrepEvent, PrepState } from '#lib/service/events/prep-event.ts'

type Foods = PrepState['foods']

/** Components of which more is planned than before. */
const grownIn = (foods: Foods, before: Foods): readonly string[] =>
  foods
    .filter(({ component, loads, portions }) => {
      const was = before.find((one) => one.component === component)
      return was === undefined || loads > was.loads || portions > was.portions
    })
    .map(({ component }) => component)

/** Ticks of tasks, and of things to pack, that are of none of these: so much of them was never done. */
const ticksBut = (
  ticked: PrepState['ticked'],
  components: readonly string[],
): PrepState['ticked'] =>
  Object.fromEntries(
    Object.entries(ticked).filter(([task]) => !components.some((one) => task.endsWith(`.${one}`))),
  )

/** What was done of a task that is still called so stays, as long as no more of it is planned. */
export const evolvePrep = (
  prep: PrepState | undefined,
  event: PrepEvent & { readonly at: number },
): PrepState => {
  const { at } = event
  if (event.type === 'prepPlanned') {
    const { foods, ownTable } = event
    const { foods: before = [], ticked = {}, passed = {} } = prep ?? {}
    return { foods, ownTable, from: at, ticked: ticksBut(ticked, grownIn(foods, before)), passed }
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
