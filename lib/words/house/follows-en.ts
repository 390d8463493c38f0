/** Which service a screen of the line follows, where more are planned. */
import { sayDate } from '#lib/words/day-en.ts'

/** "Open now: Thu, Dec 3 · also planned: Fri, Dec 4" */
export const sayFollows = (open: string, planned: readonly string[]): string => {
  const [first] = planned
  const others = planned.length === 1 && first ? sayDate(first) : `${planned.length} days`
  return `Open now: ${open} · also planned: ${others}`
}
