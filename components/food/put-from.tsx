import type { Put } from '#components/food/use-put.ts'
import type { Choose } from '#components/job/chosen.ts'
import styles from '#components/job/job.module.css'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { sayLastUse } from '#components/pans/pan-facts.ts'
import { Button } from '#components/ui/button.tsx'
import { Note } from '#components/ui/note.tsx'
import { isOutOfTurn, type PutSource } from '#lib/rooms/pans/views/put-sources.ts'
import type { RunningState } from '#lib/service/state.ts'

interface PutFromProps {
  readonly state: RunningState
  readonly put: Put
  readonly choose: Choose
  readonly component: string
}

/** What could go in, what is to be used first, and why something can't. */
export function PutFrom({ state, put, choose, component }: PutFromProps) {
  const words = useFoodWords()
  const time = (at: number) => words.sayTime(at, state.station.timeZone)
  const each = state.portions[component]?.amount ?? 1
  const count = (amount: number) => Math.floor(amount / each)
  const lastUse = ({ useBy: ends }: Exclude<PutSource, { kind: 'plain' }>) =>
    sayLastUse(words, state, { useBy: ends, throwOutAt: null })
  const said = (source: PutSource): { name: string; more: string; off: boolean } => {
    if (source.kind === 'plain')
      return source.heldBy === 'dry'
        ? { name: words.forms.fromPack, more: words.forms.fromPackDryWhy, off: false }
        : { name: words.forms.fromPack, more: words.forms.fromPackWhy, off: false }
    if (source.kind === 'backup')
      return {
        name: words.forms.backupPan(source.kept, source.guarded),
        more: [words.forms.backupLeft(count(source.amount)), ...lastUse(source)].join(', '),
        off: false,
      }
    return {
      name: words.forms.batchMade(time(source.finishedAt)),
      more: source.problem
        ? words.safety.load(source.problem, time)
        : [
            words.forms.portions(count(source.amount)),
            ...(source.isFirst ? [words.forms.firstOut] : []),
            ...lastUse(source),
          ].join(', '),
      off: source.problem !== null,
    }
  }
  const isNone = put.sources.length === 0
  return (
    <fieldset className={styles.choices}>
      <legend>{words.forms.whatGoesIn}</legend>
      {put.sources.map((source) => {
        const { name, more, off } = said(source)
        return (
          <Button
            key={'id' in source ? source.id : source.kind}
            disabled={off}
            aria-pressed={source === put.source}
            sub={more}
            onClick={() => put.choose(source)}
          >
            {name}
          </Button>
        )
      })}
      {put.source && isOutOfTurn(put.source) && <Note kind="no">{words.forms.olderStays}</Note>}
      {isNone && (
        <>
          <Note kind="no">{words.forms.needsBatch}</Note>
          <Button onClick={() => choose({ task: 'start-batch', component })}>
            {words.forms.startBatch}
          </Button>
        </>
      )}
    </fieldset>
  )
}
