import { useState } from 'react'
import { sayHandedOver } from '#components/care/handed-over-said.ts'
import { ChoiceRow } from '#components/job/choice-row.tsx'
import type { Chosen } from '#components/job/chosen.ts'
import styles from '#components/job/job.module.css'
import { JobForm } from '#components/job/job-form.tsx'
import { ProbeFields } from '#components/job/probe-fields.tsx'
import { ReadingScale } from '#components/job/probe-scale.tsx'
import { InChargeField } from '#components/job/proof-fields.tsx'
import { ReadingPad } from '#components/job/reading-pad.tsx'
import type { TaskProps } from '#components/job/task-props.ts'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { useJob } from '#components/job/use-job.ts'
import { usePassphrase } from '#components/job/use-proof.ts'
import { useReading } from '#components/job/use-reading.ts'
import { Button } from '#components/ui/button.tsx'
import { Note } from '#components/ui/note.tsx'
import { handedOverListOf } from '#lib/rooms/food/facts/handed-over-lists.ts'
import { shelfNext } from '#lib/rooms/food/facts/shelf-reading.ts'
import { readingOf, shelfLimit } from '#lib/rooms/food/views/reading-entry.ts'
import { SHELF, shelfHeldBy } from '#lib/service/shelf.ts'

type Props = TaskProps<'read-here'>

const WAYS = ['discard', 'time-only'] as const

/** What stood there as it was read out of limits: the person in charge takes one of the ways. */
function DecideShelf({ state, acting, choose, onBack }: Props) {
  const words = useFoodWords()
  const inCharge = usePassphrase()
  const [way, setWay] = useState<(typeof WAYS)[number] | null>(null)
  const ways = WAYS.filter((one) => one === 'discard' || state.station.safety.timeProcedure)
  const lastGoodAt = state.shelf?.offSale?.lastGoodAt ?? null
  const list = handedOverListOf(state, 'shelf', SHELF)
  const toAnswer: Chosen = { task: 'handed-over', what: 'shelf', id: SHELF }
  const job = useJob({
    acting,
    about: 'shelf',
    lacks: [way === null ? words.forms.resolveLack : null],
    inCharge,
    command: () => way && { type: 'resolveShelf', way },
    done: words.readHere.shelf.decided,
    after: () => {
      if (list) choose(toAnswer)
      else if (way === 'discard') choose({ task: 'throw-out', early: null })
      else onBack()
    },
  })
  return (
    <JobForm
      job={job}
      send={words.forms.resolveSend}
      side={<InChargeField proof={inCharge} />}
      note={words.readings.decides}
      ways={list && <Button onClick={() => choose(toAnswer)}>{words.givenOut.open}</Button>}
    >
      <Note kind="no">
        {words.readHere.shelf.out}{' '}
        {lastGoodAt === null
          ? words.forms.resolveNoGood
          : words.forms.resolveLastGood(words.sayTime(lastGoodAt, state.station.timeZone))}
      </Note>
      {list && (
        <Note kind="watch">
          {sayHandedOver(words, state, list)} {words.givenOut.who}
        </Note>
      )}
      <ChoiceRow
        legend={words.forms.resolveWho}
        options={ways.map((id) => ({ id, label: words.readHere.shelf.way[id] }))}
        value={way}
        onChange={setWay}
      />
      <p>{words.readHere.shelf.thenRead}</p>
    </JobForm>
  )
}

function ReadShelf({ state, acting, onBack }: Props) {
  const words = useFoodWords()
  const held = shelfHeldBy(state) ?? 'hot'
  const form = useReading(
    state,
    '',
    held === 'hot' ? 'hot-holding' : 'cold-holding',
    shelfLimit(state.station, held),
  )
  const time = (at: number) => words.sayTime(at, state.station.timeZone)
  const newest = state.shelf?.newest
  const next = shelfNext(state)
  const isOut = form.judged.verdict === 'not-met'
  const job = useJob({
    acting,
    about: 'shelf',
    form,
    command: () => {
      const reading = readingOf(form.entry)
      return reading && { type: 'readShelf', reading, initials: form.entry.initials.trim() }
    },
    done: () => {
      const reading = readingOf(form.entry)
      return words.readHere.shelf.done(reading ? words.sayDegrees(reading) : '')
    },
    after: onBack,
  })
  return (
    <JobForm
      job={job}
      kind={isOut ? 'no' : 'main'}
      send={(isOut ? words.readHere.shelf.readOut : words.forms.readSend)(
        form.typed && words.sayDegrees(form.typed),
      )}
      scale={<ReadingScale form={form} />}
      side={<ReadingPad form={form} />}
    >
      <p className={styles.large}>{words.readHere.shelf.how}</p>
      <p>
        {words.readHere.shelf.held[held]}{' '}
        {newest
          ? words.forms.newest(words.sayDegrees(newest.temperature), time(newest.at))
          : words.forms.never}{' '}
        {next ? words.forms.nextBy(time(next.dueAt)) : ''}
      </p>
      {!next && <Note kind="no">{words.readHere.shelf.unread}</Note>}
      <ProbeFields form={form} />
    </JobForm>
  )
}

/** The hot or cold shelf of made food: read, or decided on where it was out of its limits. */
export function ShelfForm(props: Props) {
  return props.state.shelf?.offSale ? <DecideShelf {...props} /> : <ReadShelf {...props} />
}
