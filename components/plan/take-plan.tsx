import type { Acting } from '#components/live/acting.ts'
import styles from '#components/plan/plan.module.css'
import type { PlanNow } from '#components/plan/use-plan.ts'
import { usePlanWords } from '#components/plan/words.tsx'
import { Button, ButtonLink } from '#components/ui/button.tsx'

interface TakePlanProps {
  readonly now: PlanNow
  readonly acting: Acting
  /** How many readings and tasks fall to nobody yet. */
  readonly unsettled: number
  readonly hasRaw: boolean
  /** Whether batches can be entered by now. */
  readonly toBatches: boolean
  readonly onTake: () => void
}

/** The plan is taken, and the crew gets its tasks. */
export function TakePlan({ now, acting, unsettled, hasRaw, toBatches, onTake }: TakePlanProps) {
  const words = usePlanWords()
  const isTaken = unsettled === 0 && !now.isPlanChanged && !now.isPrepChanged
  const batches = `/batches${location.search}`
  return (
    <div className={styles.take}>
      {isTaken && toBatches ? (
        <ButtonLink kind="main" size="large" href={batches} sub={words.asTaken}>
          {words.toBatches}
        </ButtonLink>
      ) : (
        <Button
          kind="main"
          size="large"
          lacks={unsettled > 0 ? words.toSettle(unsettled) : isTaken ? words.asTaken : null}
          disabled={acting.busy}
          sub={words.takeSub}
          onClick={onTake}
        >
          {words.takePlan}
        </Button>
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
