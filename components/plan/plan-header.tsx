import { Connection } from '#components/live/connection.tsx'
import styles from '#components/plan/plan.module.css'
import type { PlanNow } from '#components/plan/use-plan.ts'
import { usePlanWords } from '#components/plan/words.tsx'
import { Button } from '#components/ui/button.tsx'
import type { AheadAnswer } from '#lib/rooms/prep/views/ahead.ts'
import { guestsOf, type PlanEntry } from '#lib/rooms/prep/views/plan-entry.ts'
import type { ServicePlan } from '#lib/service/events/plan-event.ts'

interface PlanHeaderProps {
  readonly plan: ServicePlan
  readonly now: PlanNow
  readonly answer: AheadAnswer
  readonly assemblers: number
  readonly isOpen: boolean
  readonly onGuests: (guests: number | null) => void
  readonly onEntry: (entry: PlanEntry) => void
  readonly onDay: () => void
  /** null: no loads are taken yet, so there is nothing to print. */
  readonly onPrint: (() => void) | null
}

/** Which day, for how many guests, and what that is known by. */
export function PlanHeader({
  plan,
  now,
  answer,
  assemblers,
  isOpen,
  onGuests,
  onEntry,
  onDay,
  onPrint,
}: PlanHeaderProps) {
  const words = usePlanWords()
  const guests = now.guests ?? 0
  const change = (by: number) => {
    const walkIn = Math.max(0, Number(now.entry.walkIn || 0) + by)
    const next = { ...now.entry, walkIn: String(walkIn) }
    onEntry(next)
    onGuests(guestsOf(next))
  }
  return (
    <header className={styles.header}>
      <div className={styles.title}>
        <h1>{words.titleOf(plan.on)}</h1>
        <div className={styles.sub}>
          {words.sub({ ...plan, isOpen }, assemblers)} <Connection />
        </div>
      </div>
      <div className={styles.guests}>
        <Button aria-label={words.fewer} disabled={guests === 0} onClick={() => change(-1)}>
          −
        </Button>
        <p>
          <b>{now.guests ?? '?'}</b> {words.guests(guests)}
          <span>{words.guestsHow(answer.past)}</span>
        </p>
        <Button aria-label={words.more} onClick={() => change(1)}>
          +
        </Button>
      </div>
      <div className={styles.ways}>
        <Button onClick={onDay}>{words.dayAndCrew}</Button>
        {onPrint && <Button onClick={onPrint}>{words.papers.print}</Button>}
        <a className={styles.way} href={`/prep${location.search}`}>
          {words.toPrep}
        </a>
        <a className={styles.way} href="/">
          {words.start}
        </a>
      </div>
    </header>
  )
}
