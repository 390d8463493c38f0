import type { ReactNode } from 'react'
import type { Acting } from '#components/live/acting.ts'
import styles from '#components/plan/plan.module.css'
import type { PlanNow } from '#components/plan/use-plan.ts'
import { usePlanWords } from '#components/plan/words.tsx'
import { Button, ButtonLink } from '#components/ui/button.tsx'

interface TakePlanProps {
  readonly now: PlanNow
  readonly acting: Acting
  /** What falls to nobody and the way to it, in the place of taking it; null where nothing does. */
  readonly toSettle: ReactNode
  readonly hasRaw: boolean
  /** Whether batches can be entered by now. */
  readonly toBatches: boolean
  readonly onTake: () => void
}

/** The plan is taken, and the crew gets its tasks. */
export function TakePlan({ now, acting, toSettle, hasRaw, toBatches, onTake }: TakePlanProps) {
  const words = usePlanWords()
  const isTaken = toSettle === null && !now.isPlanChanged && !now.isPrepChanged
  const batches = `/batches${location.search}`
  return (
    <div className={styles.take}>
      {isTaken && toBatches ? (
        <ButtonLink kind="main" size="large" href={batches} sub={words.asTaken}>
          {words.toBatches}
        </ButtonLink>
      ) : (
        (toSettle ?? (
          <Button
            kind="main"
            size="large"
            lacks={isTaken ? words.asTaken : null}
            disabled={acting.busy}
            sub={words.takeSub}
            onClick={onTake}
          >
            {words.takePlan}
          </Button>
        ))
      )}
      {hasRaw && (
        <label>
          <input
            type="checkbox"
            checked={now.ownTable}
            onChange={(event) => now.setOwnTable(event.target.checked)}
          />
          {words.ownTable}
        </label>
      )}
      <p role="status" data-kind={acting.said?.kind ?? 'none'}>
        {acting.said?.text ?? ''}
      </p>
      {toBatches && !isTaken && (
        <a className={styles.batches} href={batches}>
          {words.toBatches}
        </a>
      )}
    </div>
  )
}
