import styles from '#components/care/label-outcomes.module.css'
import { useLabelWords } from '#components/care/label-words.tsx'
import { Button } from '#components/ui/button.tsx'
import { openBeside } from '#lib/rooms/care/facts/label-open.ts'
import type { LabelOutcome } from '#lib/rooms/care/views/labels.ts'
import type { RunningState } from '#lib/service/state.ts'

interface LabelOutcomesProps {
  readonly state: RunningState
  readonly outcomes: readonly LabelOutcome[]
  readonly onRead: (ingredient: string) => void
}

/** What came of changed labels, for as long as the service lasts. */
export function LabelOutcomes({ state, outcomes, onRead }: LabelOutcomesProps) {
  const words = useLabelWords()
  const { timeZone } = state.station
  const beside = openBeside(state, outcomes)
  const others = beside.held.length + beside.find.length > 0 && (
    <p className={styles.beside}>{words.beside(beside.find, beside.held)}</p>
  )
  if (outcomes.length === 0)
    return (
      <>
        <p>{words.noHistory}</p>
        {others}
      </>
    )
  return (
    <>
      <ol className={styles.outcomes}>
        {outcomes.map((one) => (
          <li key={`${one.ingredient} ${String(one.at)}`}>
            <p>
              <b>{words.sayClock(one.at, timeZone)}</b> {words.change(one.name, one.read)}
            </p>
            {one.isNewest && <Open outcome={one} timeZone={timeZone} />}
            {one.isNewest && !one.read && (
              <Button onClick={() => onRead(one.ingredient)}>{words.first.readNow}</Button>
            )}
          </li>
        ))}
      </ol>
      {others}
    </>
  )
}

/** Of one ingredient, all that is open, whichever of its changes made it. */
function Open({
  outcome: one,
  timeZone,
}: {
  readonly outcome: LabelOutcome
  readonly timeZone: string
}) {
  const words = useLabelWords()
  return (
    <ul>
      <li data-kind={one.find.length > 0 ? 'find' : 'none'}>
        {one.find.length > 0 ? words.find(one.find) : words.findNone}
      </li>
      <li data-kind={one.held.length > 0 ? 'hold' : 'none'}>
        {one.held.length > 0 ? words.hold(one.held) : words.holdNone}
      </li>
      {(one.read || one.before.length > 0) && (
        <li data-kind={one.before.length > 0 ? 'before' : 'none'}>
          {one.before.length > 0 ? words.changePans(one.before) : words.noPansBefore}
        </li>
      )}
      <li data-kind="reprint">{words.reprint(one.reprint)}</li>
      <li data-kind="sheet">
        {words.sheet(words.allergenSheet.moment(one.at, timeZone))}{' '}
        <a href={`/sheet${location.search}`} target="_blank" rel="noreferrer">
          {words.first.toSheet}
        </a>
      </li>
    </ul>
  )
}
